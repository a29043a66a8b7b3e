#include "analytics/statistics/models/trend.hpp"

#include "analytics/statistics/models/slope_selection.hpp"
#include "tests/analytics/statistics/models/nile.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <limits>
#include <random>

using namespace holdfast::analytics::statistics;

namespace {

std::vector<double> allSlopes(const std::vector<double>& x, const std::vector<double>& y) {
    std::vector<double> slopes;
    for (std::size_t i = 0; i < x.size(); ++i) {
        for (std::size_t j = i + 1; j < x.size(); ++j) {
            if (x[i] != x[j]) {
                slopes.push_back((y[j] - y[i]) / (x[j] - x[i]));
            }
        }
    }
    std::sort(slopes.begin(), slopes.end());
    return slopes;
}

struct Line final {
    std::vector<double> times;
    std::vector<double> values;
};

/// Values about a line, the same every time.
Line noisyLine(std::size_t n, double level, double slope, double spread) {
    std::mt19937_64 random{42};
    Line line;
    for (std::size_t i = 0; i < n; ++i) {
        line.times.push_back(static_cast<double>(i));
        const double noise = static_cast<double>(random() >> 11) * 0x1.0p-53 - 0.5;
        line.values.push_back(level + slope * static_cast<double>(i) + spread * noise);
    }
    return line;
}

} // namespace

TEST_CASE("Sen's own example", "[statistics][models]") {
    // Sen, JASA 63:1379, 1968, section 6: slope 4, limits 26/7 and 35/8, intercept 6 through the median residual (as
    // scipy 1.10.1 quotes it in its tests of theilslopes). Sen calls them 93 % limits; the exact law of S gives the
    // slopes of these ranks, the fourth from either end, 1 − 2·76/5040 = 96.98 %, and the fifth 93.2 % (Hollander and
    // Wolfe, 2nd ed., 9.3, C = k − 2), so ours at 93 % are one rank further in.
    const std::vector<double> x{1, 2, 3, 4, 10, 12, 18};
    const std::vector<double> y{9, 15, 19, 20, 45, 55, 78};
    const auto result = theilSen(x, y, 0.9698);
    REQUIRE(result);
    CHECK(result->slope == 4.0);
    CHECK(result->intercept == 6.0);
    REQUIRE(result->lower);
    CHECK(*result->lower == Approx(26.0 / 7.0).margin(1e-12));
    CHECK(*result->upper == Approx(35.0 / 8.0).margin(1e-12));
    CHECK(result->isShown());
    const auto ninetyThree = theilSen(x, y, 0.93);
    CHECK(*ninetyThree->lower == Approx(3.75).margin(1e-12));
    CHECK(*ninetyThree->upper == Approx(46.0 / 11.0).margin(1e-12));
}

TEST_CASE("Nile: slope and Kendall limits at three levels", "[statistics][models]") {
    // scipy 1.10.1 theilslopes(Nile, range(1871, 1971), level, method="joint")
    struct Expected final {
        double level;
        double lower;
        double upper;
    };
    for (const auto& [level, lower, upper] :
         {Expected{0.90, -3.4285714285714284, -1.6590909090909092},
          Expected{0.95, -3.627906976744186, -1.4285714285714286}, Expected{0.99, -4.033333333333333, -1.04}}) {
        const auto result = theilSen(nileYears(), nileFlow(), level);
        REQUIRE(result);
        CHECK(result->slope == Approx(-2.6).margin(1e-12));
        CHECK(result->intercept == Approx(5890.3).margin(1e-9));
        CHECK(*result->lower == Approx(lower).margin(1e-12));
        CHECK(*result->upper == Approx(upper).margin(1e-12));
    }
}

TEST_CASE("Times that repeat and values that tie", "[statistics][models]") {
    const std::vector<double> x{0, 0, 1, 1, 2, 3, 3, 4, 5, 5, 6, 7, 8, 8, 9};
    const std::vector<double> y{2, 1, 3, 2, 2, 4, 5, 4, 6, 5, 5, 7, 6, 8, 9};
    const auto result = theilSen(x, y); // scipy 1.10.1 theilslopes(y, x, 0.95)
    REQUIRE(result);
    CHECK(result->slope == 0.75);
    CHECK(*result->lower == 0.5);
    CHECK(*result->upper == 1.0);
}

