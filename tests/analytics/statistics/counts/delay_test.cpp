#include "analytics/statistics/counts/fix_check.hpp"

#include "analytics/statistics/counts/count_domain.hpp"
#include "tests/support/not_finite.hpp"

#include <catch2/catch.hpp>

#include <limits>
#include <random>
#include <vector>

using namespace holdfast::analytics::statistics;
using Catch::WithinAbs;
using Catch::WithinRel;
using holdfast::testing::kNaN;

TEST_CASE("the delay curve is the chain ladder's", "[statistics][counts][delay]") {
    // Taylor and Ashe, J. Econometrics 23, 1983, triangle as in Mack, ASTIN Bulletin 23, 1993:
    // factors 3.491 1.747 1.457 1.174 1.104 1.086 1.054 1.077 1.018; reserve 18,680,856.
    const std::vector<std::vector<std::int64_t>> triangle{
        {357848, 1124788, 1735330, 2218270, 2745596, 3319994, 3466336, 3606286, 3833515, 3901463},
        {352118, 1236139, 2170033, 3353322, 3799067, 4120063, 4647867, 4914039, 5339085},
        {290507, 1292306, 2218525, 3235179, 3985995, 4132918, 4628910, 4909315},
        {310608, 1418858, 2195047, 3757447, 4029929, 4381982, 4588268},
        {443160, 1136350, 2128333, 2897821, 3402672, 3873311},
        {396132, 1333217, 2180715, 2985752, 3691712},
        {440832, 1288463, 2419861, 3483130},
        {359480, 1421128, 2864498},
        {376686, 1363294},
        {344014}};
    std::vector<DelayCount> counts;
    for (const auto& row : triangle)
        for (std::size_t j = 0; j < row.size(); ++j)
            counts.push_back({static_cast<std::int64_t>(j), static_cast<std::int64_t>(row.size()) - 1,
                              row[j] - (j > 0 ? row[j - 1] : 0)});
    const auto curve = delayCurve(counts);
    REQUIRE(curve);
    const std::vector<double> factors{3.491, 1.747, 1.457, 1.174, 1.104, 1.086, 1.054, 1.077, 1.018};
    for (std::size_t j = 0; j < factors.size(); ++j)
        CHECK_THAT(curve->arrived[j + 1] / curve->arrived[j], WithinAbs(factors[j], 5e-4));
    double reserve = 0.0;
    for (const auto& row : triangle)
        reserve +=
            static_cast<double>(row.back()) * (1.0 / curve->arrivedBy(static_cast<std::int64_t>(row.size()) - 1) - 1.0);
    CHECK_THAT(reserve, WithinAbs(18'680'856.0, 1.0));
}

TEST_CASE("right-truncated delays are left-truncated in reverse time", "[statistics][counts][delay]") {
    // R 4.2.2, survival 3.5-3: survfit(Surv(6 - age - .5, 6 - delay, rep(1, 15)) ~ 1).
    const std::vector<std::int64_t> delays{0, 1, 1, 2, 3, 0, 2, 5, 1, 4, 6, 2, 0, 1, 3};
    const std::vector<std::int64_t> ages{2, 1, 9, 6, 8, 0, 3, 9, 4, 7, 8, 9, 1, 2, 5};
    std::vector<DelayCount> counts;
    for (std::size_t i = 0; i < delays.size(); ++i)
        counts.push_back({delays[i], ages[i], 1});
    const auto curve = delayCurve(counts);
    REQUIRE(curve);
    const std::vector<double> arrived{
        .0856785863033, .2570357589100, .4498125780925, .6297376093294, .7346938775510, .8571428571429, 1.0};
    const std::vector<double> error{
        .0646318515033, .1247919292499, .1612886586524, .1683044555483, .1603233479285, .1322600142532, 0.0};
    REQUIRE(curve->arrived.size() == arrived.size());
    for (std::size_t t = 0; t < arrived.size(); ++t) {
        CHECK_THAT(curve->arrived[t], WithinAbs(arrived[t], 1e-12));
        CHECK_THAT(curve->standardError[t], WithinAbs(error[t], 1e-12));
    }
    CHECK_FALSE(curve->unstable);
    CHECK(curve->arrivedBy(-1) == 0.0);
    CHECK(curve->arrivedBy(99) == 1.0);
}

