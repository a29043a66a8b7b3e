#include "analytics/statistics/charts/cusum.hpp"
#include "analytics/statistics/charts/ewma.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

using namespace holdfast::analytics::statistics;

namespace {

/// NIST/SEMATECH e-Handbook 6.3.2.4, EWMA example.
const std::vector<double> kEwma{52.0, 47.0, 53.0, 49.3, 50.1, 47.0, 51.0, 50.1, 51.2, 50.5,
                                49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1};

/// Means of groups, NIST/SEMATECH e-Handbook 6.3.2.3, CUSUM example.
const std::vector<double> kCusum{324.925, 324.675, 324.725, 324.350, 325.350, 325.225, 324.125,
                                 324.525, 325.225, 324.600, 324.625, 325.150, 328.325, 327.250,
                                 327.825, 328.500, 326.675, 327.775, 326.875, 328.350};

} // namespace

TEST_CASE("The handbook's EWMA", "[statistics][charts]") {
    const auto track = ewma(kEwma, 50.0, 2.0539, {0.3, 3.0, false});
    REQUIRE(track);
    // e-Handbook 6.3.2.4
    const std::vector<double> expected{50.60, 49.52, 50.56, 50.18, 50.16, 49.21, 49.75, 49.85,
                                       50.26, 50.33, 50.11, 49.36, 49.52, 50.05, 49.38};
    for (std::size_t i = 0; i < expected.size(); ++i) {
        CHECK(track->values[i] == Approx(expected[i]).margin(0.0051));
    }
    CHECK(50.0 + track->halfWidths.front() == Approx(52.5884).margin(1e-4));
    CHECK(50.0 - track->halfWidths.back() == Approx(47.4115).margin(1e-4));
    CHECK(track->outside.empty());
}

TEST_CASE("EWMA limits grow to the settled ones", "[statistics][charts]") {
    const auto growing = ewma(std::vector<double>(60, 50.0), 50.0, 1.0, {0.2, 2.7, true});
    const auto settled = ewma(std::vector<double>(60, 50.0), 50.0, 1.0, {0.2, 2.7, false});
    CHECK(growing->halfWidths[0] == Approx(2.7 * 0.2).epsilon(1e-14)); // variance of λx is λ²σ²
    CHECK(growing->halfWidths[59] == Approx(settled->halfWidths[59]).epsilon(1e-9));
    CHECK(std::is_sorted(growing->halfWidths.begin(), growing->halfWidths.end()));
    // R package qcc 3.0 documentation, viscosity, λ 0.2, 2.7 σ: first limits 33.81387 and 34.36213 around 34.088
    const auto viscosity = ewma(std::vector{34.05}, 34.088, 0.5076521, {0.2, 2.7, true});
    CHECK(34.088 - viscosity->halfWidths[0] == Approx(33.81387).margin(5e-6));
    CHECK(34.088 + viscosity->halfWidths[0] == Approx(34.36213).margin(5e-6));
}

TEST_CASE("With the whole weight on the latest value an EWMA is the values themselves", "[statistics][charts]") {
    const auto track = ewma(kEwma, 50.0, 1.0, {1.0, 3.0, true});
    CHECK(track->values == kEwma);
    CHECK(track->outside == std::vector<std::size_t>{18}); // 53.6 beyond 53; 53.0 on it is not
}

TEST_CASE("The handbook's CUSUM", "[statistics][charts]") {
    const auto track = cusum(kCusum, {325.0, 0.3175, 4.1959, 0.0});
    REQUIRE(track);
    // e-Handbook 6.3.2.3; half-way values 14.445 and 19.035 are rounded either way
    const std::vector<double> expected{0, 0, 0,    0,    .03,  0,     0,     0,     0,     0,
                                       0, 0, 3.01, 4.94, 7.45, 10.63, 11.99, 14.44, 16.00, 19.04};
    for (std::size_t i = 0; i < expected.size(); ++i) {
        CHECK(track->high[i] == Approx(expected[i]).margin(0.0051));
    }
    REQUIRE(track->alarms.size() == 7); // groups 14 to 20
    CHECK(track->alarms.front().at == 13);
    CHECK(track->alarms.back().at == 19);
    CHECK(track->alarms.front().side == SignalSide::Above);
    CHECK(track->alarms.front().since == 12); // the sum left zero at group 13
    CHECK(track->alarms.front().mean == Approx(325.0 + 0.3175 + 4.94 / 2.0).margin(0.003));
}

