#include "analytics/fastness/grey_scale.hpp"
#include "tests/analytics/fastness/figures.hpp"

#include <catch2/catch.hpp>

#include <limits>

using namespace holdfast::analytics;
using namespace holdfast::analytics::testing;
using Catch::WithinAbs;

TEST_CASE("the grey scale rating of a change follows ISO 105-A05", "[fastness][grey-scale]") {
    // ISO 105-A05:1996, clauses 7 and 8, worked in double precision outside this program (Python 3.11), five places;
    // the first pair from a public implementation, which prints GS 4.46 (rounded).
    struct Row {
        Lab original;
        Lab treated;
        double deltaEf;
        double gs;
        const char* grade; // nearest of A02 to ΔE_F
    };
    const Row rows[] = {
        {{33.49205637, 18.21758719, 18.75735102}, {34.12387882, 18.98491883, 19.08586749}, 0.92189, 4.45771, "4-5"},
        {{50, 20, 10}, {53, 18, 12}, 4.02102, 2.75797, "3"},
        {{40, 5, -40}, {44, 3, -35}, 4.52589, 2.58733, "2-3"},
        {{60, 0, 0}, {63.4, 0, 0}, 3.4, 3.0, "3"},
        {{70, -20, 20}, {71, -18, 25}, 4.86264, 2.48380, "2-3"}};
    for (const auto& row : rows) {
        const auto change = instrumentalChange(row.original, row.treated);
        REQUIRE(change);
        CHECK_THAT(change->deltaEf, WithinAbs(row.deltaEf, 0.000005));
        CHECK_THAT(change->greyScale, WithinAbs(row.gs, 0.000005));
        CHECK(change->grade == grade(row.grade));
    }
}

TEST_CASE("each step of the scale for change lands on its own rating", "[fastness][grey-scale]") {
    // ISO 105-A02:1993: the chips are neutral greys, so ΔE_F is their lightness difference. ISO 105-A05 clause 8 puts
    // the whole grades on their number: 1.7 → 4, 3.4 → 3, 6.8 → 2, 13.6 → 1.
    const struct {
        double difference;
        const char* grade;
        double gs;
        double printed;
    } rows[] = {{0.0, "5", 5.0, 1e-9},   {0.8, "4-5", 4.5, 0.05}, {1.7, "4", 4.0, 1e-9},
                {2.5, "3-4", 3.5, 0.05}, {3.4, "3", 3.0, 1e-9},   {4.8, "2-3", 2.5, 0.05},
                {6.8, "2", 2.0, 1e-9},   {9.6, "1-2", 1.5, 0.05}, {13.6, "1", 1.0, 1e-9}};
    for (const auto& row : rows) {
        const auto change = instrumentalChange({80, 0, 0}, {80 - row.difference, 0, 0});
        REQUIRE(change);
        CHECK(change->grade == grade(row.grade));
        CHECK_THAT(change->greyScale, WithinAbs(row.gs, row.printed));
    }
    CHECK(instrumentalChange({90, 0, 0}, {10, 0, 0})->greyScale == 1.0); // clause 8: never below 1
}

TEST_CASE("a change that is none has the best rating", "[fastness][grey-scale]") {
    const auto change = instrumentalChange({44, 30, -61}, {44, 30, -61});
    REQUIRE(change);
    CHECK(change->deltaEf == 0.0);
    CHECK(change->greyScale == 5.0);
    CHECK(change->grade == Grade::best());
}

TEST_CASE("hues either side of the red axis are averaged the short way round", "[fastness][grey-scale]") {
    // ISO 105-A05:1996, clause 7.2, by hand: hues 350° and 10° mean 0°, so |hm − 280| = 280 and x = ((360 − 280)/30)² =
    // 7.11; equal chromas of 40: D = 0, ΔH = 2·40·sin 10° = 13.8919, ΔH_F = 13.8919/(1 + (10·40/1000)²) = 11.9757.
    const Lab before{50, 39.39231012, -6.94592711};
    const Lab after{50, 39.39231012, 6.94592711};
    CHECK_THAT(instrumentalChange(before, after)->deltaEf, WithinAbs(11.9757, 0.00005));
    CHECK_THAT(instrumentalChange(after, before)->deltaEf, WithinAbs(11.9757, 0.00005));
}

