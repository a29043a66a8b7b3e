#include "analytics/statistics/summary/moments.hpp"
#include "analytics/statistics/summary/running.hpp"
#include "tests/analytics/statistics/summary/certified_sets.hpp"

#include <boost/accumulators/accumulators.hpp>
#include <boost/accumulators/statistics/stats.hpp>
#include <boost/accumulators/statistics/variance.hpp>
#include <catch2/catch.hpp>
#include <cmath>
#include <limits>
#include <random>

using namespace holdfast::analytics::statistics;

namespace {

constexpr double kNan = std::numeric_limits<double>::quiet_NaN();
constexpr double kInfinity = std::numeric_limits<double>::infinity();

/// Digits two figures share (McCullough 1998, "log relative error"), at most 15.
double digits(double got, double certified) {
    return got == certified ? 15.0 : std::min(15.0, -std::log10(std::abs(got - certified) / std::abs(certified)));
}

} // namespace

TEST_CASE("Every certified set comes out to its printed digits", "[statistics][summary][nist]") {
    for (const auto& set : certified::sets()) {
        CAPTURE(set.name);
        REQUIRE(set.values.size() == set.count);
        const auto got = moments(set.values);
        REQUIRE(got);
        CHECK(got->count == set.count);
        CHECK(got->mean == Approx(set.mean).epsilon(1e-14));
        CHECK(*got->sd == Approx(set.sd).epsilon(2e-15 * 5));
        CHECK(*got->lag1 == Approx(set.lag1).epsilon(5e-14));
        CHECK(got->asDecimals);
        CHECK(got->min == *std::min_element(set.values.begin(), set.values.end()));
        CHECK(got->max == *std::max_element(set.values.begin(), set.values.end()));
    }
}

TEST_CASE("One pass over the accumulator keeps the digits its docstring says and no more",
          "[statistics][summary][nist]") {
    for (const auto& set : certified::sets()) {
        CAPTURE(set.name);
        RunningMoments running;
        for (const double value : set.values) {
            REQUIRE(running.add(value));
        }
        const std::string name = set.name;
        const double least = name == "NumAcc4" ? 8.0 : name == "NumAcc3" ? 9.0 : name == "Michelso" ? 11.0 : 12.0;
        CHECK(digits(*running.mean(), set.mean) >= 13.0);
        CHECK(digits(*running.sd(), set.sd) >= least);
        if (name == "NumAcc3" || name == "NumAcc4") {
            CHECK(digits(*running.sd(), set.sd) < 11.0);
        }
        CHECK(running.count() == set.count);
        CHECK(*running.min() == *std::min_element(set.values.begin(), set.values.end()));
        CHECK(*running.max() == *std::max_element(set.values.begin(), set.values.end()));
    }
}

TEST_CASE("The accumulator that takes squares from squares loses every digit, so it is not used",
          "[statistics][summary]") {
    namespace acc = boost::accumulators;
    acc::accumulator_set<double, acc::stats<acc::tag::lazy_variance>> lazy;
    const auto set = certified::sets().back();
    for (const double value : set.values) {
        lazy(value);
    }
    const double n = 1001.0;
    CHECK(!(digits(std::sqrt(std::abs(acc::variance(lazy)) * n / (n - 1.0)), set.sd) > 1.0));
}

TEST_CASE("Values that are no written decimals are worked on as they are", "[statistics][summary]") {
    std::mt19937_64 random{7};
    std::normal_distribution<double> normal{1e6, 1.0};
    std::vector<double> values(1001);
    for (auto& value : values) {
        value = normal(random);
    }
    const auto got = moments(values);
    REQUIRE(got);
    CHECK_FALSE(got->asDecimals);
    long double sum = 0.0L;
    for (const double value : values) {
        sum += value;
    }
    const long double mean = sum / 1001.0L;
    long double squares = 0.0L;
    for (const double value : values) {
        squares += (value - mean) * (value - mean);
    }
    CHECK(got->mean == Approx(static_cast<double>(mean)).epsilon(1e-15));
    CHECK(*got->sd == Approx(static_cast<double>(std::sqrt(squares / 1000.0L))).epsilon(1e-13));
}

TEST_CASE("Shifting and stretching values shifts and stretches their figures", "[statistics][summary]") {
    const auto set = certified::sets()[2];
    std::vector<double> moved = set.values;
    for (auto& value : moved) {
        value = 3.0 - 0.5 * value;
    }
    const auto before = moments(set.values);
    const auto after = moments(moved);
    CHECK(after->mean == Approx(3.0 - 0.5 * before->mean).epsilon(1e-14));
    CHECK(*after->sd == Approx(0.5 * *before->sd).epsilon(1e-14));
    CHECK(*after->lag1 == Approx(*before->lag1).epsilon(1e-12));
}

TEST_CASE("Few, equal and impossible values get a figure or the reason why not", "[statistics][summary][hostile]") {
    CHECK(moments({}).error() == StatisticsFault::NoValues);
    CHECK(moments(std::vector{1.0, kNan}).error() == StatisticsFault::NotFinite);
    CHECK(moments(std::vector{1.0, kInfinity}).error() == StatisticsFault::NotFinite);
    CHECK(moments(std::vector{1e308, -1e308, 1.7e308}).error() == StatisticsFault::OutOfDomain);
    const auto one = moments(std::vector{4.25});
    REQUIRE(one);
    CHECK(one->mean == 4.25);
    CHECK_FALSE(one->sd);
    CHECK_FALSE(one->lag1);
    const auto equal = moments(std::vector<double>(50, 0.1));
    REQUIRE(equal);
    CHECK(equal->mean == 0.1);
    CHECK(*equal->sd == 0.0);
    CHECK_FALSE(equal->lag1);
    RunningMoments running;
    CHECK_FALSE(running.mean());
    CHECK_FALSE(running.max());
    CHECK(running.add(kNan).error() == StatisticsFault::NotFinite);
    CHECK(running.count() == 0);
    REQUIRE(running.add(2.0));
    CHECK(*running.mean() == 2.0);
    CHECK_FALSE(running.sd());
}

TEST_CASE("A million values are summed without losing digits", "[statistics][summary][hostile]") {
    std::vector<double> values(1'000'000);
    for (std::size_t i = 0; i < values.size(); ++i) {
        values[i] = 160.1 + (i % 2 == 0 ? 0.1 : -0.1);
    }
    const auto got = moments(values);
    REQUIRE(got);
    CHECK(got->mean == Approx(160.1).epsilon(1e-15));
    CHECK(*got->sd == Approx(0.1 * std::sqrt(1e6 / (1e6 - 1.0))).epsilon(1e-14)); // ±0.1 in equal parts
}
