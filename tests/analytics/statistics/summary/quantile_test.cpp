#include "analytics/statistics/summary/quantile.hpp"
#include "tests/analytics/statistics/summary/certified_sets.hpp"
#include "tests/analytics/statistics/summary/wafers.hpp"

#include <algorithm>
#include <array>
#include <catch2/catch.hpp>
#include <limits>

using namespace holdfast::analytics::statistics;

TEST_CASE("The 90th percentile of the wafers is the handbook's under its definition", "[statistics][summary]") {
    CHECK(*quantile(kWafers, 0.9, QuantileType::Six) == Approx(95.1981).margin(5e-5));             // e-Handbook 7.2.6.2
    CHECK(*quantile(kWafers, 0.9, QuantileType::Seven) == Approx(95.1957).margin(5e-5));           // e-Handbook 7.2.6.2
    CHECK(*quantile(kWafers, 0.9, QuantileType::Eight) == Approx(95.1972433333333).margin(5e-13)); // R 4.2.2 quantile
}

TEST_CASE("The three definitions agree with R on Michelson's speeds", "[statistics][summary]") {
    const auto values = certified::column("michelso");
    constexpr std::array<double, 6> kAt{0.05, 0.1, 0.25, 0.5, 0.9, 0.99};
    // R 4.2.2: quantile(x, c(0.05, .1, .25, .5, .9, .99), type = 6), 7 and 8
    constexpr std::array<std::array<double, 6>, 3> kExpected{{
        {299.7210, 299.7600, 299.8025, 299.8500, 299.9600, 300.0693},
        {299.7390, 299.7600, 299.8075, 299.8500, 299.9600, 300.0007},
        {299.727, 299.760, 299.804166666667, 299.850, 299.960, 300.046433333333},
    }};
    constexpr std::array kTypes{QuantileType::Six, QuantileType::Seven, QuantileType::Eight};
    for (std::size_t type = 0; type < kTypes.size(); ++type) {
        const auto all = quantiles(values, kAt, kTypes[type]);
        REQUIRE(all);
        for (std::size_t i = 0; i < kAt.size(); ++i) {
            CAPTURE(type, kAt[i]);
            CHECK((*all)[i] == Approx(kExpected[type][i]).margin(5e-10));
            CHECK(*quantile(values, kAt[i], kTypes[type]) == (*all)[i]);
        }
    }
}

TEST_CASE("Quantiles rise with p and end at the extremes", "[statistics][summary]") {
    double before = -1.0;
    for (int i = 0; i <= 100; ++i) {
        const double now = *quantile(kWafers, i / 100.0);
        CHECK(now >= before);
        before = now;
    }
    CHECK(*quantile(kWafers, 0.0) == 95.0610);
    CHECK(*quantile(kWafers, 1.0) == 95.1990);
}

TEST_CASE("Quantiles of few or impossible values", "[statistics][summary][hostile]") {
    CHECK(*quantile(std::vector{7.5}, 0.3) == 7.5);
    CHECK(*quantile(std::vector{2.0, 2.0, 2.0}, 0.77) == 2.0);
    CHECK(*quantile(std::vector{-1.7e308, 1.7e308}, 0.5, QuantileType::Seven) == 0.0);
    CHECK(quantile({}, 0.5).error() == StatisticsFault::NoValues);
    CHECK(quantile(kWafers, 1.5).error() == StatisticsFault::OutOfDomain);
    CHECK(quantile(kWafers, std::numeric_limits<double>::quiet_NaN()).error() == StatisticsFault::OutOfDomain);
    CHECK(quantile(std::vector{1.0, std::numeric_limits<double>::infinity()}, 0.5).error() ==
          StatisticsFault::NotFinite);
}
