#include "analytics/statistics/models/interval_mean.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <limits>
#include <random>

using namespace holdfast::analytics::statistics;

namespace {

using V = CensoredValue;

constexpr double kInfinity = std::numeric_limits<double>::infinity();

/// Five fields of a strip: 160, 165, 171, 177 °C.
std::vector<V> strips() {
    return {V::between(160, 165), V::between(160, 165), V::between(165, 171), V::between(165, 171),
            V::between(165, 171), V::between(171, 177), V::between(160, 165), V::between(165, 171)};
}

} // namespace

TEST_CASE("Strips alone: mean, spread, error and profile limits", "[statistics][models]") {
    const auto result = intervalMean(strips());
    REQUIRE(result);
    // R 4.2.2, survival 3.5-3: survreg(Surv(lower, upper, type = "interval2") ~ 1, dist = "gaussian", rel.tol 1e-12)
    CHECK(result->mean == Approx(166.587192342).margin(1e-6));
    CHECK(result->standardDeviation == Approx(3.40727673427).margin(1e-6));
    CHECK(result->standardError == Approx(1.33605249395).margin(1e-6));
    CHECK(result->logLikelihood == Approx(-8.17711147036).margin(1e-9));
    // R 4.2.2: uniroot on the likelihood, pnorm, maximised over the spread by optimize
    CHECK(result->lower == Approx(163.657530593).margin(1e-5));
    CHECK(result->upper == Approx(169.587597667).margin(1e-5));
}

TEST_CASE("Exact, two-sided and one-sided values together", "[statistics][models]") {
    const auto result =
        intervalMean({V::between(160, 165), V::between(160, 165), V::between(165, 171), V::below(160), V::exact(166.5),
                      V::between(171, 177), V::between(160, 165), V::exact(168.2), V::above(177), V::exact(162.3)});
    REQUIRE(result);
    // R 4.2.2, survival 3.5-3, as above
    CHECK(result->mean == Approx(166.265645584).margin(1e-6));
    CHECK(result->standardDeviation == Approx(6.4051855061).margin(1e-6));
    CHECK(result->standardError == Approx(2.09172116792).margin(1e-6));
    CHECK(result->logLikelihood == Approx(-20.254620416).margin(1e-8));
    CHECK(result->lower == Approx(161.527535135).margin(1e-5));
    CHECK(result->upper == Approx(170.976750467).margin(1e-5));
    CHECK(result->openShare == Approx(0.2));
}

TEST_CASE("Weights count as so many values", "[statistics][models]") {
    const std::vector<V> weighted{
        {160, 165, 7}, {165, 171, 11}, {171, 177, 5}, {-kInfinity, 160, 2}, {177, kInfinity, 1}};
    const auto result = intervalMean(weighted);
    REQUIRE(result);
    // R 4.2.2, survival 3.5-3: survreg(…, weights = w)
    CHECK(result->mean == Approx(167.224089223).margin(1e-6));
    CHECK(result->standardDeviation == Approx(5.27115507933).margin(1e-6));
    CHECK(result->standardError == Approx(1.08835465669).margin(1e-6));
    CHECK(result->lower == Approx(164.990898034).margin(1e-5));
    CHECK(result->upper == Approx(169.448077437).margin(1e-5));
    std::vector<V> oneByOne;
    for (const auto& value : weighted) {
        for (int i = 0; i < static_cast<int>(value.weight); ++i) {
            oneByOne.push_back({value.lower, value.upper, 1.0});
        }
    }
    CHECK(intervalMean(oneByOne)->mean == Approx(result->mean).margin(1e-9));
    CHECK(intervalMean(oneByOne)->lower == Approx(result->lower).margin(1e-7));
}

TEST_CASE("Exact values alone give the plain mean and the spread with n below", "[statistics][models]") {
    const auto result = intervalMean({V::exact(2), V::exact(4), V::exact(4), V::exact(5), V::exact(7), V::exact(9)});
    REQUIRE(result);
    // R 4.2.2, survival 3.5-3, as above
    CHECK(result->mean == Approx(5.16666666667).margin(1e-10));
    CHECK(result->standardDeviation == Approx(2.26691175146).margin(1e-9));
    CHECK(result->standardError == Approx(0.925462847164).margin(1e-9));
    CHECK(result->logLikelihood == Approx(-13.4241418591).margin(1e-9));
    CHECK(result->lower == Approx(3.01974201).margin(1e-6));
    CHECK(result->upper == Approx(7.31359132333).margin(1e-6));
}

TEST_CASE("No mean where more than a third is open at one end", "[statistics][models]") {
    // decisions 6
    auto values = strips();
    for (int i = 0; i < 4; ++i) {
        values.push_back(V::above(177));
    }
    CHECK(intervalMean(values)); // 4 of 12
    values.push_back(V::below(160));
    CHECK(intervalMean(values).error() == StatisticsFault::TooManyOpen); // 5 of 13
    // Tobin's durable goods (Econometrica 26:24, 1958): 13 of 20 only known to be at most 0
    std::vector<V> tobin(13, V::below(0.0));
    for (const double y : {0.7, 3.7, 3.0, 10.4, 1.5, 3.5, 6.1}) {
        tobin.push_back(V::exact(y));
    }
    CHECK(intervalMean(tobin).error() == StatisticsFault::TooManyOpen);
}