TEST_CASE("Five years of cloud seeding: limits only where five points allow them", "[statistics][models]") {
    // Hollander and Wolfe, Nonparametric Statistical Methods, 2nd ed., example 9.1: slope -.056; table A.30 gives
    // P(K ≥ 10) = .0083 and P(K ≥ 8) = .042 for n = 5
    const std::vector<double> year{1, 2, 3, 4, 5};
    const std::vector<double> ratio{1.26, 1.27, 1.12, 1.16, 1.03};
    const auto ninetyFive = theilSen(year, ratio, 0.95);
    REQUIRE(ninetyFive);
    CHECK(ninetyFive->slope == Approx(-0.05625).margin(1e-12)); // scipy 1.10.1 theilslopes
    CHECK(*ninetyFive->lower == Approx(-0.15).margin(1e-12));
    CHECK(*ninetyFive->upper == Approx(0.04).margin(1e-12));
    CHECK(ninetyFive->kendall.p == Approx(0.23333333333).margin(1e-10)); // scipy 1.10.1 kendalltau
    const auto ninetyNine = theilSen(year, ratio, 0.99);
    REQUIRE(ninetyNine);
    CHECK_FALSE(ninetyNine->lower);
    CHECK_FALSE(ninetyNine->isShown());
}

TEST_CASE("A selected slope is the one in the sorted list", "[statistics][models]") {
    std::mt19937_64 random{3};
    for (const unsigned grid : {5U, 1'000U, 4'000'000'000U}) {
        std::vector<double> x;
        std::vector<double> y;
        for (int i = 0; i < 900; ++i) {
            x.push_back(static_cast<double>(random() % grid) / 7.0);
            y.push_back(static_cast<double>(random() % grid) - 0.3 * x.back() + 1e6);
        }
        const auto slopes = allSlopes(x, y);
        SlopeSelection selection{x, y};
        REQUIRE(selection.slopes() == static_cast<std::int64_t>(slopes.size()));
        for (const double share : {0.0, 0.001, 0.25, 0.5, 0.77, 0.999, 1.0}) {
            const auto index = static_cast<std::size_t>(share * static_cast<double>(slopes.size() - 1));
            const double selected = selection.ranked(static_cast<std::int64_t>(index) + 1);
            CHECK(selected == Approx(slopes[index]).epsilon(1e-9).margin(1e-12));
        }
    }
}

