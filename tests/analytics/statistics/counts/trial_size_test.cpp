#include "analytics/statistics/counts/trial_size.hpp"

#include <catch2/catch.hpp>

#include <limits>

using namespace holdfast::analytics::statistics;
using Catch::WithinAbs;

namespace {

struct Exact {
    double one, two;
    std::int64_t perArm;
    double power, before;
};

} // namespace

TEST_CASE("sizes by the normal approximation are the printed ones", "[statistics][counts][trial]") {
    // R 4.2.2 help(power.prop.test): p1 = .50, p2 = .75, power = .90 gives n = 76.7.
    CHECK_THAT(*approximateTrialSize({.50, .75, .90, .05}), WithinAbs(76.7, 0.05));
    // R 4.2.2 power.prop.test(p1, p2, power = .8)$n, whose own search stops at 1e-4 of the answer.
    CHECK_THAT(*approximateTrialSize({.05, .20}), WithinAbs(75.11873, 0.01));
    CHECK_THAT(*approximateTrialSize({.02, .10}), WithinAbs(137.15163, 0.02));
    CHECK_THAT(*approximateTrialSize({.10, .30}), WithinAbs(61.598804, 0.01));
    CHECK(*approximateTrialSize({.30, .10}) == *approximateTrialSize({.10, .30}));
}

TEST_CASE("exact sizes are those of every outcome counted", "[statistics][counts][trial]") {
    // R 4.2.2: sum of dbinom(i, n, p1) dbinom(j, n, p2) over all tables with fisher.test(...)$p.value <= .05, first n
    // from 3 upwards with 0.8 or more; power there and one piece before.
    const auto row =
        GENERATE(Exact{.1, .9, 7, .841640018788, .659002251898}, Exact{.05, .6, 13, .839485166381, .783783023670},
                 Exact{.1, .5, 23, .811422294681, .786286663259}, Exact{.05, .5, 17, .812960190858, .777258057595});
    const TrialQuestion question{row.one, row.two};
    const auto size = smallestTrial(question);
    REQUIRE(size);
    CHECK(size->perArm == row.perArm);
    CHECK(size->exact);
    CHECK_THAT(size->power, WithinAbs(row.power, 1e-10));
    CHECK_THAT(*fisherPower(question, row.perArm - 1), WithinAbs(row.before, 1e-10));
    CHECK_THAT(*fisherPower({row.two, row.one}, row.perArm), WithinAbs(row.power, 1e-10));
}

TEST_CASE("an exact test never alarms more often than its risk", "[statistics][counts][trial]") {
    // Power at nearly equal shares is the rate of false alarms.
    for (const double share : {0.05, 0.3, 0.5})
        for (const std::int64_t n : {5, 20, 60})
            CHECK(*fisherPower({share, share + 1e-12}, n) <= 0.05);
}

TEST_CASE("large trials are given by approximation and say so", "[statistics][counts][trial]") {
    const auto size = smallestTrial({.010, .015});
    REQUIRE(size);
    CHECK_FALSE(size->exact);
    // Fleiss, 2nd ed., (3.18): n = 7748.9 by the approximation above, n' = n/4 (1 + sqrt(1 + 4/(n .005)))^2 = 8147.6.
    CHECK_THAT(*approximateTrialSize({.010, .015}), WithinAbs(7748.9, 1.0));
    CHECK(size->perArm > 8140);
    CHECK(size->perArm < 8155);
}

TEST_CASE("no trial tells equal shares apart", "[statistics][counts][trial]") {
    const double nan = std::numeric_limits<double>::quiet_NaN();
    CHECK(smallestTrial({.1, .1}).error() == StatisticsFault::OutOfDomain);
    CHECK(smallestTrial({nan, .1}).error() == StatisticsFault::OutOfDomain);
    CHECK(smallestTrial({.1, 1.1}).error() == StatisticsFault::OutOfDomain);
    CHECK(smallestTrial({.1, .2, .04, .05}).error() == StatisticsFault::OutOfDomain);
    CHECK(smallestTrial({.1, .1 + 1e-12}).error() == StatisticsFault::OutOfDomain);
    CHECK_FALSE(smallestTrial({.1, .2, 1e-290, 1e-300}));
    CHECK(fisherPower({.1, .2}, 0).error() == StatisticsFault::OutOfDomain);
    CHECK(fisherPower({.1, .2}, 5000).error() == StatisticsFault::OutOfDomain);
    const auto certain = smallestTrial({0.0, 1.0});
    REQUIRE(certain);
    CHECK(certain->perArm == 4); // 2/C(8, 4) = 0.029, 2/C(6, 3) = 0.1
    CHECK(certain->power == 1.0);
}
