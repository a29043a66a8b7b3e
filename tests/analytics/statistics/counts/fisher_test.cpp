#include "analytics/statistics/counts/fisher.hpp"

#include "analytics/statistics/counts/hypergeometric.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <limits>

using namespace holdfast::analytics::statistics;
using Catch::WithinAbs;
using Catch::WithinRel;

namespace {

struct Odds {
    FourfoldTable table;
    double ratio, lower, upper;
};

} // namespace

TEST_CASE("the tea taster's cups", "[statistics][counts][fisher]") {
    // Fisher, The Design of Experiments, 1935, II; R 4.2.2 fisher.test.
    const auto three = fisherExact({3, 1, 1, 3});
    REQUIRE(three);
    CHECK_THAT(three->greater, WithinAbs(0.2428571, 1e-7));
    CHECK_THAT(three->greater, WithinAbs(17.0 / 70.0, 1e-14));
    CHECK_THAT(three->twoSided, WithinAbs(0.4857143, 1e-7));
    const auto four = fisherExact({4, 0, 0, 4});
    REQUIRE(four);
    CHECK_THAT(four->greater, WithinAbs(0.01428571, 1e-8));
    CHECK_THAT(four->twoSided, WithinAbs(0.02857143, 1e-8));
}

TEST_CASE("convictions of twins and a small table", "[statistics][counts][fisher]") {
    const auto convictions = fisherExact({2, 10, 15, 3}); // data of Fisher in R 4.2.2 help(fisher.test)
    REQUIRE(convictions);
    CHECK_THAT(convictions->less, WithinAbs(0.0004651809, 1e-9));
    CHECK_THAT(convictions->twoSided, WithinAbs(0.0005367241, 1e-9));
    const auto small = fisherExact({8, 2, 1, 5}); // R 4.2.2 fisher.test
    REQUIRE(small);
    CHECK_THAT(small->twoSided, WithinAbs(0.03496503, 1e-8));
    CHECK_THAT(small->greater, WithinAbs(0.02447552, 1e-8));
    const auto more = fisherExact({12, 5, 29, 2}); // scipy 1.10.1 fisher_exact
    REQUIRE(more);
    CHECK_THAT(more->less, WithinAbs(0.04455473784, 1e-10));
    CHECK_THAT(more->greater, WithinAbs(0.994525206, 1e-9));
    CHECK_THAT(more->twoSided, WithinAbs(0.08026855207, 1e-10));
}

TEST_CASE("far tails keep their digits", "[statistics][counts][fisher]") {
    const auto thousands = fisherExact({300, 2700, 200, 6800}); // R 4.2.2 and scipy 1.10.1 fisher_exact agree
    REQUIRE(thousands);
    CHECK_THAT(thousands->greater, WithinRel(3.43389483875e-46, 1e-9));
    CHECK_THAT(thousands->twoSided, WithinRel(3.98358434458e-46, 1e-9));
    const auto rare = fisherExact({40, 360, 900, 98700}); // scipy 1.10.1 fisher_exact
    REQUIRE(rare);
    CHECK_THAT(rare->greater, WithinRel(2.999557634e-28, 1e-9));
    const auto millions = fisherExact({1'000'000, 9'000'000, 1'003'000, 8'997'000}); // scipy 1.10.1 hypergeom.sf, cdf
    REQUIRE(millions);
    CHECK_THAT(millions->greater, WithinAbs(0.98730196, 1e-7));
    CHECK_THAT(millions->less, WithinAbs(0.01274698, 1e-7));
    const auto beyond = fisherExact({5000, 0, 0, 5000});
    REQUIRE(beyond);
    CHECK(beyond->greater > 0.0);
    CHECK(beyond->greater < 1e-300);
}

TEST_CASE("odds ratios and their limits are the conditional ones", "[statistics][counts][fisher]") {
    // scipy 1.10.1 contingency.odds_ratio(kind="conditional"), equal to R 4.2.2 uniroot over dhyper with tol 1e-14. R's
    // fisher.test stops its own search at a relative 1e-4 (6.408309, 621.93 for the first): its fifth digit is noise.
    const auto row = GENERATE(Odds{{3, 1, 1, 3}, 6.408319658, 0.2117355954, 626.2435306},
                              Odds{{8, 2, 1, 5}, 15.46581972, 1.008849208, 1059.639495},
                              Odds{{2, 10, 15, 3}, 0.04693663905, 0.003317163951, 0.3631896024},
                              Odds{{300, 2700, 200, 6800}, 3.777196632, 3.129835039, 4.565961182},
                              Odds{{12, 5, 29, 2}, 0.1726696469, 0.01453412573, 1.23100329},
                              Odds{{40, 360, 900, 98700}, 12.18399062, 8.503176019, 17.0484005});
    const auto odds = conditionalOddsRatio(row.table);
    REQUIRE(odds);
    REQUIRE(odds->ratio);
    CHECK_THAT(*odds->ratio, WithinRel(row.ratio, 1e-8));
    CHECK_THAT(odds->lower, WithinRel(row.lower, 1e-8));
    CHECK_THAT(odds->upper, WithinRel(row.upper, 1e-8));
}