TEST_CASE("A CUSUM of mirrored values is mirrored", "[statistics][charts]") {
    std::vector<double> mirrored;
    for (const double value : kCusum) {
        mirrored.push_back(650.0 - value);
    }
    const auto one = cusum(kCusum, {325.0, 0.3175, 4.1959, 0.0});
    const auto other = cusum(mirrored, {325.0, 0.3175, 4.1959, 0.0});
    for (std::size_t i = 0; i < kCusum.size(); ++i) {
        CHECK(other->low[i] == Approx(one->high[i]).margin(1e-9));
    }
    CHECK(other->alarms.front().side == SignalSide::Below);
    CHECK(standardCusum(kCusum, 325.0, 0.635, 0.5, 6.607716)->alarms.front().at == 13); // the same k and h by σ
}

TEST_CASE("A head start signals sooner", "[statistics][charts]") {
    const std::vector<double> shifted(20, 1.0);
    const auto plain = cusum(shifted, {0.0, 0.5, 4.0, 0.0});
    const auto fast = cusum(shifted, {0.0, 0.5, 4.0, 2.0});
    CHECK(plain->alarms.front().at == 8); // 0.5 a point: beyond 4 at the ninth
    CHECK(fast->alarms.front().at == 4);  // from 2: beyond 4 at the fifth
}

TEST_CASE("Averages and sums of hostile columns", "[statistics][charts][hostile]") {
    CHECK(ewma({}, 0.0, 1.0).error() == StatisticsFault::NoValues);
    CHECK(ewma(std::vector{std::nan("")}, 0.0, 1.0).error() == StatisticsFault::NotFinite);
    CHECK(ewma(std::vector{1.0}, std::nan(""), 1.0).error() == StatisticsFault::NotFinite);
    CHECK(ewma(std::vector{1.0}, 0.0, -1.0).error() == StatisticsFault::OutOfDomain);
    CHECK(ewma(std::vector{1.0}, 0.0, 1.0, {0.0, 3.0, true}).error() == StatisticsFault::OutOfDomain);
    CHECK(ewma(std::vector{1.0}, 0.0, 1.0, {1.5, 3.0, true}).error() == StatisticsFault::OutOfDomain);
    CHECK(ewma(std::vector{5.0}, 0.0, 0.0)->outside.empty());
    CHECK(cusum({}, {}).error() == StatisticsFault::NoValues);
    CHECK(cusum(std::vector{1.0}, {0.0, -1.0, 5.0, 0.0}).error() == StatisticsFault::OutOfDomain);
    CHECK(cusum(std::vector{1.0}, {0.0, 0.5, 0.0, 0.0}).error() == StatisticsFault::OutOfDomain);
    CHECK(cusum(std::vector{1.0}, {0.0, 0.5, 4.0, 5.0}).error() == StatisticsFault::OutOfDomain);
    CHECK(cusum(std::vector{std::nan("")}, {0.0, 0.5, 4.0, 0.0}).error() == StatisticsFault::NotFinite);
    CHECK(cusum(std::vector{1.7e308, 1.7e308}, {-1.7e308, 0.5, 4.0, 0.0}).error() == StatisticsFault::OutOfDomain);
    CHECK(standardCusum(std::vector{1.0}, 0.0, 0.0).error() == StatisticsFault::OutOfDomain);
    CHECK(cusum(std::vector<double>(1'000'000, 0.0), {0.0, 0.5, 4.0, 0.0})->alarms.empty());
}
