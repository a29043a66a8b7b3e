#include "window_support.hpp"

using namespace holdfast::analytics;
using namespace holdfast::analytics::support;

namespace {

const Choices kStarters{starterFamilies(), {}};

} // namespace

TEST_CASE("low-cure white and yellow with a standard black on polyester is closed, and the black alone mends it",
          "[cure][window][trap]") {
    // Common practice (job.md, the classic trap); figures of the contracts' starters.
    const RunPlan plan{{layer("white", starter("low-cure")), layer("black", starter("standard")),
                        layer("yellow", starter("low-cure"))},
                       cloth("100% polyester")};
    const auto window = open(windowWithWaysOut(plan, nullptr, kStarters));
    CHECK(window.state == WindowState::closed);
    CHECK(window.lower.fahrenheit() == Approx(320));
    CHECK(window.lowerLayer == 2);
    CHECK(window.upperHard->limit.fahrenheit() == Approx(340));
    CHECK(window.upperBleed->limit.fahrenheit() == Approx(300));
    CHECK(window.upper->fahrenheit() == Approx(300));
    CHECK(window.bleeds.empty());
    CHECK_FALSE(window.aim);

    REQUIRE(window.culprits.size() == 2);
    CHECK(window.culprits[0].kind == CulpritKind::layer);
    CHECK(window.culprits[0].position == 2);
    CHECK(window.culprits[0].name == "black");
    CHECK(window.culprits[0].limit.fahrenheit() == Approx(320));
    CHECK(window.culprits[1].kind == CulpritKind::fabric);
    CHECK(window.culprits[1].name == "100% polyester");
    CHECK(window.culprits[1].limit.fahrenheit() == Approx(300));

    REQUIRE(window.waysOut.size() == 2);
    CHECK(window.waysOutLeftOut == 0);
    const char* const easiestFirst[] = {"blend", "low-cure"};
    for (std::size_t i = 0; i < 2; ++i) {
        const auto& way = window.waysOut[i];
        REQUIRE(way.changes.size() == 1);
        CHECK(way.changes[0].position == 2);
        CHECK(way.changes[0].from == "standard");
        CHECK(way.changes[0].to == easiestFirst[i]);
        CHECK_FALSE(way.instrument);
        CHECK(way.lower.fahrenheit() == Approx(285));
        CHECK(way.upper->fahrenheit() == Approx(300));
        CHECK(way.bleedProvable);
    }
    CHECK(window.advice == std::vector{Advice::printWithBleedWatch, Advice::anotherCloth});
}

TEST_CASE("all low-cure on polyester is open from its cure to the bleed ceiling", "[cure][window][trap]") {
    // Common practice (job.md): every ink low-cure, 285 °F up to 300 °F.
    const RunPlan plan{{layer("white", starter("low-cure")), layer("black", starter("low-cure")),
                        layer("yellow", starter("low-cure"))},
                       cloth("100% polyester")};
    const auto window = open(windowWithWaysOut(plan, nullptr, kStarters));
    CHECK(window.state == WindowState::open);
    CHECK_FALSE(window.narrow);
    CHECK(window.lower.fahrenheit() == Approx(285));
    CHECK(window.upper->fahrenheit() == Approx(300));
    CHECK(window.lowerLayer == 1);
    CHECK(window.hold == Duration{0});
    CHECK_FALSE(window.holdLayer);
    CHECK(window.bleeds.empty());
    CHECK(window.culprits.empty());
    CHECK(window.waysOut.empty());
    CHECK(window.advice.empty());
}

TEST_CASE("standard inks on cotton open at 320 °F with the fabric's ceiling above", "[cure][window][trap]") {
    // Common practice (job.md).
    const RunPlan plan{{layer("white", starter("standard")), layer("red", starter("standard"))}, cloth("100% cotton")};
    const auto window = open(windowOf(plan));
    CHECK(window.state == WindowState::open);
    CHECK(window.lower.fahrenheit() == Approx(320));
    CHECK(window.upper->fahrenheit() == Approx(350));
    CHECK_FALSE(window.upperHardLayer);
    CHECK_FALSE(window.upperBleed);
    CHECK_FALSE(window.layers[0].atRisk);
}

TEST_CASE("a bucket of low-cure topped up with standard cures at 320 °F and bleeds", "[cure][window][trap]") {
    // Common practice (job.md, Mixing).
    const auto bucket = mixInks("look-alike", {{pureInk(starter("low-cure")), 4}, {pureInk(starter("standard")), 1}});
    REQUIRE(bucket.has_value());
    const auto cotton = open(windowOf({{{"white", *bucket, {}}}, cloth("100% cotton")}));
    CHECK(cotton.state == WindowState::open);
    CHECK(cotton.lower.fahrenheit() == Approx(320));
    const auto polyester =
        open(windowWithWaysOut({{{"white", *bucket, {}}}, cloth("100% polyester")}, nullptr, kStarters));
    CHECK(polyester.state == WindowState::closed);
    CHECK(polyester.bleeds == std::vector{1});
    REQUIRE(polyester.waysOut.size() == 1); // white needs high: only low-cure
    CHECK(polyester.waysOut[0].changes[0].from == "look-alike");
    CHECK(polyester.waysOut[0].changes[0].to == "low-cure");
}

TEST_CASE("the dryer at 320 °F for standard white on polyester is a bleed watch, not a way out",
          "[cure][window][trap]") {
    // Common practice (job.md): or the dryer goes to 320 °F and the bleed protection is gone.
    const auto window =
        open(windowWithWaysOut({{layer("white", starter("standard"))}, cloth("100% polyester")}, nullptr, kStarters));
    CHECK(window.state == WindowState::closed);
    CHECK(window.bleeds == std::vector{1});
    CHECK(window.advice.front() == Advice::printWithBleedWatch);
}

TEST_CASE("water-based and discharge ask for a hold, named with its layer", "[cure][window][trap]") {
    // job.md table: 320 °F, 90 s (from memory).
    const auto window = open(
        windowOf({{layer("base", starter("discharge")), layer("red", starter("water-based"))}, cloth("100% cotton")}));
    CHECK(window.state == WindowState::open);
    CHECK(window.lower.fahrenheit() == Approx(320));
    CHECK(window.hold == Duration{90});
    CHECK(window.holdLayer == 1);
}

TEST_CASE("dark red polyester leaves no plastisol way out, only another cloth or a watch", "[cure][window][trap]") {
    // contracts, Starters: bleed ceiling 275 °F is below every plastisol's cure.
    const auto window = open(windowWithWaysOut(
        {{layer("white", starter("low-cure"))}, cloth("100% polyester, sublimated or dark red")}, nullptr, kStarters));
    CHECK(window.state == WindowState::closed);
    CHECK(window.waysOut.empty());
    CHECK(window.waysOutLeftOut == 0);
    CHECK(window.advice == std::vector{Advice::printWithBleedWatch, Advice::anotherCloth});
}

TEST_CASE("black alone on polyester knows no bleed ceiling", "[cure][window][trap]") {
    // Common practice (job.md): black is not at risk but still has to cure.
    const auto window = open(windowOf({{layer("black", starter("standard"))}, cloth("100% polyester")}));
    CHECK(window.state == WindowState::open);
    CHECK_FALSE(window.upperBleed);
    CHECK(window.upper->fahrenheit() == Approx(340));
}