TEST_CASE("a curve of young shipments is not fooled by what has not come yet", "[statistics][counts][delay]") {
    std::mt19937_64 random{21};
    std::geometric_distribution<std::int64_t> delay(0.2);
    std::uniform_int_distribution<std::int64_t> age(0, 40);
    std::vector<DelayCount> counts;
    double short_ = 0.0;
    for (int i = 0; i < 20'000; ++i) {
        const std::int64_t d = delay(random);
        const std::int64_t a = age(random);
        if (d <= a) {
            counts.push_back({d, a, 1});
            short_ += d <= 3 ? 1.0 : 0.0;
        }
    }
    const auto curve = delayCurve(counts);
    REQUIRE(curve);
    const double truth = 1.0 - 0.8 * 0.8 * 0.8 * 0.8; // geometric, P(delay <= 3)
    CHECK_THAT(curve->arrivedBy(3), WithinAbs(truth, 4.0 * curve->standardError[3]));
    CHECK(short_ / static_cast<double>(counts.size()) >
          truth + 8.0 * curve->standardError[3]); // the naive share is off
}

TEST_CASE("delays that cannot be", "[statistics][counts][delay]") {
    CHECK(delayCurve({}).error() == StatisticsFault::NoValues);
    CHECK(delayCurve(std::vector<DelayCount>{{1, 2, 0}}).error() == StatisticsFault::NoValues);
    CHECK(delayCurve(std::vector<DelayCount>{{-1, 2, 1}}).error() == StatisticsFault::OutOfDomain);
    CHECK(delayCurve(std::vector<DelayCount>{{3, 2, 1}}).error() == StatisticsFault::OutOfDomain);
    CHECK(delayCurve(std::vector<DelayCount>{{1, 2, -1}}).error() == StatisticsFault::OutOfDomain);
    CHECK(delayCurve(std::vector<DelayCount>{{1, 1'000'000, 1}}).error() == StatisticsFault::OutOfDomain);
    const auto one = delayCurve(std::vector<DelayCount>{{4, 9, 1}});
    REQUIRE(one);
    CHECK(one->unstable); // nothing is known of earlier weeks: all that could be seen came in week 4
    CHECK(one->arrivedBy(3) == 0.0);
    CHECK(one->arrivedBy(4) == 1.0);
}

TEST_CASE("two rates are compared exactly", "[statistics][counts][rates]") {
    // R 4.2.2 poisson.test(c(11, 23), c(800, 3011)) and, of help(poisson.test), c(11, 6+8+7), c(800, 1083+1050+878).
    const auto first = compareRates({11, 800.0}, {23, 3011.0});
    REQUIRE(first);
    CHECK_THAT(*first->ratio, WithinAbs(1.80005434783, 1e-11));
    CHECK_THAT(first->lower, WithinAbs(.792205085833, 1e-10));
    CHECK_THAT(first->upper, WithinAbs(3.843862740395, 1e-10));
    CHECK_THAT(first->twoSided, WithinAbs(.136634447, 1e-9));
    const auto second = compareRates({11, 800.0}, {21, 3011.0});
    REQUIRE(second);
    CHECK_THAT(*second->ratio, WithinAbs(1.9714880952381, 1e-12));
    CHECK_THAT(second->lower, WithinAbs(.8584264033916, 1e-10));
    CHECK_THAT(second->upper, WithinAbs(4.2772659436541, 1e-10));
    CHECK_THAT(second->twoSided, WithinAbs(.0796686330333, 1e-11));
    CHECK_THAT(second->greater, WithinAbs(.0560086597877, 1e-11));
    CHECK_THAT(second->less, WithinAbs(.975931823227, 1e-11));
    const auto turned = compareRates({21, 3011.0}, {11, 800.0});
    CHECK_THAT(turned->twoSided, WithinRel(second->twoSided, 1e-10));
    CHECK_THAT(turned->lower * second->upper, WithinRel(1.0, 1e-10));
}

TEST_CASE("the power to see a lower rate is every outcome counted", "[statistics][counts][rates]") {
    // R 4.2.2: sum over n <= 400 of dpois(n, m1 + m2) pbinom(c, n, m2/(m1 + m2)), c the largest count with
    // pbinom(c, n, E2/(E1 + E2)) <= .025.
    CHECK_THAT(*lowerRatePower(20, 1, 10, 1, .025), WithinAbs(.373479594891, 1e-10));
    CHECK_THAT(*lowerRatePower(40, 1, 20, 1, .025), WithinAbs(.701982860428, 1e-10));
    CHECK_THAT(*lowerRatePower(60, 3, 10, 1, .025), WithinAbs(.530406581785, 1e-10));
    CHECK_THAT(*lowerRatePower(100, 100, 30, 60, .025), WithinAbs(.934351554209, 1e-10));
    // both sides of the change to the normal law agree
    CHECK_THAT(*lowerRatePower(550, 1, 449, 1, .025), WithinAbs(*lowerRatePower(552, 1, 451, 1, .025), 0.01));
    CHECK(*lowerRatePower(0, 1, 0, 1, .025) == 0.0);
}

