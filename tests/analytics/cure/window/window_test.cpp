#include "window_support.hpp"

#include <limits>

// Hand-worked examples; the rules are those of decisions 1.
using namespace holdfast::analytics;
using namespace holdfast::analytics::support;

TEST_CASE("lower, hold and hard upper each come from the layer that asks them", "[cure][window]") {
    auto slow = ink("slow", c(120));
    slow.hold = Duration{60};
    const RunPlan plan{
        {layer("a", withCeiling(ink("first", c(150)), c(170))), layer("b", slow), layer("c", ink("hot", c(155)))},
        plainCloth(c(175))};
    const auto window = open(windowOf(plan));
    CHECK(window.lower == c(155));
    CHECK(window.lowerLayer == 3);
    CHECK(window.hold == Duration{60});
    CHECK(window.holdLayer == 2);
    CHECK(window.upperHard->limit == c(170));
    CHECK(window.upperHardLayer == 1);
    REQUIRE(window.layers.size() == 3);
    CHECK(window.layers[1].cure.limit == c(120)); // C and h of different layers are never asked for together
    CHECK(window.layers[1].hold == Duration{60});
    CHECK(window.layers[2].hold == Duration{0});
}

TEST_CASE("of equal hard ceilings the fabric's is named", "[cure][window]") {
    const auto window = open(windowOf({{layer("a", withCeiling(ink("i", c(150)), c(170)))}, plainCloth(c(170))}));
    CHECK(window.upperHard->limit == c(170));
    CHECK_FALSE(window.upperHardLayer);
}

TEST_CASE("a layer with pairs enters with its cooler temperature", "[cure][window]") {
    auto paired = withPairs(ink("paired", c(150)), {Duration{20}, c(165)}, {Duration{60}, c(145)});
    paired.hold = Duration{20};
    const auto window = open(windowOf({{layer("a", paired)}, plainCloth(c(150))}));
    CHECK(window.state == WindowState::open);
    CHECK(window.lower == c(145));
    CHECK(window.hold == Duration{0});
    CHECK_FALSE(window.holdLayer);
    REQUIRE(window.layers[0].pairs.has_value());
}

TEST_CASE("a window closes just above its hard ceiling, equality is open and narrow", "[cure][window]") {
    const auto at = [](double ceiling) {
        return open(windowOf({{layer("a", ink("i", c(160)))}, plainCloth(c(ceiling))}));
    };
    CHECK(at(160).state == WindowState::open);
    CHECK(at(160).narrow);
    CHECK(at(160 - 1e-8).state == WindowState::closed);
    CHECK(at(160 - 1e-10).state == WindowState::open); // within 1e-9 counts as met, decisions 0
    CHECK(at(161.9).narrow);
    CHECK_FALSE(at(162).narrow);
}

TEST_CASE("below a bleed ceiling 2 °C of room are needed", "[cure][window]") {
    const auto at = [](double bleed, const std::string& colour) {
        return open(windowOf({{layer(colour, ink("i", c(140)))}, plainCloth(c(170), c(bleed), BleedResistance::high)}));
    };
    CHECK(at(142, "white").state == WindowState::open);
    CHECK(at(141.9, "white").state == WindowState::closed);
    CHECK(at(141.9, "black").state == WindowState::open);
    CHECK_FALSE(at(141.9, "black").upperBleed);
    CHECK(at(141.9, "").state == WindowState::closed); // a colour nobody named is at risk
}

TEST_CASE("a layer bleeds if its ink resists less than its colour needs", "[cure][window]") {
    auto weak = ink("weak", c(130));
    weak.bleedResistance = BleedResistance::low;
    const auto fabric = plainCloth(c(170), c(150), BleedResistance::high);
    const auto window =
        open(windowOf({{layer("black", weak), layer("white", weak), layer("red", ink("strong", c(130)))}, fabric}));
    CHECK(window.bleeds == std::vector{2});
    CHECK(window.layers[2].atRisk);
    CHECK_FALSE(window.layers[0].atRisk);
    CHECK(window.advice == std::vector{Advice::printWithBleedWatch});
}

TEST_CASE("closed without anybody beyond the ceiling names the extremes", "[cure][window]") {
    // lower 140 ≤ bleed 141, but less than 2 °C of room: nobody has C > upper or ceiling < lower.
    const auto window = open(
        windowOf({{layer("white", ink("i", c(140))), layer("red", ink("j", c(130))), layer("blue", ink("l", c(140)))},
                  plainCloth(c(170), c(141), BleedResistance::high)}));
    REQUIRE(window.state == WindowState::closed);
    REQUIRE(window.culprits.size() == 3);
    CHECK(window.culprits[0].position == 1);
    CHECK(window.culprits[1].position == 3);
    CHECK(window.culprits[2].kind == CulpritKind::fabric);
    CHECK(window.culprits[2].limit == c(141));
    CHECK(window.culprits[2].side == CulpritSide::above);
}

