#include "analytics/fastness/extension.hpp"

#include <catch2/catch.hpp>

#include <limits>
#include <vector>

using namespace holdfast::analytics;
using Catch::WithinAbs;

namespace {

Length mm(double value) {
    return millimetres(value);
}
double percent(const tl::expected<RelativeLength, ExtensionFault>& change) {
    REQUIRE(change);
    return change->percent();
}

} // namespace

TEST_CASE("stretch, growth and recovery are those of ASTM D3107", "[fastness][extension]") {
    // ASTM D3107-07, terms A original, B stretched, C after relaxation (formulas from memory): A 250.0, B 312.5, C
    // 257.5 mm give 25.0, 3.0 and 88.0 %.
    CHECK_THAT(percent(elongation(mm(250.0), mm(312.5))), WithinAbs(25.0, 1e-9));
    CHECK_THAT(percent(growth(mm(250.0), mm(257.5))), WithinAbs(3.0, 1e-9));
    CHECK_THAT(percent(recovery(mm(250.0), mm(312.5), mm(257.5))), WithinAbs(88.0, 1e-9));
}

TEST_CASE("recovery is what growth left of the stretch", "[fastness][extension]") {
    // By the terms of ASTM D3107: recovery = 1 − growth/stretch.
    for (int stretched = 101; stretched <= 200; stretched += 9)
        for (int relaxed = 95; relaxed <= stretched; relaxed += 5) {
            const double left = percent(growth(mm(100), mm(relaxed))) / percent(elongation(mm(100), mm(stretched)));
            CHECK_THAT(percent(recovery(mm(100), mm(stretched), mm(relaxed))), WithinAbs(100.0 * (1.0 - left), 1e-6));
        }
}

TEST_CASE("the ends of a pull are allowed", "[fastness][extension]") {
    CHECK(percent(elongation(mm(100), mm(100))) == 0.0);
    CHECK_THAT(percent(recovery(mm(100), mm(150), mm(150))), WithinAbs(0.0, 1e-9));
    CHECK_THAT(percent(recovery(mm(100), mm(150), mm(100))), WithinAbs(100.0, 1e-9));
    CHECK_THAT(percent(recovery(mm(100), mm(150), mm(98))), WithinAbs(104.0, 1e-9));
    CHECK_THAT(percent(growth(mm(100), mm(98))), WithinAbs(-2.0, 1e-9));
}

TEST_CASE("dimensional change is that of ISO 5077, shrinkage negative", "[fastness][extension]") {
    // ISO 5077:2007, 100·(xt − x0)/x0: 350.0 → 336.0 is −4.0 %, 350 → 353.5 is +1.0 %, 250 → 243 is −2.8 %.
    CHECK_THAT(percent(dimensionalChange(mm(350.0), mm(336.0))), WithinAbs(-4.0, 1e-9));
    CHECK_THAT(percent(dimensionalChange(mm(350.0), mm(353.5))), WithinAbs(1.0, 1e-9));
    CHECK_THAT(percent(dimensionalChange(mm(250.0), mm(243.0))), WithinAbs(-2.8, 1e-9));
    CHECK(percent(dimensionalChange(mm(350.0), mm(350.0))) == 0.0);
}

TEST_CASE("the pairs of one direction are averaged", "[fastness][extension]") {
    // ISO 5077:2007, by hand: −4.0, −3.0 and −5.0 % of 350 mm average to −4.0 %.
    const std::vector<MarkPair> lengthwise{{mm(350), mm(336)}, {mm(350), mm(339.5)}, {mm(350), mm(332.5)}};
    CHECK_THAT(meanDimensionalChange(lengthwise)->percent(), WithinAbs(-4.0, 1e-9));
    CHECK_THAT(meanDimensionalChange({&lengthwise[1], 1})->percent(), WithinAbs(-3.0, 1e-9));
    const std::vector<MarkPair> unequal{{mm(250), mm(243)}, {mm(500), mm(498)}}; // −2.8 and −0.4 %
    CHECK_THAT(meanDimensionalChange(unequal)->percent(), WithinAbs(-1.6, 1e-9));
}

TEST_CASE("no marks and the first bad pair are named", "[fastness][extension][hostile]") {
    CHECK(meanDimensionalChange({}).error() == MarkFault{0, ExtensionFault::noMarks});
    const std::vector<MarkPair> bad{{mm(350), mm(340)}, {mm(0), mm(340)}, {mm(350), mm(-1)}};
    CHECK(meanDimensionalChange(bad).error() == MarkFault{1, ExtensionFault::gaugeNotPositive});
}

TEST_CASE("a gauge length of nothing measures nothing", "[fastness][extension][hostile]") {
    for (const double gauge : {0.0, -0.0, -250.0}) {
        CHECK(elongation(mm(gauge), mm(300)).error() == ExtensionFault::gaugeNotPositive);
        CHECK(growth(mm(gauge), mm(300)).error() == ExtensionFault::gaugeNotPositive);
        CHECK(recovery(mm(gauge), mm(300), mm(260)).error() == ExtensionFault::gaugeNotPositive);
        CHECK(dimensionalChange(mm(gauge), mm(300)).error() == ExtensionFault::gaugeNotPositive);
    }
}

TEST_CASE("lengths that cannot be are refused with their cause", "[fastness][extension][hostile]") {
    const double nan = std::numeric_limits<double>::quiet_NaN();
    const double inf = std::numeric_limits<double>::infinity();
    for (const double bad : {nan, inf, -inf}) {
        CHECK(elongation(mm(bad), mm(300)).error() == ExtensionFault::notFinite);
        CHECK(elongation(mm(250), mm(bad)).error() == ExtensionFault::notFinite);
        CHECK(recovery(mm(250), mm(300), mm(bad)).error() == ExtensionFault::notFinite);
        CHECK(dimensionalChange(mm(250), mm(bad)).error() == ExtensionFault::notFinite);
    }
    CHECK(elongation(mm(250), mm(0)).error() == ExtensionFault::lengthNotPositive);
    CHECK(growth(mm(250), mm(-1)).error() == ExtensionFault::lengthNotPositive);
    CHECK(dimensionalChange(mm(250), mm(0)).error() == ExtensionFault::lengthNotPositive);
    CHECK(elongation(mm(250), mm(249.9)).error() == ExtensionFault::stretchedBelowOriginal);
    CHECK(recovery(mm(250), mm(240), mm(250)).error() == ExtensionFault::stretchedBelowOriginal);
    CHECK(recovery(mm(250), mm(300), mm(300.1)).error() == ExtensionFault::relaxedAboveStretched);
    CHECK(recovery(mm(250), mm(250), mm(250)).error() == ExtensionFault::nothingStretched);
    CHECK(elongation(Length::fromMetres(1e-300), Length::fromMetres(1e300)).error() == ExtensionFault::notFinite);
}

TEST_CASE("a millimetre is a thousandth of a metre both ways", "[fastness][extension]") {
    CHECK_THAT(mm(350).metres(), WithinAbs(0.35, 1e-15));
    CHECK_THAT(inMillimetres(Length::fromMetres(0.3125)), WithinAbs(312.5, 1e-12));
    CHECK(RelativeLength::fromPercent(25).fraction() == 0.25);
}
