#include "analytics/statistics/counts/false_discovery.hpp"
#include "analytics/statistics/counts/mantel_haenszel.hpp"
#include "analytics/statistics/counts/trend.hpp"
#include "tests/support/not_finite.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <limits>

using namespace holdfast::analytics::statistics;
using Catch::WithinAbs;
using Catch::WithinRel;
using holdfast::testing::kNaN;

TEST_CASE("smokers among four groups fall into a trend", "[statistics][counts][trend]") {
    // Fleiss, Statistical Methods for Rates and Proportions, 2nd ed., 1981, data; R 4.2.2 prop.trend.test.
    const std::vector<CountOf> groups{{83, 86}, {90, 93}, {129, 136}, {70, 82}};
    const std::vector<double> scores{1, 2, 3, 4};
    const auto test = cochranArmitage(groups, scores);
    REQUIRE(test);
    CHECK_THAT(test->chiSquare, WithinAbs(8.224922, 1e-6));
    CHECK_THAT(test->twoSided, WithinAbs(0.004131897, 1e-9));
    CHECK(test->z < 0.0);
    CHECK(test->slope < 0.0);
}

TEST_CASE("scores may be uneven and any linear change of them changes nothing", "[statistics][counts][trend]") {
    // R 4.2.2 prop.trend.test(c(2,5,9,14), c(40,42,38,41), c(0,1,2,5)).
    const std::vector<CountOf> groups{{2, 40}, {5, 42}, {9, 38}, {14, 41}};
    const auto test = cochranArmitage(groups, std::vector<double>{0, 1, 2, 5});
    REQUIRE(test);
    CHECK_THAT(test->chiSquare, WithinAbs(12.43762009, 1e-8));
    CHECK_THAT(test->twoSided, WithinAbs(0.000420771615, 1e-12));
    const auto moved = cochranArmitage(groups, std::vector<double>{100, 103, 106, 115});
    REQUIRE(moved);
    CHECK_THAT(moved->chiSquare, WithinRel(test->chiSquare, 1e-10));
    CHECK_THAT(moved->slope * 3.0, WithinRel(test->slope, 1e-10));
}

TEST_CASE("a trend needs groups, spread and finite scores", "[statistics][counts][trend]") {
    const std::vector<double> two{1, 2};
    CHECK(cochranArmitage({}, {}).error() == StatisticsFault::NoValues);
    CHECK(cochranArmitage(std::vector<CountOf>{{1, 2}}, two).error() == StatisticsFault::UnequalLengths);
    CHECK(cochranArmitage(std::vector<CountOf>{{0, 5}, {0, 5}}, two).error() == StatisticsFault::NoSpread);
    CHECK(cochranArmitage(std::vector<CountOf>{{5, 5}, {5, 5}}, two).error() == StatisticsFault::NoSpread);
    CHECK(cochranArmitage(std::vector<CountOf>{{1, 5}, {0, 0}}, two).error() == StatisticsFault::NoSpread);
    CHECK(cochranArmitage(std::vector<CountOf>{{1, 5}, {2, 5}}, std::vector<double>{1, 1}).error() ==
          StatisticsFault::NoSpread);
    CHECK(cochranArmitage(std::vector<CountOf>{{1, 5}, {2, 5}}, std::vector<double>{1, kNaN}).error() ==
          StatisticsFault::NotFinite);
    CHECK(cochranArmitage(std::vector<CountOf>{{6, 5}, {2, 5}}, two).error() == StatisticsFault::OutOfDomain);
    CHECK(cochranArmitage(std::vector<CountOf>{{1, 5}, {2, 5}}, std::vector<double>{-1e308, 1e308}).error() ==
          StatisticsFault::OutOfDomain);
}

TEST_CASE("admissions by department share one odds ratio", "[statistics][counts][mantel]") {
    // Bickel, Hammel and O'Connell, Science 187, 1975: admitted and rejected men, then women, in six departments;
    // R 4.2.2 mantelhaen.test(UCBAdmissions), its table read by rows of sex.
    const std::vector<FourfoldTable> departments{{512, 313, 89, 19},   {353, 207, 17, 8},  {120, 205, 202, 391},
                                                 {138, 279, 131, 244}, {53, 138, 94, 299}, {22, 351, 24, 317}};
    const auto common = mantelHaenszel(departments);
    REQUIRE(common);
    CHECK_THAT(*common->odds.ratio, WithinAbs(0.904696828259, 1e-12));
    CHECK_THAT(common->odds.lower, WithinAbs(0.771907361759, 1e-11));
    CHECK_THAT(common->odds.upper, WithinAbs(1.060329764437, 1e-11));
    CHECK_THAT(common->correctedChi, WithinAbs(1.426946228587, 1e-10));
    CHECK_THAT(common->correctedP, WithinAbs(0.232263462817, 1e-10));
    CHECK_THAT(common->chiSquare, WithinAbs(1.524606660443, 1e-10));
    CHECK_THAT(common->twoSided, WithinAbs(0.216923697056, 1e-10));
    CHECK(common->strataUsed == 6);
}