TEST_CASE("pure lightness steps of the staining scale have their rating by ISO 105-A04", "[fastness][grey-scale]") {
    // ISO 105-A04:1989, formula in clause 6, worked outside this program (Python 3.11), five places. Grades are those
    // of ISO 105-A03:1993 with these differences.
    const struct {
        double difference;
        double ssr;
        const char* grade;
    } rows[] = {{2.2, 4.49400, "4-5"}, {4.3, 3.98501, "4"},  {6.0, 3.50195, "3-4"},
                {8.5, 2.99690, "3"},   {16.9, 2.00040, "2"}, {34.1, 0.98252, "1"}};
    for (const auto& row : rows) {
        const auto rating = stainingRating(row.difference, -row.difference);
        REQUIRE(rating);
        CHECK_THAT(rating->ssr, WithinAbs(row.ssr, 0.000005));
        CHECK(rating->grade == grade(row.grade));
        CHECK(instrumentalStaining({95, 0, 0}, {95 - row.difference, 0, 0})->grade == grade(row.grade));
    }
}

TEST_CASE("a stain with colour in it is rated with four tenths of its colour part taken off",
          "[fastness][grey-scale]") {
    // ISO 105-A04:1989, clause 6, worked outside this program (Python 3.11), five places.
    const auto large = stainingRating(10, 6);
    REQUIRE(large);
    CHECK_THAT(large->deltaEgs, WithinAbs(6.8, 0.000005));
    CHECK_THAT(large->ssr, WithinAbs(3.32046, 0.000005));
    CHECK(large->grade == grade("3-4"));
    const auto small = stainingRating(5, -3);
    REQUIRE(small);
    CHECK_THAT(small->deltaEgs, WithinAbs(3.4, 0.000005));
    CHECK_THAT(small->ssr, WithinAbs(4.21800, 0.000005));
    CHECK(small->grade == grade("4"));
    const auto fromColours = instrumentalStaining({92, 0, 0}, {86, 8, 0}); // ΔE 10, ΔL −6
    REQUIRE(fromColours);
    CHECK_THAT(fromColours->ssr, WithinAbs(3.32046, 0.000005));
}

TEST_CASE("staining ratings are reported in the bands of ISO 105-A04", "[fastness][grey-scale]") {
    // ISO 105-A04:1989, 6.6.
    const struct {
        double from;
        const char* grade;
        const char* below;
    } bands[] = {{4.75, "5", "4-5"}, {4.25, "4-5", "4"}, {3.75, "4", "3-4"}, {3.25, "3-4", "3"},
                 {2.75, "3", "2-3"}, {2.25, "2-3", "2"}, {1.75, "2", "1-2"}, {1.25, "1-2", "1"}};
    for (const auto& band : bands) {
        CHECK(stainingBand(band.from) == grade(band.grade));
        CHECK(stainingBand(band.from - 0.01) == grade(band.below));
    }
    CHECK(stainingBand(5.0) == grade("5"));
    CHECK(stainingBand(0.98252) == grade("1"));
    CHECK(stainingBand(-3.0) == grade("1"));
}

TEST_CASE("no stain is a five, and more of a stain never a better grade", "[fastness][grey-scale]") {
    CHECK(stainingRating(0, 0)->ssr == 5.0);
    CHECK(stainingRating(0, 0)->grade == Grade::best());
    auto last = Grade::best();
    for (int i = 0; i <= 40000; ++i) {
        const auto now = stainingRating(i * 0.001, i * 0.001);
        if (!now || now->grade > last)
            FAIL("at " << i * 0.001);
        last = now->grade;
    }
    CHECK(last == grade("1"));
}

TEST_CASE("impossible differences have no rating", "[fastness][grey-scale][hostile]") {
    const double nan = std::numeric_limits<double>::quiet_NaN();
    CHECK(stainingRating(-1, 0).error() == ColourFault::differenceOutOfRange);
    CHECK(stainingRating(2, 3).error() == ColourFault::differenceOutOfRange);
    CHECK(stainingRating(nan, 0).error() == ColourFault::notFinite);
    CHECK(stainingRating(2, nan).error() == ColourFault::notFinite);
    CHECK(stainingBand(5.1).error() == ColourFault::differenceOutOfRange);
    CHECK(stainingBand(nan).error() == ColourFault::notFinite);
    CHECK(instrumentalChange({50, 0, 0}, {50, 200, 0}).error() == ColourFault::chromaticOutOfRange);
    CHECK(instrumentalChange({-1, 0, 0}, {50, 0, 0}).error() == ColourFault::lightnessOutOfRange);
    CHECK(instrumentalStaining({nan, 0, 0}, {50, 0, 0}).error() == ColourFault::notFinite);
}