TEST_CASE("Three hundred thousand points have their slope in seconds", "[statistics][models]") {
    const auto line = noisyLine(300'000, 30.0, -2e-6, 8.0);
    const auto result = theilSen(line.times, line.values);
    REQUIRE(result);
    CHECK(result->slope == Approx(-2e-6).margin(4e-7));
    CHECK(*result->lower < result->slope);
    CHECK(*result->upper > result->slope);
    CHECK(result->isShown());
}

TEST_CASE("Whole numbers with hardly any trend tie at no slope", "[statistics][models]") {
    auto line = noisyLine(200'000, 5.0, 0.0, 3.0);
    for (double& value : line.values) {
        value = std::round(value);
    }
    const auto result = theilSen(line.times, line.values);
    REQUIRE(result);
    CHECK(result->slope == Approx(0.0).margin(1e-12));
}

TEST_CASE("The line follows shift, scale and turning of its points", "[statistics][models]") {
    auto line = noisyLine(57, 12.0, -0.11, 6.0);
    const auto straight = theilSen(line.times, line.values);
    REQUIRE(straight);
    auto turned = line;
    std::reverse(turned.times.begin(), turned.times.end());
    std::reverse(turned.values.begin(), turned.values.end());
    CHECK(theilSen(turned.times, turned.values)->slope == straight->slope); // the clock ran backwards
    for (std::size_t i = 0; i < line.times.size(); ++i) {
        turned.times[i] = 1.7e9 + 86'400.0 * line.times[i];
        turned.values[i] = -line.values[i];
    }
    const auto mirrored = theilSen(turned.times, turned.values);
    REQUIRE(mirrored);
    CHECK(mirrored->slope * 86'400.0 == Approx(-straight->slope));
    CHECK(*mirrored->lower * 86'400.0 == Approx(-*straight->upper));
    CHECK(*mirrored->upper * 86'400.0 == Approx(-*straight->lower));
}

TEST_CASE("Limits hold the true slope as often as they say", "[statistics][models]") {
    std::mt19937_64 random{11};
    std::normal_distribution<double> normal;
    int held = 0;
    constexpr int kTrials = 2'000;
    for (int trial = 0; trial < kTrials; ++trial) {
        std::vector<double> x;
        std::vector<double> y;
        for (int i = 0; i < 24; ++i) {
            x.push_back(i);
            y.push_back(0.4 * i + 3.0 * normal(random));
        }
        const auto result = theilSen(x, y);
        held += *result->lower <= 0.4 && 0.4 <= *result->upper ? 1 : 0;
    }
    const double share = held / static_cast<double>(kTrials);
    CHECK(share > 0.938); // 0.95 less 2.5 standard errors of 2,000 trials
    CHECK(share < 0.972);
}

TEST_CASE("A falling margin meets its limit in a range of weeks, never before today", "[statistics][drift]") {
    const auto line = noisyLine(40, 10.0, -0.2, 1.0);
    const auto result = drift(line.times, line.values, {0.0, DriftSide::Lower});
    REQUIRE(result);
    CHECK(result->standing == DriftStanding::Crosses);
    CHECK(result->last == 39.0);
    CHECK(result->levelNow == Approx(2.2).margin(0.3));
    CHECK(result->earliest >= 39.0);
    CHECK(result->earliest < 50.0); // the line without noise meets 0 at 50
    CHECK(result->latest > 50.0);
    CHECK(result->latest < 60.0);
}

TEST_CASE("Nothing is said of a date where the points do not carry it", "[statistics][drift]") {
    const auto few = noisyLine(19, 10.0, -0.2, 0.1);
    CHECK(drift(few.times, few.values, {0.0, DriftSide::Lower})->standing == DriftStanding::TooFewPoints);
    const auto flat = noisyLine(60, 10.0, 0.0, 5.0);
    CHECK(drift(flat.times, flat.values, {0.0, DriftSide::Lower})->standing == DriftStanding::NotShown);
    const auto rising = noisyLine(40, 10.0, 0.2, 1.0);
    CHECK(drift(rising.times, rising.values, {0.0, DriftSide::Lower})->standing == DriftStanding::MovesAway);
    CHECK(drift(rising.times, rising.values, {40.0, DriftSide::Upper})->standing == DriftStanding::Crosses);
    CHECK(drift(rising.times, rising.values, {15.0, DriftSide::Upper})->standing == DriftStanding::AlreadyPast);
    CHECK(drift(rising.times, rising.values, {HUGE_VAL, DriftSide::Upper}).error() == StatisticsFault::OutOfDomain);
}

TEST_CASE("Times that rounding cannot tell apart are one time, and the search ends", "[statistics][models]") {
    const auto apart = theilSen({1e16, 1e16 + 2, 0.0, 5e-324, 7.0}, {3, 1, 2, 9, 4});
    REQUIRE(apart);
    CHECK(std::isfinite(apart->slope));
    CHECK(apart->kendall.slopes == 9); // 0 and 5e-324 are one time beside 1e16
    CHECK(theilSen({1e300, 1, 2, 3, -1e300}, {3, 1, 2, 9, 4}));
    std::mt19937_64 random{13};
    const std::vector<double> odd{0, 1, 2, 1e-300, 1e154, 1e16, 1e16 + 2, -1e300, 5e-324, 100, 7};
    for (int trial = 0; trial < 2'000; ++trial) {
        std::vector<double> x;
        std::vector<double> y;
        for (int i = 0; i < 12; ++i) {
            x.push_back(odd[random() % odd.size()]);
            y.push_back(odd[random() % odd.size()]);
        }
        if (const auto result = theilSen(x, y)) {
            CHECK((std::isfinite(result->slope) && std::isfinite(result->intercept)));
        }
    }
}

TEST_CASE("Points without a slope are refused by name", "[statistics][models]") {
    const double nan = std::numeric_limits<double>::quiet_NaN();
    CHECK(theilSen({}, {}).error() == StatisticsFault::NoValues);
    CHECK(theilSen({1}, {2}).error() == StatisticsFault::TooFewValues);
    CHECK(theilSen({1, 1}, {2, 3}).error() == StatisticsFault::NoSpread);
    CHECK(theilSen({1, 2}, {3, 3}).error() == StatisticsFault::NoSpread);
    CHECK(theilSen({1, nan}, {3, 4}).error() == StatisticsFault::NotFinite);
    CHECK(theilSen({-1e308, 1e308}, {3, 4}).error() == StatisticsFault::NotFinite);
    CHECK(theilSen({0, 1e-300, 1e-299}, {3, 4e20, 5}).error() == StatisticsFault::NotFinite);
    CHECK(theilSen({1, 2}, {3, 4}, 1.0).error() == StatisticsFault::OutOfDomain);
    CHECK(theilSen({1, 2}, {3, 4}, nan).error() == StatisticsFault::OutOfDomain);
    const auto two = theilSen({2, 1}, {3, 4});
    REQUIRE(two);
    CHECK(two->slope == -1.0);
    CHECK_FALSE(two->lower);
}
