#include "window_support.hpp"

// Decisions 1: with several runs on one belt the belt's window is the intersection.
using namespace holdfast::analytics;
using namespace holdfast::analytics::support;

namespace {

RunWindow run(double cure, std::optional<Temperature> hard, const Calibration* instrument = nullptr,
              std::optional<Temperature> bleed = std::nullopt) {
    return open(
        windowOf({{layer("white", ink("i", c(cure)))}, plainCloth(hard, bleed, BleedResistance::high)}, instrument));
}

} // namespace

TEST_CASE("no run leaves no window, one run its own", "[cure][belt]") {
    CHECK_FALSE(intersectionOf({}));
    const auto probe = withGuard(InstrumentKind::probe, k(3));
    const auto alone = run(140, c(170), &probe, c(160));
    const auto belt = *intersectionOf({alone});
    CHECK(belt.state == alone.state);
    CHECK(belt.lower == alone.lower);
    CHECK(belt.upper == alone.upper);
    CHECK(belt.aim == alone.aim);
    CHECK(belt.acceptance->high == alone.acceptance->high);
}

TEST_CASE("the belt takes the highest lower and the lowest uppers", "[cure][belt]") {
    const auto probe = withGuard(InstrumentKind::probe, k(3));
    const auto belt = *intersectionOf({run(140, c(170), &probe, c(165)), run(155, c(180), &probe)});
    CHECK(belt.state == WindowState::open);
    CHECK(belt.lower == c(155));
    CHECK(belt.lowerLayer == 2); // numbered on through the list
    CHECK(belt.upperHard->limit == c(170));
    CHECK(belt.upperBleed->limit == c(165));
    CHECK(belt.acceptance->low.celsius() == Approx(158));
    CHECK(belt.acceptance->high->celsius() == Approx(167));
    CHECK(belt.acceptance->highBleed->celsius() == Approx(162));
    CHECK(belt.aim->celsius() == Approx(160)); // middle of [158, 162]
}

TEST_CASE("two open runs may close their belt, and both are to blame", "[cure][belt]") {
    const auto belt = *intersectionOf({run(160, c(180)), run(130, c(150))});
    CHECK(belt.state == WindowState::closed);
    CHECK(blames(belt, CulpritSide::below, 1));
    CHECK(blames(belt, CulpritSide::above, std::nullopt));
}

TEST_CASE("two provable runs may leave the belt without room for the guards", "[cure][belt]") {
    const auto probe = withGuard(InstrumentKind::probe, k(3));
    const auto belt = *intersectionOf({run(150, c(160), &probe), run(145, c(155), &probe)});
    CHECK(belt.state == WindowState::notProvable);
    CHECK(names(belt.whyNotProvable, ReasonCode::guardTooWide));
    CHECK_FALSE(belt.acceptance);
    CHECK_FALSE(belt.aim);
}

TEST_CASE("a run that cannot be proven makes its belt so, with its reasons", "[cure][belt]") {
    const auto gun = withGuard(InstrumentKind::gun, k(1));
    const auto belt = *intersectionOf({run(140, c(170)), run(140, c(170), &gun)});
    CHECK(belt.state == WindowState::notProvable);
    CHECK(names(belt.whyNotProvable, ReasonCode::surfaceOnly));
}

TEST_CASE("reasons of later runs name the layer as the belt numbers it", "[cure][belt]") {
    auto held = ink("held", c(140));
    held.hold = Duration{30};
    const auto spot = withGuard(InstrumentKind::spot, k(1));
    const auto second = open(windowOf({{layer("a", ink("i", c(140))), layer("b", held)}, plainCloth(c(170))}, &spot));
    REQUIRE(second.whyNotProvable.at(0).layer == 2);
    const auto belt = *intersectionOf({run(140, c(170), &spot), second});
    REQUIRE(belt.whyNotProvable.size() == 1);
    CHECK(belt.whyNotProvable[0].layer == 3);
    CHECK(belt.holdLayer == 3);
}

TEST_CASE("on a belt a strip must show steps that prove every run", "[cure][belt]") {
    const auto steps = strip({c(142), c(148), c(154), c(160), c(166)}, k(1), k(1));
    const auto cool = run(140, c(156), &steps); // 142/148, 148/154
    const auto warm = run(146, c(170), &steps); // 148/154, 154/160, 160/166
    const auto belt = *intersectionOf({cool, warm});
    CHECK(belt.state == WindowState::open);
    REQUIRE(belt.acceptedSteps.size() == 1);
    CHECK(belt.acceptedSteps[0].dark == c(148));
    const auto apart = *intersectionOf({run(140, c(150), &steps), warm});
    CHECK(apart.state == WindowState::notProvable);
    CHECK(names(apart.whyNotProvable, ReasonCode::stripStepsDoNotFit));
}
