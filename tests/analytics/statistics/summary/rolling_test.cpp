#include "analytics/statistics/summary/moments.hpp"
#include "analytics/statistics/summary/rolling.hpp"
#include "tests/analytics/statistics/summary/certified_sets.hpp"

#include <boost/accumulators/accumulators.hpp>
#include <boost/accumulators/statistics/rolling_variance.hpp>
#include <boost/accumulators/statistics/stats.hpp>
#include <catch2/catch.hpp>
#include <cmath>
#include <random>

using namespace holdfast::analytics::statistics;

TEST_CASE("A window of seven over the beam deflections agrees with pandas", "[statistics][summary]") {
    const auto points = rolling(certified::column("lew"), 7);
    REQUIRE(points);
    REQUIRE(points->size() == 200);
    // pandas 1.5.3 Series.rolling(7).mean(), .std()
    CHECK((*points)[6].mean == Approx(-141.57142857142858).epsilon(1e-14));
    CHECK(*(*points)[6].sd == Approx(268.9869000173659).epsilon(1e-13));
    CHECK((*points)[100].mean == Approx(-159.42857142857142).epsilon(1e-14));
    CHECK(*(*points)[100].sd == Approx(294.06793837641055).epsilon(1e-13));
    CHECK((*points)[199].mean == Approx(-156.71428571428572).epsilon(1e-14));
    CHECK(*(*points)[199].sd == Approx(307.92570223227256).epsilon(1e-13));
    CHECK((*points)[0].count == 1);
    CHECK_FALSE((*points)[0].sd);
    CHECK((*points)[3].count == 4);
}

TEST_CASE("Every window of every length is what its own values come to", "[statistics][summary]") {
    const auto values = certified::column("michelso");
    for (const std::size_t length : {1U, 2U, 3U, 10U, 99U, 100U, 500U}) {
        const auto points = rolling(values, length);
        REQUIRE(points);
        for (std::size_t i = 0; i < values.size(); ++i) {
            const std::size_t count = std::min(length, i + 1);
            const auto own = moments(std::span{values}.subspan(i + 1 - count, count));
            CHECK((*points)[i].count == count);
            CHECK((*points)[i].mean == Approx(own->mean).epsilon(1e-14));
            CHECK((*points)[i].sd.has_value() == own->sd.has_value());
            CHECK((*points)[i].sd.value_or(0.0) == Approx(own->sd.value_or(0.0)).margin(1e-12));
        }
    }
}

TEST_CASE("A huge value leaves no trace once it is out of the window, as it does in a rolling accumulator",
          "[statistics][summary]") {
    namespace acc = boost::accumulators;
    std::vector<double> values;
    for (int i = 0; i < 100; ++i) {
        values.push_back(i == 50 ? 1e12 : 20.0 + 0.1 * (i % 3));
    }
    acc::accumulator_set<double, acc::stats<acc::tag::rolling_variance>> rollingOne(
        acc::tag::rolling_window::window_size = 6);
    for (const double value : values) {
        rollingOne(value);
    }
    const double expected = 0.08944271909999159; // sd of 0, .1, .2, 0, .1, .2: sqrt(0.04/5)
    const auto points = rolling(values, 6);
    CHECK(*points->back().sd == Approx(expected).epsilon(1e-12));
    const double drifted = acc::rolling_variance(rollingOne);
    CHECK_FALSE(std::abs(std::sqrt(std::abs(drifted)) - expected) < 1e-3);
}

TEST_CASE("A window of time holds what falls in it, gaps and ties included", "[statistics][summary]") {
    const std::vector<double> times{0, 1, 2, 2, 10, 10.5, 13};
    const std::vector<double> values{4, 6, 8, 10, 1, 3, 9};
    const auto points = rollingInTime(times, values, 2.5);
    REQUIRE(points);
    const std::vector<std::size_t> counts{1, 2, 3, 4, 1, 2, 1};
    const std::vector<double> means{4, 5, 6, 7, 1, 2, 9};
    for (std::size_t i = 0; i < counts.size(); ++i) {
        CHECK((*points)[i].count == counts[i]);
        CHECK((*points)[i].mean == Approx(means[i]));
    }
    CHECK(*(*points)[5].sd == Approx(std::sqrt(2.0)));
    // (t − width, t]: a value exactly one width ago is out
    CHECK(rollingInTime(std::vector{0.0, 2.0}, std::vector{1.0, 5.0}, 2.0)->back().count == 1);
}

TEST_CASE("Windows over impossible columns are refused", "[statistics][summary][hostile]") {
    const std::vector<double> two{1.0, 2.0};
    CHECK(rolling({}, 3).error() == StatisticsFault::NoValues);
    CHECK(rolling(two, 0).error() == StatisticsFault::OutOfDomain);
    CHECK(rolling(std::vector{1.0, std::nan("")}, 2).error() == StatisticsFault::NotFinite);
    CHECK(rollingInTime(std::vector{1.0}, two, 1.0).error() == StatisticsFault::UnequalLengths);
    CHECK(rollingInTime(std::vector{2.0, 1.0}, two, 1.0).error() == StatisticsFault::OutOfOrder);
    CHECK(rollingInTime(two, two, 0.0).error() == StatisticsFault::OutOfDomain);
    CHECK(rollingInTime(two, two, std::nan("")).error() == StatisticsFault::OutOfDomain);
    CHECK(rolling(std::vector{1e308, -1e308}, 2).error() == StatisticsFault::OutOfDomain);
}

TEST_CASE("A million values in a window of a hundred thousand take no longer than they should",
          "[statistics][summary][hostile]") {
    std::vector<double> values(1'000'000);
    std::mt19937_64 random{5};
    std::normal_distribution<double> normal{1e6, 1.0};
    for (auto& value : values) {
        value = normal(random);
    }
    const auto points = rolling(values, 100'000);
    REQUIRE(points);
    const auto own = moments(std::span{values}.last(100'000));
    CHECK(points->back().mean == Approx(own->mean).epsilon(1e-14));
    CHECK(*points->back().sd == Approx(*own->sd).epsilon(1e-10));
}