TEST_CASE("penicillin and rabbits, with strata of no contrast", "[statistics][counts][mantel]") {
    // Agresti, Categorical Data Analysis, 1990, p. 232, as in R 4.2.2 help(mantelhaen.test).
    const std::vector<FourfoldTable> rabbits{{0, 6, 0, 5}, {3, 3, 0, 6}, {6, 0, 2, 4}, {5, 1, 6, 0}, {2, 0, 5, 0}};
    const auto common = mantelHaenszel(rabbits);
    REQUIRE(common);
    CHECK_THAT(common->correctedChi, WithinAbs(3.9285714285714, 1e-10));
    CHECK_THAT(common->correctedP, WithinAbs(0.0474722551429, 1e-10));
    CHECK_THAT(*common->odds.ratio, WithinAbs(7.0, 1e-12));
    CHECK_THAT(common->odds.lower, WithinAbs(1.0267126884617, 1e-10));
    CHECK_THAT(common->odds.upper, WithinAbs(47.7251333802226, 1e-9));
    CHECK_THAT(common->chiSquare, WithinAbs(5.65714285714, 1e-10));
}

TEST_CASE("strata without a contrast give no ratio", "[statistics][counts][mantel]") {
    CHECK(mantelHaenszel({}).error() == StatisticsFault::NoValues);
    CHECK(mantelHaenszel(std::vector<FourfoldTable>{{}}).error() == StatisticsFault::NoValues);
    CHECK(mantelHaenszel(std::vector<FourfoldTable>{{0, 3, 0, 4}}).error() == StatisticsFault::NoSpread);
    CHECK(mantelHaenszel(std::vector<FourfoldTable>{{1, 3, 2, -4}}).error() == StatisticsFault::OutOfDomain);
    CHECK(mantelHaenszel(std::vector<FourfoldTable>{{1, 3, 2, 4}}, kNaN).error() == StatisticsFault::OutOfDomain);
    const auto open = mantelHaenszel(std::vector<FourfoldTable>{{3, 0, 0, 3}});
    REQUIRE(open);
    CHECK(*open->odds.ratio == kUnbounded);
    CHECK(open->odds.lower == 0.0);
    const auto none = mantelHaenszel(std::vector<FourfoldTable>{{0, 3, 3, 0}});
    REQUIRE(none);
    CHECK(*none->odds.ratio == 0.0);
    CHECK(none->odds.upper == kUnbounded);
}

TEST_CASE("Benjamini and Hochberg's own fifteen hypotheses", "[statistics][counts][discovery]") {
    // Benjamini and Hochberg, J. R. Stat. Soc. B 57, 1995, section 4.1: four rejected at q 0.05; adjusted values by
    // R 4.2.2 p.adjust(p, "BH").
    const std::vector<double> p{.0001, .0004, .0019, .0095, .0201, .0278, .0298, .0344,
                                .0459, .3240, .4262, .5719, .6528, .7590, 1.000};
    const std::vector<double> adjusted{.0015, .003, .0095,   .035625, .0603,   .063857, .063857, .0645,
                                       .0765, .486, .581182, .714875, .753231, .813214, 1};
    const auto q = benjaminiHochberg(p);
    REQUIRE(q);
    for (std::size_t i = 0; i < p.size(); ++i)
        CHECK_THAT((*q)[i], WithinAbs(adjusted[i], 1e-6));
    CHECK(std::count_if(q->begin(), q->end(), [](double value) { return value <= 0.05; }) == 4);
}

TEST_CASE("adjusted values stay where their p were given", "[statistics][counts][discovery]") {
    // R 4.2.2 p.adjust(c(.01,.02,.03,.04,.05,.5,.04), "BH").
    const auto q = benjaminiHochberg(std::vector<double>{.01, .02, .03, .04, .05, .5, .04});
    REQUIRE(q);
    const std::vector<double> expected{.056, .056, .056, .056, .0583333333333, .5, .056};
    for (std::size_t i = 0; i < expected.size(); ++i)
        CHECK_THAT((*q)[i], WithinAbs(expected[i], 1e-12));
    CHECK(benjaminiHochberg({})->empty());
    CHECK(benjaminiHochberg(std::vector<double>{.5, kNaN}).error() == StatisticsFault::OutOfDomain);
    CHECK(benjaminiHochberg(std::vector<double>{1.5}).error() == StatisticsFault::OutOfDomain);
}
