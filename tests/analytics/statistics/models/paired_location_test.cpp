#include "analytics/statistics/models/paired_location.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <limits>
#include <random>

using namespace holdfast::analytics::statistics;

namespace {

/// Depression factor of nine patients, second less first visit (Salsburg 1970; Hollander and Wolfe, Nonparametric
/// Statistical Methods, 2nd ed., table 3.1).
const std::vector<double> kDepression{-0.952, 0.147, -1.022, -0.430, -0.620, -0.590, -0.490, 0.080, -0.010};

/// Heights of crossed less self-fertilised maize, eighths of an inch (Darwin 1876; Fisher, The Design of Experiments,
/// 3.16).
const std::vector<double> kMaize{49, -67, 8, 16, 6, 23, 28, 41, 14, 29, 56, 24, 75, 60, -48};

} // namespace

TEST_CASE("Nine patients' differences are located by Walsh averages and signed ranks", "[statistics][models][paired]") {
    const auto location = locatePairs(kDepression);
    REQUIRE(location);
    CHECK(location->estimate == Approx(-0.46).margin(0.005)); // Hollander and Wolfe, example 3.3
    CHECK(location->lower == Approx(-0.786).margin(0.0005));  // example 3.5, as R 4.2.2 wilcox.test(conf.int = TRUE)
    CHECK(location->upper == Approx(-0.010).margin(0.0005));
    // R 4.2.2 wilcox.test(d, exact = FALSE, correct = FALSE); T+ = 5 in example 3.1
    CHECK(location->p == Approx(0.0381517101734).epsilon(1e-9));
}

TEST_CASE("Darwin's maize is located by Walsh averages and signed ranks", "[statistics][models][paired]") {
    const auto location = locatePairs(kMaize);
    REQUIRE(location);
    // R 4.2.2: wilcox.test(m, conf.int = TRUE) and wilcox.test(m, exact = FALSE, correct = FALSE)
    CHECK(location->estimate == 25.0);
    CHECK(location->lower == 4.0);
    CHECK(location->upper == 41.5);
    CHECK(location->p == Approx(0.0408881329119).epsilon(1e-9));
}

TEST_CASE("Ties have mid-ranks and zeros are left out of p", "[statistics][models][paired]") {
    // Hours of sleep gained, second less first drug (Student, Biometrika 6, 1908); R 4.2.2 as above
    const auto location = locatePairs({1.2, 2.4, 1.3, 1.3, 0.0, 1.0, 1.8, 0.8, 4.6, 1.4});
    REQUIRE(location);
    CHECK(location->p == Approx(0.00763244164821).epsilon(1e-9));
    CHECK(location->estimate == Approx(1.3).margin(1e-9)); // median of the 55 Walsh averages
}

TEST_CASE("Paired differences may be turned, moved and stretched", "[statistics][models][paired]") {
    const auto plain = *locatePairs(kMaize);
    auto turned = kMaize;
    std::transform(turned.begin(), turned.end(), turned.begin(), [](double value) { return -value; });
    CHECK(locatePairs(turned)->estimate == -plain.estimate);
    CHECK(locatePairs(turned)->lower == -plain.upper);
    CHECK(locatePairs(turned)->p == Approx(plain.p));
    auto moved = kMaize;
    std::transform(moved.begin(), moved.end(), moved.begin(), [](double value) { return 10.0 + 2.0 * value; });
    CHECK(locatePairs(moved)->estimate == 10.0 + 2.0 * plain.estimate);
    CHECK(locatePairs(moved)->upper == 10.0 + 2.0 * plain.upper);
    auto wild = kMaize;
    wild[12] = 1e300;
    CHECK(locatePairs(wild)->estimate < 41.5); // one of fifteen cannot carry it away
}

TEST_CASE("Limits of paired differences hold their place as often as they say", "[statistics][models][paired]") {
    std::mt19937_64 random{43};
    std::cauchy_distribution<double> wild{2.0, 1.0};
    int held = 0;
    constexpr int kTrials = 2'000;
    for (int trial = 0; trial < kTrials; ++trial) {
        std::vector<double> values(25);
        std::generate(values.begin(), values.end(), [&] { return wild(random); });
        const auto location = locatePairs(values);
        REQUIRE(location);
        held += location->lower <= 2.0 && 2.0 <= location->upper ? 1 : 0;
    }
    CHECK(held > kTrials * 0.935);
    CHECK(held < kTrials * 0.967);
}

TEST_CASE("Differences without a place are refused by name", "[statistics][models][paired]") {
    CHECK(locatePairs({}).error() == StatisticsFault::TooFewValues);
    CHECK(locatePairs({1.0, 2.0, 3.0, 4.0, 5.0}).error() == StatisticsFault::TooFewValues);
    CHECK(locatePairs({0, 0, 0, 0, 0, 0}).error() == StatisticsFault::NoSpread);
    CHECK(locatePairs({1, 2, 3, 4, 5, std::numeric_limits<double>::quiet_NaN()}).error() == StatisticsFault::NotFinite);
    CHECK(locatePairs({1, 2, 3, 4, 5, HUGE_VAL}).error() == StatisticsFault::NotFinite);
    const auto equal = locatePairs(std::vector<double>(6, 2.5));
    REQUIRE(equal);
    CHECK(equal->lower == 2.5);
    CHECK(equal->upper == 2.5);
    CHECK(equal->p < 0.02);
    std::vector<double> many(10'000, -5.0); // only the last 1,500 count
    std::fill(many.end() - 1'500, many.end(), 3.0);
    CHECK(locatePairs(many)->estimate == 3.0);
    CHECK(std::isfinite(locatePairs({1e308, 1e308, 1e308, -1e308, 1e308, 1e308})->estimate));
}
