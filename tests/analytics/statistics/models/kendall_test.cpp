#include "analytics/statistics/models/kendall.hpp"

#include "tests/analytics/statistics/models/nile.hpp"

#include <catch2/catch.hpp>

#include <limits>
#include <numeric>
#include <random>

using namespace holdfast::analytics::statistics;

namespace {

/// S pair by pair.
std::int64_t scoreByPairs(const std::vector<double>& x, const std::vector<double>& y) {
    std::int64_t score = 0;
    for (std::size_t i = 0; i < x.size(); ++i) {
        for (std::size_t j = i + 1; j < x.size(); ++j) {
            const double product = (x[i] < x[j] ? 1 : x[i] > x[j] ? -1 : 0) * (y[i] < y[j] ? 1 : y[i] > y[j] ? -1 : 0);
            score += static_cast<std::int64_t>(product);
        }
    }
    return score;
}

} // namespace

TEST_CASE("The flow of the Nile fell: Kendall's tau-b and z with ties", "[statistics][models]") {
    const auto result = kendall(nileYears(), nileFlow());
    REQUIRE(result);
    // R 4.2.2 cor.test(1:100, Nile, method = "kendall", exact = FALSE)
    CHECK(result->tauB == Approx(-0.2807413).margin(5e-8));
    CHECK(result->z == Approx(-4.131045).margin(5e-7));
    CHECK(result->p == Approx(3.611e-05).margin(5e-9));
    CHECK(result->ties);
    CHECK_FALSE(result->exact);
}

TEST_CASE("Tuna: quality against panel score", "[statistics][models]") {
    // Hollander and Wolfe, Nonparametric Statistical Methods, 2nd ed., example 8.1 (data as in R's help of cor.test)
    const std::vector<double> lightness{44.4, 45.9, 41.9, 53.3, 44.7, 44.1, 50.7, 45.2, 60.1};
    const std::vector<double> panel{2.6, 3.1, 2.5, 5.0, 3.6, 4.0, 5.2, 2.8, 3.8};
    const auto result = kendall(lightness, panel);
    REQUIRE(result);
    CHECK(result->score == 16);                                  // K = 16, there
    CHECK(result->tauB == Approx(0.444444444444).margin(1e-11)); // R 4.2.2 cor.test
    CHECK(result->exact);
    CHECK(result->p ==
          Approx(0.119438932981).margin(1e-11)); // R 4.2.2 cor.test, exact, two-sided; one-sided .060 there
}

TEST_CASE("Ties in both columns", "[statistics][models]") {
    const std::vector<double> x{0, 0, 1, 1, 2, 3, 3, 4, 5, 5, 6, 7, 8, 8, 9};
    const std::vector<double> y{2, 1, 3, 2, 2, 4, 5, 4, 6, 5, 5, 7, 6, 8, 9};
    const auto result = kendall(x, y);
    REQUIRE(result);
    // R 4.2.2 cor.test(x, y, method = "kendall", exact = FALSE); scipy 1.10.1 kendalltau(method="asymptotic") agrees
    CHECK(result->tauB == Approx(0.852890778712).margin(1e-11));
    CHECK(result->z == Approx(4.22981448724).margin(1e-10));
    CHECK(result->p == Approx(2.33884104506e-05).epsilon(1e-9));
}

TEST_CASE("Exact chances of Kendall's score", "[statistics][models]") {
    const auto tail = [](std::size_t n, std::int64_t score) { // one-sided P(K ≥ score)
        const auto chances = discordantChances(n);
        const auto discordant = (static_cast<std::int64_t>(chances.size()) - 1 - score) / 2;
        return std::accumulate(chances.begin(), chances.begin() + discordant + 1, 0.0);
    };
    // Hollander and Wolfe, 2nd ed., table A.30
    CHECK(tail(4, 6) == Approx(0.042).margin(0.0005));
    CHECK(tail(5, 8) == Approx(0.042).margin(0.0005));
    CHECK(tail(5, 10) == Approx(0.0083).margin(0.00005));
    CHECK(tail(7, 13) == Approx(0.035).margin(0.0005));
    CHECK(tail(9, 16) == Approx(0.060).margin(0.0005));
    for (const std::size_t n : {1U, 2U, 10U, 50U}) {
        const auto chances = discordantChances(n);
        CHECK(std::accumulate(chances.begin(), chances.end(), 0.0) == Approx(1.0).margin(1e-12));
        CHECK(chances.front() / chances.back() == Approx(1.0));
    }
}

TEST_CASE("The sorted count of pairs equals the count pair by pair", "[statistics][models]") {
    std::mt19937_64 random{7};
    for (const int spread : {2, 5, 100, 1'000'000}) {
        for (const std::size_t n : {2U, 3U, 17U, 33U, 257U}) {
            std::vector<double> x;
            std::vector<double> y;
            for (std::size_t i = 0; i < n; ++i) {
                x.push_back(static_cast<double>(random() % static_cast<unsigned>(spread)));
                y.push_back(static_cast<double>(random() % static_cast<unsigned>(spread)));
            }
            const auto result = kendall(x, y);
            if (result) {
                CHECK(result->score == scoreByPairs(x, y));
                CHECK(kendall(y, x)->score == result->score);
            }
        }
    }
}

TEST_CASE("Columns without an order to compare are refused by name", "[statistics][models]") {
    const double nan = std::numeric_limits<double>::quiet_NaN();
    CHECK(kendall({}, {}).error() == StatisticsFault::NoValues);
    CHECK(kendall({1}, {1}).error() == StatisticsFault::TooFewValues);
    CHECK(kendall({1, 2}, {1}).error() == StatisticsFault::UnequalLengths);
    CHECK(kendall({1, 1, 1}, {1, 2, 3}).error() == StatisticsFault::NoSpread);
    CHECK(kendall({1, 2, 3}, {5, 5, 5}).error() == StatisticsFault::NoSpread);
    CHECK(kendall({1, nan}, {1, 2}).error() == StatisticsFault::NotFinite);
    CHECK(kendall({1, 2}, {1, HUGE_VAL}).error() == StatisticsFault::NotFinite);
    const auto two = kendall({1, 2}, {9, 3});
    REQUIRE(two);
    CHECK(two->tauB == -1.0);
    CHECK(two->p == 1.0);
}