TEST_CASE("odds agree with the printed ones to what those hold", "[statistics][counts][fisher]") {
    CHECK_THAT(*conditionalOddsRatio({3, 1, 1, 3})->ratio, WithinAbs(6.408309, 2e-5)); // R 4.2.2 fisher.test
    const auto convictions = conditionalOddsRatio({2, 10, 15, 3});                     // R 4.2.2 help(fisher.test)
    CHECK_THAT(convictions->lower, WithinAbs(0.003325764, 1e-5));
    CHECK_THAT(convictions->upper, WithinAbs(0.3631823, 1e-5));
    const auto open = conditionalOddsRatio({3, 0, 15, 82}); // R 4.2.2: Inf, 2.0135 to Inf, p 0.005046382
    REQUIRE(open);
    CHECK(*open->ratio == kUnbounded);
    CHECK_THAT(open->lower, WithinAbs(2.0135, 1e-3));
    CHECK(open->upper == kUnbounded);
    CHECK_THAT(fisherExact({3, 0, 15, 82})->twoSided, WithinAbs(0.005046382, 1e-9));
}

TEST_CASE("exchanging rows turns the odds over", "[statistics][counts][fisher]") {
    const FourfoldTable table =
        GENERATE(FourfoldTable{7, 3, 2, 9}, FourfoldTable{1, 50, 30, 900}, FourfoldTable{20, 1, 400, 300});
    const auto odds = conditionalOddsRatio(table);
    const auto turned =
        conditionalOddsRatio({table.failedWithout, table.passedWithout, table.failedWith, table.passedWith});
    REQUIRE(odds);
    REQUIRE(turned);
    CHECK_THAT(*odds->ratio * *turned->ratio, WithinRel(1.0, 1e-10));
    CHECK_THAT(odds->lower * turned->upper, WithinRel(1.0, 1e-9));
    const auto test = fisherExact(table);
    const auto other = fisherExact({table.failedWithout, table.passedWithout, table.failedWith, table.passedWith});
    CHECK_THAT(test->less, WithinRel(other->greater, 1e-10));
    CHECK_THAT(test->twoSided, WithinRel(other->twoSided, 1e-10));
}

TEST_CASE("both tails share the seen table once", "[statistics][counts][fisher]") {
    for (std::int64_t x = 0; x <= 6; ++x) {
        const Hypergeometric law(9, 14, 6);
        const auto tails = law.tails(x, 1.7);
        const double next = x < 6 ? law.tails(x + 1, 1.7).atLeast : 0.0;
        CHECK_THAT(tails.atMost + next, WithinAbs(1.0, 1e-13));
    }
}

TEST_CASE("tables without a contrast or none at all", "[statistics][counts][fisher]") {
    for (const FourfoldTable& table :
         {FourfoldTable{0, 5, 0, 7}, {5, 0, 7, 0}, {3, 4, 0, 0}, {0, 0, 3, 4}, {1, 0, 0, 0}}) {
        const auto test = fisherExact(table);
        REQUIRE(test);
        CHECK(test->greater == 1.0);
        CHECK(test->less == 1.0);
        CHECK(test->twoSided == 1.0);
        const auto odds = conditionalOddsRatio(table);
        REQUIRE(odds);
        CHECK_FALSE(odds->ratio);
        CHECK(odds->lower == 0.0);
        CHECK(odds->upper == kUnbounded);
    }
    CHECK(fisherExact({}).error() == StatisticsFault::NoValues);
    CHECK(fisherExact({-1, 2, 3, 4}).error() == StatisticsFault::OutOfDomain);
    CHECK(fisherExact({kLargestCount, kLargestCount, 1, 1}).error() == StatisticsFault::OutOfDomain);
    CHECK(conditionalOddsRatio({1, 2, 3, -4}).error() == StatisticsFault::OutOfDomain);
    CHECK(conditionalOddsRatio({1, 2, 3, 4}, std::nan("")).error() == StatisticsFault::OutOfDomain);
    const auto huge = fisherExact({500'000'000, 500'000'000, 500'010'000, 499'990'000});
    REQUIRE(huge);
    CHECK(huge->less > 0.0);
    CHECK(huge->less < 1.0);
}
