#include "analytics/statistics/summary/grubbs.hpp"

#include <catch2/catch.hpp>
#include <cmath>
#include <vector>

using namespace holdfast::analytics::statistics;

namespace {

/// NIST/SEMATECH e-Handbook 1.3.5.17.1, from Tietjen and Moore 1972.
const std::vector<double> kUranium{199.31, 199.53, 200.19, 200.82, 201.92, 201.95, 202.18, 245.57};

} // namespace

TEST_CASE("Grubbs' test finds the handbook's outlier", "[statistics][summary]") {
    const auto test = grubbs(kUranium, 0.05, OutlierSide::Largest);
    REQUIRE(test);
    CHECK(test->statistic == Approx(2.4687).margin(1e-4));  // e-Handbook 1.3.5.17.1
    CHECK(test->critical == Approx(2.032).margin(5e-4));    // e-Handbook 1.3.5.17.1
    CHECK(test->critical == Approx(2.031652).margin(5e-7)); // scipy 1.10.1 t.ppf
    CHECK(test->outlier);
    CHECK(test->suspect == 7);
}

TEST_CASE("One-sided critical values at 5 %", "[statistics][summary]") {
    // (n−1)/√n·√(t²/(n−2+t²)), scipy 1.10.1 t.ppf(1 − 0.05/n, n − 2)
    const std::vector<std::pair<std::size_t, double>> expected{{5, 1.6714},  {6, 1.8221},  {7, 1.9381}, {10, 2.1761},
                                                               {12, 2.2850}, {20, 2.5566}, {30, 2.7451}};
    for (const auto& [n, critical] : expected) {
        CHECK(*grubbsCritical(n, 0.05, OutlierSide::Largest) == Approx(critical).margin(5.1e-5));
        CHECK(*grubbsCritical(n, 0.05, OutlierSide::Smallest) == Approx(critical).margin(5.1e-5));
    }
}

TEST_CASE("Two-sided critical values at 5 %", "[statistics][summary]") {
    // scipy 1.10.1 t.ppf(1 − 0.05/(2n), n − 2)
    const std::vector<std::pair<std::size_t, double>> expected{{7, 2.0200}, {8, 2.1266}, {10, 2.2900}, {20, 2.7082}};
    for (const auto& [n, critical] : expected) {
        CHECK(*grubbsCritical(n, 0.05, OutlierSide::Either) == Approx(critical).margin(5.1e-5));
    }
}

TEST_CASE("A value is suspected on the side asked for", "[statistics][summary]") {
    std::vector<double> mirrored = kUranium;
    for (auto& value : mirrored) {
        value = -value;
    }
    CHECK(grubbs(mirrored, 0.05, OutlierSide::Smallest)->statistic == Approx(2.4687).margin(1e-4));
    CHECK(grubbs(mirrored, 0.05, OutlierSide::Either)->suspect == 7);
    CHECK_FALSE(grubbs(kUranium, 0.05, OutlierSide::Smallest)->outlier);
}

TEST_CASE("Grubbs' test on few, equal and impossible values", "[statistics][summary][hostile]") {
    CHECK(grubbs({}, 0.05, OutlierSide::Either).error() == StatisticsFault::NoValues);
    CHECK(grubbs(std::vector{1.0, 2.0}, 0.05, OutlierSide::Either).error() == StatisticsFault::TooFewValues);
    CHECK(grubbs(std::vector{1.0, 1.0, 1.0}, 0.05, OutlierSide::Either).error() == StatisticsFault::NoSpread);
    CHECK(grubbs(std::vector{1.0, std::nan(""), 1.0}, 0.05, OutlierSide::Either).error() == StatisticsFault::NotFinite);
    CHECK(grubbs(kUranium, 0.0, OutlierSide::Either).error() == StatisticsFault::OutOfDomain);
    CHECK(grubbs(kUranium, 1.0, OutlierSide::Either).error() == StatisticsFault::OutOfDomain);
    CHECK(grubbsCritical(1'000'000, 0.05, OutlierSide::Either).has_value());
}
