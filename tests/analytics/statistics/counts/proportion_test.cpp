#include "analytics/statistics/counts/proportion.hpp"
#include "tests/support/not_finite.hpp"

#include <catch2/catch.hpp>

#include <limits>
#include <random>
#include <vector>

using namespace holdfast::analytics::statistics;
using Catch::WithinAbs;
using holdfast::testing::kNaN;

namespace {

struct TwoSided {
    CountOf count;
    double exactLower, exactUpper, scoreLower, scoreUpper;
};

} // namespace

TEST_CASE("both limits of a share agree with the reference library", "[statistics][counts]") {
    // statsmodels 0.13.5 proportion_confint(k, n, 0.05, "beta") and "wilson"; 15 of 148 is a case of Newcombe, Stat.
    // Med. 17, 1998, Table I; 5 of 25 is 0.068 to 0.407 in Conover's tables.
    const auto row =
        GENERATE(TwoSided{{0, 5}, 0, .521824, 0, .434482}, TwoSided{{0, 10}, 0, .308497, 0, .277533},
                 TwoSided{{0, 20}, 0, .168433, 0, .161125}, TwoSided{{1, 10}, .002529, .445016, .017876, .404150},
                 TwoSided{{3, 20}, .032071, .378927, .052369, .360419},
                 TwoSided{{5, 25}, .068311, .407037, .088606, .391310}, TwoSided{{10, 10}, .691503, 1, .722467, 1},
                 TwoSided{{15, 148}, .057844, .161650, .062386, .160487}, TwoSided{{20, 20}, .831567, 1, .838875, 1},
                 TwoSided{{59, 59}, .939391, 1, .938871, 1}, TwoSided{{49, 50}, .893530, .999494, .895046, .996461},
                 TwoSided{{682, 925}, .707668, .765407, .707996, .764636});
    CAPTURE(row.count.hits, row.count.of);
    const auto exact = clopperPearson(row.count);
    const auto score = wilson(row.count);
    REQUIRE(exact);
    REQUIRE(score);
    CHECK_THAT(exact->lower, WithinAbs(row.exactLower, 1e-6));
    CHECK_THAT(exact->upper, WithinAbs(row.exactUpper, 1e-6));
    CHECK_THAT(score->lower, WithinAbs(row.scoreLower, 1e-6));
    CHECK_THAT(score->upper, WithinAbs(row.scoreUpper, 1e-6));
}

TEST_CASE("limits agree with a second reference library and the handbook", "[statistics][counts]") {
    // NIST/SEMATECH e-Handbook 7.2.4.1: 4 of 20, 90 %: 0.071354 to 0.401028; R 4.2.2 binom.test(4, 20, conf.level =
    // .9).
    const auto handbook = clopperPearson({4, 20}, 0.90);
    REQUIRE(handbook);
    CHECK_THAT(handbook->lower, WithinAbs(0.071354, 1e-6));
    CHECK_THAT(handbook->upper, WithinAbs(0.401028, 1e-6));
    // R 4.2.2 binom.test(x, n)$conf.int and prop.test(x, n, correct = FALSE)$conf.int.
    const auto row =
        GENERATE(TwoSided{{4, 20}, .057333997050, .436614002996, .080657662580, .416017432252},
                 TwoSided{{7, 100}, .028605288907, .138919728456, .034319261067, .137495147391},
                 TwoSided{{1, 1000}, 2.53174874913e-05, .00555892427983, 1.76546370626e-04, .00564255859796},
                 TwoSided{{0, 1}, 0, .975, 0, .793450685623});
    const auto exact = clopperPearson(row.count);
    const auto score = wilson(row.count);
    REQUIRE(exact);
    REQUIRE(score);
    CHECK_THAT(exact->lower, WithinAbs(row.exactLower, 1e-10));
    CHECK_THAT(exact->upper, WithinAbs(row.exactUpper, 1e-10));
    CHECK_THAT(score->lower, WithinAbs(row.scoreLower, 1e-10));
    CHECK_THAT(score->upper, WithinAbs(row.scoreUpper, 1e-10));
}

