#include "analytics/statistics/summary/robust.hpp"
#include "tests/analytics/statistics/summary/certified_sets.hpp"
#include "tests/analytics/statistics/summary/wafers.hpp"

#include <catch2/catch.hpp>
#include <cmath>
#include <limits>
#include <random>

using namespace holdfast::analytics::statistics;

TEST_CASE("Median distance agrees with R", "[statistics][summary]") {
    // R 4.2.2 mad(x), which rounds the constant to 1.4826
    CHECK(*medianDistance(certified::column("lew"), 1.4826) == Approx(401.0433).margin(5e-5));
    CHECK(*medianDistance(certified::column("michelso"), 1.4826) == Approx(0.066717).margin(5e-7));
    CHECK(*medianDistance(kWafers, 1.4826) == Approx(0.05470794).margin(5e-9));
    // statsmodels 0.13.5 robust.scale.mad(x), unrounded constant
    CHECK(*medianDistance(certified::column("lew")) == Approx(401.0439001057653).epsilon(1e-12));
    CHECK(*medianDistance(certified::column("mavro")) == Approx(0.0004447806655513024).epsilon(1e-10));
    CHECK(*medianDistance(kWafers) == Approx(0.05470802186286089).epsilon(1e-11));
}

TEST_CASE("Interquartile range agrees with R under each definition", "[statistics][summary]") {
    CHECK(*interquartileRange(certified::column("michelso")) ==
          Approx(0.0916666666666401).margin(5e-13));                                    // IQR(type=8)
    CHECK(*interquartileRange(certified::column("lew"), QuantileType::Seven) == 544.0); // R 4.2.2 IQR(x, type = 7)
    CHECK(*interquartileRange(certified::column("lew"), QuantileType::Six) == 550.0);   // R 4.2.2 IQR(x, type = 6)
}

TEST_CASE("Qn agrees with a reference library", "[statistics][summary]") {
    // statsmodels 0.13.5 robust.scale.qn_scale(x), without the factor for small samples
    CHECK(*qn(kWafers, false) == Approx(0.06147030170777737).epsilon(1e-11));
    CHECK(*qn(certified::column("lew"), false) == Approx(257.4207580542688).epsilon(1e-12));
    CHECK(*qn(certified::column("mavro"), false) == Approx(0.00044382889319696627).epsilon(1e-9));
    CHECK(*qn(certified::column("michelso"), false) == Approx(0.08876577863932231).epsilon(1e-10));
}

TEST_CASE("Qn is the right distance by counting every pair", "[statistics][summary]") {
    std::mt19937_64 random{3};
    std::uniform_int_distribution<int> whole{0, 12};
    for (std::size_t n = 2; n < 40; ++n) {
        std::vector<double> values(n);
        for (auto& value : values) {
            value = whole(random);
        }
        std::vector<double> distances;
        for (std::size_t i = 0; i < n; ++i) {
            for (std::size_t j = i + 1; j < n; ++j) {
                distances.push_back(std::abs(values[i] - values[j]));
            }
        }
        std::sort(distances.begin(), distances.end());
        const std::size_t h = n / 2 + 1;
        CHECK(*qn(values, false) == Approx(2.219144465985076 * distances[h * (h - 1) / 2 - 1]));
    }
}

TEST_CASE("Qn estimates the standard deviation of a few normal values without bias", "[statistics][summary]") {
    std::mt19937_64 random{11};
    std::normal_distribution<double> normal{20.0, 2.0};
    for (const std::size_t n : {5U, 8U, 13U, 20U}) {
        double sum = 0.0;
        for (int round = 0; round < 20000; ++round) {
            std::vector<double> values(n);
            for (auto& value : values) {
                value = normal(random);
            }
            sum += *qn(values);
        }
        CHECK(sum / 20000.0 == Approx(2.0).epsilon(0.012)); // Croux and Rousseeuw 1992: unbiased
    }
}

TEST_CASE("Half the values may be wild and the robust spreads hold", "[statistics][summary]") {
    std::vector<double> values{9.8, 9.9, 10.0, 10.1, 10.2, 9.95, 10.05, 1e9, -1e12, 1e15, 5e7, 3e8, -4e10};
    CHECK(*median(values) == Approx(10.05).margin(0.06));
    CHECK(*medianDistance(values) < 2.0);
    CHECK(*qn(values) < 2.0);
}

TEST_CASE("Robust figures of few, equal and impossible values", "[statistics][summary][hostile]") {
    CHECK(*median(std::vector{3.0}) == 3.0);
    CHECK(*median(std::vector{3.0, 4.0}) == 3.5);
    CHECK(*medianDistance(std::vector{3.0}) == 0.0);
    CHECK(*qn(std::vector<double>(10, 2.5)) == 0.0);
    CHECK(qn(std::vector{1.0}).error() == StatisticsFault::TooFewValues);
    CHECK(qn(std::vector{1.0, std::nan("")}).error() == StatisticsFault::NotFinite);
    CHECK(qn(std::vector{-1.7e308, 1.7e308}).error() == StatisticsFault::OutOfDomain);
    CHECK(median({}).error() == StatisticsFault::NoValues);
    CHECK(medianDistance({}).error() == StatisticsFault::NoValues);
    CHECK(interquartileRange({}).error() == StatisticsFault::NoValues);
    std::vector<double> many(1'000'000);
    for (std::size_t i = 0; i < many.size(); ++i) {
        many[i] = static_cast<double>(i % 1000);
    }
    CHECK(*qn(many) > 0.0);
}