TEST_CASE("every layer and the fabric beyond the limits is a culprit", "[cure][window]") {
    // lower 170 (layer 4), upper 150 (layer 2's ceiling). Below: C > 150 → 3 and 4. Above: ceiling < 170 → layer 2
    // (150) and the fabric (160); layer 1 has 175.
    const RunPlan plan{{layer("a", withCeiling(ink("a", c(140)), c(175))),
                        layer("b", withCeiling(ink("b", c(140)), c(150))), layer("c", ink("c", c(155))),
                        layer("d", ink("d", c(170)))},
                       plainCloth(c(160))};
    const auto window = open(windowOf(plan));
    REQUIRE(window.state == WindowState::closed);
    REQUIRE(window.culprits.size() == 4);
    CHECK(blames(window, CulpritSide::below, 3));
    CHECK(blames(window, CulpritSide::below, 4));
    CHECK(blames(window, CulpritSide::above, 2));
    CHECK(blames(window, CulpritSide::above, std::nullopt));
    CHECK(window.advice == std::vector{Advice::anotherCloth});
}

TEST_CASE("a fabric with both ceilings too low is named once, with the lower", "[cure][window]") {
    const auto window =
        open(windowOf({{layer("white", ink("i", c(180)))}, plainCloth(c(170), c(150), BleedResistance::high)}));
    REQUIRE(window.culprits.size() == 2);
    CHECK(window.culprits[1].kind == CulpritKind::fabric);
    CHECK(window.culprits[1].limit == c(150));
    CHECK(window.advice == std::vector{Advice::anotherCloth}); // a watch would not help against the hard ceiling
}

TEST_CASE("a mix whose ceiling lies below its cure closes the window and is to blame on both sides", "[cure][window]") {
    const auto mix =
        mixInks("m", {{pureInk(ink("hot", c(160))), 1}, {pureInk(withCeiling(ink("tender", c(130)), c(150))), 1}});
    const auto window = open(windowOf({{{"white", *mix, {}}}, plainCloth(c(175))}));
    REQUIRE(window.state == WindowState::closed);
    REQUIRE(window.culprits.size() == 2);
    CHECK(blames(window, CulpritSide::below, 1));
    CHECK(blames(window, CulpritSide::above, 1));
}

TEST_CASE("a window without any ceiling is open and has no upper", "[cure][window]") {
    const auto window = open(windowOf({{layer("a", ink("i", c(160)))}, plainCloth(std::nullopt)}));
    CHECK(window.state == WindowState::open);
    CHECK_FALSE(window.upper);
    CHECK_FALSE(window.upperHard);
    CHECK_FALSE(window.narrow);
}

TEST_CASE("plans that cannot be used say every fault at once", "[cure][window]") {
    RunPlan plan{{}, plainCloth(c(150), c(160))};
    CHECK(windowOf(plan).error() == std::vector{WindowFault::emptyLayerList, WindowFault::fabricFaulty});
    plan.layers = {layer("a", withCeiling(ink("upside down", c(160)), c(150)))}; // a cure above its own ceiling
    CHECK(windowOf(plan).error() == std::vector{WindowFault::familyFaulty, WindowFault::fabricFaulty});
    CHECK(windowWithWaysOut(plan, nullptr, {}).error().size() == 2);
    plan = {{{"a", Ink{}, {}}}, plainCloth(c(170))};
    CHECK(windowOf(plan).error() == std::vector{WindowFault::familyFaulty});
}

TEST_CASE("hostile plans neither crash nor open", "[cure][window]") {
    const double bad = GENERATE(std::numeric_limits<double>::quiet_NaN(), std::numeric_limits<double>::infinity());
    CHECK_FALSE(windowOf({{layer("a", ink("i", c(bad)))}, plainCloth(c(170))}).has_value());
    CHECK_FALSE(windowOf({{layer("a", ink("i", c(150)))}, plainCloth(c(bad))}).has_value());
    auto held = ink("i", c(150));
    held.hold = Duration{-1};
    CHECK_FALSE(windowOf({{layer("a", held)}, plainCloth(c(170))}).has_value());
    const auto reversed = withPairs(ink("i", c(150)), {Duration{60}, c(145)}, {Duration{20}, c(165)});
    CHECK_FALSE(windowOf({{layer("a", reversed)}, plainCloth(c(170))}).has_value());
}

TEST_CASE("names of ten thousand characters pass through unharmed", "[cure][window]") {
    const std::string longName(10000, 'x');
    const RunPlan plan{{layer(longName, ink(longName, c(180)))}, plainCloth(c(170))};
    const auto window = open(windowWithWaysOut(plan, nullptr, {{ink(longName + "y", c(150))}, {}}));
    CHECK(window.culprits.front().name == longName);
    REQUIRE(window.waysOut.size() == 1);
    CHECK(window.waysOut[0].changes[0].from == longName);
    CHECK(window.waysOut[0].changes[0].to.size() == 10001);
}