TEST_CASE("Readings that could all be the same have a range, no mean", "[statistics][models]") {
    const std::vector<V> same(6, V::between(165, 171));
    CHECK(intervalMean(same).error() == StatisticsFault::NoSpread);
    const std::vector<V> overlapping{V::between(160, 168), V::between(165, 171), V::above(163)};
    CHECK(intervalMean(overlapping).error() == StatisticsFault::NoSpread);
    const auto range = commonRange(overlapping);
    REQUIRE(range);
    CHECK(range->lower == 165.0);
    CHECK(range->upper == 168.0);
    CHECK_FALSE(commonRange(strips()));
    CHECK_FALSE(commonRange({V::exact(1), V::exact(2)}));
    CHECK(intervalMean({V::exact(3), V::exact(3), V::exact(3)}).error() == StatisticsFault::NoSpread);
}

TEST_CASE("The mean follows shift, scale and mirror; wider intervals never make it surer", "[statistics][models]") {
    const auto plain = intervalMean(strips());
    std::vector<V> fahrenheit;
    std::vector<V> mirrored;
    for (const auto& value : strips()) {
        fahrenheit.push_back(V::between(1.8 * value.lower + 32, 1.8 * value.upper + 32));
        mirrored.push_back(V::between(-value.upper, -value.lower));
    }
    CHECK(intervalMean(fahrenheit)->mean == Approx(1.8 * plain->mean + 32).margin(1e-7));
    CHECK(intervalMean(fahrenheit)->upper == Approx(1.8 * plain->upper + 32).margin(1e-6));
    CHECK(intervalMean(mirrored)->lower == Approx(-plain->upper).margin(1e-6));
    std::vector<V> middles;
    for (const auto& value : strips()) {
        middles.push_back(V::exact(0.5 * (value.lower + value.upper)));
    }
    CHECK(intervalMean(middles)->standardError < plain->standardError);
}

TEST_CASE("Very narrow intervals come to the exact values", "[statistics][models]") {
    const std::vector<double> x{160.2, 163.9, 161.0, 166.4, 162.7};
    std::vector<V> exact;
    for (const double value : x) {
        exact.push_back(V::exact(value));
    }
    for (const double half : {1e-3, 1e-5, 1e-7, 1e-10}) {
        std::vector<V> narrow;
        for (const double value : x) {
            narrow.push_back(V::between(value - half, value + half));
        }
        const auto result = intervalMean(narrow);
        REQUIRE(result);
        CHECK(result->mean == Approx(intervalMean(exact)->mean).margin(1e-5));
        CHECK(result->standardError == Approx(intervalMean(exact)->standardError).margin(1e-4));
    }
}

TEST_CASE("Profile limits hold the true mean of strips as often as they say", "[statistics][models]") {
    std::mt19937_64 random{5};
    std::normal_distribution<double> normal{167.0, 5.0};
    const std::vector<double> fields{-kInfinity, 155, 160, 165, 171, 177, 182, kInfinity};
    int held = 0;
    int given = 0;
    for (int trial = 0; trial < 1'500; ++trial) {
        std::vector<V> values;
        for (int i = 0; i < 20; ++i) {
            const double x = normal(random);
            const auto above = std::upper_bound(fields.begin(), fields.end(), x);
            values.push_back(V::between(*(above - 1), *above));
        }
        if (const auto result = intervalMean(values)) {
            ++given;
            held += result->lower <= 167.0 && 167.0 <= result->upper ? 1 : 0;
        }
    }
    CHECK(given > 1'490);
    CHECK(held / static_cast<double>(given) > 0.92); // 0.95, less what 20 values cost the limit law of likelihood
    CHECK(held / static_cast<double>(given) < 0.975);
}

TEST_CASE("Hostile intervals are refused by name", "[statistics][models]") {
    const double nan = std::numeric_limits<double>::quiet_NaN();
    CHECK(intervalMean({}).error() == StatisticsFault::NoValues);
    CHECK(intervalMean({{1, 2, 0}, {3, 4, 0}}).error() == StatisticsFault::NoValues);
    CHECK(intervalMean({V::exact(1)}).error() == StatisticsFault::TooFewValues);
    CHECK(intervalMean({V::between(2, 1), V::exact(5)}).error() == StatisticsFault::OutOfDomain);
    CHECK(intervalMean({V::between(kInfinity, kInfinity), V::exact(5)}).error() == StatisticsFault::OutOfDomain);
    CHECK(intervalMean({{1, 2, -1}, {3, 4, 5}}).error() == StatisticsFault::OutOfDomain);
    CHECK(intervalMean({V::exact(nan), V::exact(5)}).error() == StatisticsFault::NotFinite);
    CHECK(intervalMean({{1, 2, nan}, {3, 4, 5}}).error() == StatisticsFault::NotFinite);
    CHECK(intervalMean(strips(), 0.0).error() == StatisticsFault::OutOfDomain);
    CHECK(intervalMean(std::vector<V>(9, V::between(-kInfinity, kInfinity))).error() == StatisticsFault::TooManyOpen);
    CHECK(intervalMean({V::exact(1), V::exact(2)})); // two different values are enough
    CHECK(intervalMean({V::between(0, 1), V::between(1e6, 1e6 + 1), V::exact(5e5)}));
}

TEST_CASE("A million strips are a handful of weighted intervals", "[statistics][models]") {
    std::vector<V> values;
    const auto few = strips();
    for (int i = 0; i < 1'000'000; ++i) {
        values.push_back(few[static_cast<std::size_t>(i) % few.size()]);
    }
    const auto result = intervalMean(values);
    REQUIRE(result);
    CHECK(result->mean == Approx(intervalMean(few)->mean).margin(1e-6));
}
