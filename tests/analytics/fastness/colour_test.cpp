#include "analytics/fastness/colour.hpp"

#include <catch2/catch.hpp>

#include <limits>

using namespace holdfast::analytics;
using Catch::WithinAbs;

TEST_CASE("the CIELAB difference is the length of the step", "[fastness][colour]") {
    // python3-colormath 3.0.0 (Debian 12), colormath.color_diff.delta_e_cie1976, six places.
    CHECK_THAT(*cielabDifference({50, 2.6772, -79.7751}, {50, 0, -82.7485}), WithinAbs(4.001063, 0.0000005));
    CHECK_THAT(*cielabDifference({60.2574, -34.0099, 36.2677}, {60.4626, -34.1751, 39.4387}),
               WithinAbs(3.181924, 0.0000005));
    CHECK_THAT(*cielabDifference({50, 2.5, 0}, {73, 25, -18}), WithinAbs(36.868008, 0.0000005));
    CHECK_THAT(*cielabDifference({40, 5, -40}, {44, 3, -35}), WithinAbs(6.708204, 0.0000005));
    CHECK_THAT(*cielabDifference({92, 0.5, 2}, {86, 9, 5}), WithinAbs(10.828204, 0.0000005));
    CHECK_THAT(*cielabDifference({20, 1, -3}, {26, 0, -1}), WithinAbs(6.403124, 0.0000005));
    CHECK(*cielabDifference({33, 12, -7}, {33, 12, -7}) == 0.0);
}

TEST_CASE("a colour that no surface has is refused with its cause", "[fastness][colour][hostile]") {
    const double nan = std::numeric_limits<double>::quiet_NaN();
    const double inf = std::numeric_limits<double>::infinity();
    for (const double bad : {nan, inf, -inf}) {
        CHECK(faultOf({bad, 0, 0}) == ColourFault::notFinite);
        CHECK(faultOf({50, bad, 0}) == ColourFault::notFinite);
        CHECK(faultOf({50, 0, bad}) == ColourFault::notFinite);
    }
    CHECK(faultOf({-0.01, 0, 0}) == ColourFault::lightnessOutOfRange);
    CHECK(faultOf({100.01, 0, 0}) == ColourFault::lightnessOutOfRange);
    CHECK(faultOf({50, 128.01, 0}) == ColourFault::chromaticOutOfRange); // ICC.1:2022, 6.3.4.2: −128 to 127
    CHECK(faultOf({50, 0, -128.01}) == ColourFault::chromaticOutOfRange);
    CHECK(faultOf({101, 200, 0}) == ColourFault::lightnessOutOfRange); // the first thing wrong
}

TEST_CASE("the ends of the ranges are colours", "[fastness][colour]") {
    CHECK_FALSE(faultOf({0, 0, 0}));
    CHECK_FALSE(faultOf({100, 0, 0}));
    CHECK_FALSE(faultOf({50, kLargestChromatic, -kLargestChromatic}));
}

TEST_CASE("either colour of a difference may be the bad one", "[fastness][colour][hostile]") {
    CHECK(cielabDifference({101, 0, 0}, {50, 0, 0}).error() == ColourFault::lightnessOutOfRange);
    CHECK(cielabDifference({50, 0, 0}, {50, 0, 129}).error() == ColourFault::chromaticOutOfRange);
    CHECK(ciede2000({101, 0, 0}, {50, 0, 0}).error() == ColourFault::lightnessOutOfRange);
    CHECK(ciede2000({50, 0, 0}, {50, -129, 0}).error() == ColourFault::chromaticOutOfRange);
}