TEST_CASE("a one-sided limit spends the whole risk on its side", "[statistics][counts]") {
    // scipy 1.10.1 beta.ppf(.95, k + 1, n - k).
    const std::vector<std::pair<CountOf, double>> rows{
        {{0, 10}, .258866}, {{0, 20}, .139108}, {{1, 10}, .394163}, {{3, 20}, .343664}};
    for (const auto& [count, upper] : rows) {
        const auto limits = clopperPearson(count, 0.95, LimitSide::UpperOnly);
        REQUIRE(limits);
        CHECK(limits->lower == 0.0);
        CHECK_THAT(limits->upper, WithinAbs(upper, 1e-6));
        const auto mirrored = clopperPearson({count.of - count.hits, count.of}, 0.95, LimitSide::LowerOnly);
        REQUIRE(mirrored);
        CHECK(mirrored->upper == 1.0);
        CHECK_THAT(mirrored->lower, WithinAbs(1.0 - upper, 1e-6));
    }
}

TEST_CASE("exact limits cover at least what they say", "[statistics][counts]") {
    std::mt19937_64 random{3};
    std::binomial_distribution<std::int64_t> draw(30, 0.12);
    int covered = 0;
    for (int i = 0; i < 4000; ++i) {
        const auto limits = clopperPearson({draw(random), 30});
        REQUIRE(limits);
        covered += limits->lower <= 0.12 && 0.12 <= limits->upper ? 1 : 0;
    }
    CHECK(covered >= 3800);
}

TEST_CASE("missed readings widen a rate from failed of due to failed and missed of due", "[statistics][counts]") {
    const auto rate = rateWithMissed(2, 16, 4); // decisions 6: from failed/due to (failed + missed)/due
    REQUIRE(rate);
    CHECK(rate->due == 20);
    CHECK_THAT(rate->lowest, WithinAbs(0.10, 1e-15));
    CHECK_THAT(rate->highest, WithinAbs(0.30, 1e-15));
    CHECK_THAT(rate->limits.lower, WithinAbs(clopperPearson({2, 20})->lower, 1e-15));
    CHECK_THAT(rate->limits.upper, WithinAbs(clopperPearson({6, 20})->upper, 1e-15));
    const auto allMissed = rateWithMissed(0, 0, 5);
    REQUIRE(allMissed);
    CHECK(allMissed->lowest == 0.0);
    CHECK(allMissed->highest == 1.0);
}

TEST_CASE("a share that is none is refused with its fault", "[statistics][counts]") {
    CHECK(clopperPearson({0, 0}).error() == StatisticsFault::NoValues);
    CHECK(wilson({0, 0}).error() == StatisticsFault::NoValues);
    CHECK(clopperPearson({-1, 5}).error() == StatisticsFault::OutOfDomain);
    CHECK(clopperPearson({6, 5}).error() == StatisticsFault::OutOfDomain);
    CHECK(wilson({1, -5}).error() == StatisticsFault::OutOfDomain);
    for (const double confidence : {kNaN, 0.0, 1.0, -0.5, 2.0})
        CHECK(clopperPearson({1, 5}, confidence).error() == StatisticsFault::OutOfDomain);
    CHECK(rateWithMissed(0, 0, 0).error() == StatisticsFault::NoValues);
    CHECK(rateWithMissed(3, 2, 1).error() == StatisticsFault::OutOfDomain);
    CHECK(rateWithMissed(0, 2, -1).error() == StatisticsFault::OutOfDomain);
    CHECK(
        clopperPearson({std::numeric_limits<std::int64_t>::max(), std::numeric_limits<std::int64_t>::max()}).error() ==
        StatisticsFault::OutOfDomain);
    for (const double confidence : {1e-300, 1.0 - 1e-16})
        for (const auto side : {LimitSide::Both, LimitSide::UpperOnly, LimitSide::LowerOnly}) {
            CHECK(wilson({1, 5}, confidence, side));
            CHECK(clopperPearson({1, 5}, confidence, side));
        }
    const auto large = clopperPearson({1'000'000, 1'000'000'000'000});
    REQUIRE(large);
    CHECK(large->lower < 1e-6);
    CHECK(large->upper > 1e-6);
}