TEST_CASE("rates of nothing", "[statistics][counts][rates]") {
    const auto none = compareRates({0, 5.0}, {0, 7.0});
    REQUIRE(none);
    CHECK_FALSE(none->ratio);
    CHECK(none->twoSided == 1.0);
    CHECK(none->upper == kUnbounded);
    const auto open = compareRates({4, 5.0}, {0, 7.0});
    REQUIRE(open);
    CHECK(*open->ratio == kUnbounded);
    CHECK(open->upper == kUnbounded);
    CHECK(open->lower > 0.0);
    CHECK(compareRates({-1, 5.0}, {0, 7.0}).error() == StatisticsFault::OutOfDomain);
    CHECK(compareRates({1, 0.0}, {0, 7.0}).error() == StatisticsFault::OutOfDomain);
    CHECK(compareRates({1, kNaN}, {0, 7.0}).error() == StatisticsFault::OutOfDomain);
    CHECK(compareRates({1, 1e-320}, {0, 1e308}).error() == StatisticsFault::OutOfDomain);
    CHECK(lowerRatePower(kNaN, 1, 1, 1, .05).error() == StatisticsFault::OutOfDomain);
    CHECK(lowerRatePower(1, 1, -1, 1, .05).error() == StatisticsFault::OutOfDomain);
}

TEST_CASE("a fix is judged by the complaints that can have come", "[statistics][counts][fix]") {
    DelayCurve curve;
    curve.arrived = {0.0, 0.25, 0.5, 0.75, 1.0};
    std::vector<ShippedWeek> before;
    for (std::int64_t age = 10; age < 30; ++age)
        before.push_back({age, 100.0, 2});
    const std::vector<ShippedWeek> after{{3, 100.0, 1}, {2, 100.0, 1}, {1, 100.0, 0}};
    FixQuestion question;
    question.weeklyShipped = 100.0;
    const auto check = checkFix(curve, before, after, question);
    REQUIRE(check);
    CHECK_THAT(check->exposedBefore, WithinAbs(2000.0, 1e-9));
    CHECK_THAT(check->exposedAfter, WithinAbs(150.0, 1e-9)); // 75 + 50 + 25
    CHECK_THAT(*check->afterOverBefore.ratio, WithinAbs((2.0 / 150.0) / (40.0 / 2000.0), 1e-12));
    CHECK(check->powerNow < 0.2);
    REQUIRE(check->weeksToShow);
    const double at = 300.0 + 100.0 * static_cast<double>(*check->weeksToShow - 1) - 150.0; // curve sums to 2.5 weeks
    CHECK(*lowerRatePower(40.0, 2000.0, 0.01 * at, at, 0.025) >= 0.80);
    CHECK(*lowerRatePower(40.0, 2000.0, 0.01 * (at - 100.0), at - 100.0, 0.025) < 0.80);
}

TEST_CASE("when nothing can show, no week is named", "[statistics][counts][fix]") {
    DelayCurve curve;
    curve.arrived = {1.0};
    const std::vector<ShippedWeek> quiet{{5, 100.0, 0}};
    const std::vector<ShippedWeek> loud{{5, 100.0, 1}};
    FixQuestion question;
    question.weeklyShipped = 100.0;
    const auto none = checkFix(curve, quiet, quiet, question);
    REQUIRE(none);
    CHECK_FALSE(none->weeksToShow);
    CHECK_FALSE(none->afterOverBefore.ratio);
    question.weeklyShipped = 0.0;
    CHECK_FALSE(checkFix(curve, loud, loud, question)->weeksToShow);
    CHECK(checkFix(curve, loud, {}, question).error() == StatisticsFault::NoValues);
    CHECK(checkFix(curve, std::vector<ShippedWeek>{{-1, 1.0, 0}}, loud).error() == StatisticsFault::OutOfDomain);
    CHECK(checkFix(curve, std::vector<ShippedWeek>{{1, kNaN, 0}}, loud).error() == StatisticsFault::OutOfDomain);
    question.effect = 1.0;
    CHECK(checkFix(curve, loud, loud, question).error() == StatisticsFault::OutOfDomain);
}
