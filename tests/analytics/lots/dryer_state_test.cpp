#include "analytics/lots/dryer_state.hpp"
#include "tests/analytics/cure/verdict/ride.hpp"

#include <catch2/catch.hpp>

using namespace holdfast::analytics;

namespace {

constexpr auto G = LotOutcome::good;
constexpr auto H = LotOutcome::held;
constexpr auto U = LotOutcome::unproven;

Requirement asked(const RunPlan& plan) {
    return requirementOf(windowOf(plan).value());
}

DryerState state() {
    DryerState one;
    one.dryer = "D-1";
    one.setPoint = Temperature::fromFahrenheit(340.0);
    one.beltMetresPerMinute = 1.5;
    one.requirement = asked(ride::plan({ride::family(160.0)}, ride::ceilings(175.0)));
    one.clothWeightClass = "jersey";
    return one;
}

} // namespace

TEST_CASE("runs that ask the same of the dryer share its proof whatever lies on them", "[lots][state]") {
    auto two = ride::plan({ride::family(140.0), ride::family(160.0)}, ride::ceilings(175.0));
    auto turned = ride::plan({ride::family(160.0), ride::family(140.0)}, ride::ceilings(175.0));
    turned.layers.front().colour = "black";
    turned.fabric.name = "another cloth";
    CHECK(asked(two) == asked(turned));
    auto thrice = ride::plan({ride::family(140.0), ride::family(160.0), ride::family(160.0)}, ride::ceilings(175.0));
    CHECK(asked(two) == asked(thrice));
}

TEST_CASE("another cure, hold, dose or ceiling is another requirement", "[lots][state]") {
    const auto base = asked(ride::plan({ride::family(160.0)}, ride::ceilings(175.0)));
    CHECK_FALSE(base == asked(ride::plan({ride::family(161.0)}, ride::ceilings(175.0))));
    CHECK_FALSE(base == asked(ride::plan({ride::family(160.0, 90.0)}, ride::ceilings(175.0))));
    CHECK_FALSE(base == asked(ride::plan({ride::familyWithPairs()}, ride::ceilings(175.0))));
    CHECK_FALSE(base == asked(ride::plan({ride::family(160.0)}, ride::ceilings(170.0))));
    CHECK_FALSE(base == asked(ride::plan({ride::family(160.0)}, ride::ceilings(175.0, 165.0))));
    CHECK_FALSE(base == asked(ride::plan({ride::family(160.0)})));
}

TEST_CASE("a dryer state is its dryer, set-point, belt speed, requirement and weight class", "[lots][state]") {
    CHECK(state() == state());
    auto other = state();
    other.dryer = "D-2";
    CHECK_FALSE(other == state());
    other = state();
    other.setPoint = Temperature::fromFahrenheit(345.0);
    CHECK_FALSE(other == state());
    other.setPoint.reset();
    CHECK_FALSE(other == state());
    other = state();
    other.beltMetresPerMinute = 1.4;
    CHECK_FALSE(other == state());
    other = state();
    other.clothWeightClass = "hooded";
    CHECK_FALSE(other == state());
}

TEST_CASE("only a stop longer than one dwell ends the state", "[lots][state]") {
    // 2.5 m at 1.5 m/min: a dwell of 100 s.
    const Duration dwell{2.5 / 1.5 * 60.0};
    CHECK_FALSE(stopEndsState(Duration{0.0}, dwell));
    CHECK_FALSE(stopEndsState(Duration{100.0}, dwell));
    CHECK(stopEndsState(Duration{100.1}, dwell));
    CHECK(stopEndsState(Duration{1.0}, std::nullopt)); // nobody knows the dwell
}

TEST_CASE("reading is tightened as soon as two of the last five lots were held", "[lots][state]") {
    // ISO 2859-1:1999, 9.3.1: two out of five or fewer consecutive lots.
    CHECK_FALSE(isTightened({}));
    CHECK_FALSE(isTightened({H}));
    CHECK(isTightened({H, H}));
    CHECK(isTightened({H, G, G, G, H}));
    CHECK_FALSE(isTightened({H, G, G, G, G, H})); // five lie between the first and the last
    CHECK(isTightened({G, G, G, H, U, H}));
}

TEST_CASE("five good lots in succession bring normal reading back", "[lots][state]") {
    // ISO 2859-1:1999, 9.3.2.
    CHECK(isTightened({H, H, G, G, G, G}));
    CHECK_FALSE(isTightened({H, H, G, G, G, G, G}));
    CHECK(isTightened({H, H, G, G, G, G, H, G, G, G, G}));
    CHECK(isTightened({H, H, G, G, G, G, U, G}));       // an unproven lot is not a good one
    CHECK_FALSE(isTightened({H, H, G, G, G, G, G, H})); // one held since
    CHECK(isTightened({H, H, G, G, G, G, G, H, G, H})); // two since
}
