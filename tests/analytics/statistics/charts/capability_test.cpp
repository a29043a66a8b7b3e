#include "analytics/statistics/charts/capability.hpp"

#include <catch2/catch.hpp>
#include <cmath>
#include <random>

using namespace holdfast::analytics::statistics;

TEST_CASE("The handbook's capability", "[statistics][charts]") {
    const auto c = capability(50, 16.0, 2.0, {8.0, 20.0});
    REQUIRE(c);
    // e-Handbook 6.1.6
    CHECK(c->cp->value == Approx(1.0).margin(5e-5));
    CHECK(c->cpu->value == Approx(0.6667).margin(5e-5));
    CHECK(c->cpl->value == Approx(1.3333).margin(5e-5));
    CHECK(c->cpk.value == Approx(0.6667).margin(5e-5));
    CHECK(*c->k == Approx(0.3333).margin(5e-5));
    CHECK(c->cpk.value == Approx((1.0 - *c->k) * c->cp->value).epsilon(1e-12)); // Cpk = (1 − k)Cp, same page
}

TEST_CASE("Capability of piston rings with limits as published", "[statistics][charts]") {
    // R package qcc 3.0 documentation: 125 values, centre 74.00118, σ 0.009785039
    const auto wide = capability(125, 74.001176, 0.009785039, {73.95, 74.05});
    CHECK(wide->cp->value == Approx(1.703).margin(5e-4));
    CHECK(wide->cp->low == Approx(1.491).margin(5e-4));
    CHECK(wide->cp->high == Approx(1.915).margin(5e-4));
    CHECK(wide->cpl->value == Approx(1.743).margin(5e-4));
    CHECK(wide->cpu->value == Approx(1.663).margin(5e-4));
    CHECK(wide->cpk.value == Approx(1.663).margin(5e-4));
    CHECK(wide->cpk.low == Approx(1.448).margin(5e-4));
    CHECK(wide->cpk.high == Approx(1.878).margin(5e-4));
    const auto narrow = capability(125, 74.001176, 0.009785039, {73.99, 74.01});
    CHECK(narrow->cp->value == Approx(0.341).margin(5e-4));
    CHECK(narrow->cp->low == Approx(0.298).margin(5.1e-4));
    CHECK(narrow->cp->high == Approx(0.383).margin(5e-4));
    CHECK(narrow->cpk.value == Approx(0.301).margin(5e-4));
    CHECK(narrow->cpk.low == Approx(0.231).margin(5.1e-4));
    CHECK(narrow->cpk.high == Approx(0.370).margin(6e-4));
    CHECK(narrow->shareOutside == Approx(0.13 + 0.18).margin(0.01)); // there: Exp<LSL 13 %, Exp>USL 18 %
    const auto lopsided = capability(125, 74.001176, 0.009785039, {73.99, 74.1});
    CHECK(lopsided->cp->value == Approx(1.874).margin(5e-4));
    CHECK(lopsided->cp->low == Approx(1.641).margin(5e-4));
    CHECK(lopsided->cp->high == Approx(2.106).margin(6e-4));
    CHECK(lopsided->cpk.low == Approx(0.305).margin(6e-4));
    CHECK(lopsided->cpk.high == Approx(0.456).margin(6e-4));
}

TEST_CASE("One-sided limits by the non-central t", "[statistics][charts]") {
    struct Case final {
        std::size_t n;
        double index, confidence, low, high;
    };
    // scipy 1.10.1: non-centrality with nct.cdf(3√n·C, n − 1, δ) = 1 − α/2 and α/2, over 3√n
    for (const auto& c : {Case{20, 1.0, 0.95, 0.6499824770878301, 1.3450704586790188},
                          Case{50, 1.33, 0.90, 1.093070245504603, 1.5603423012300017},
                          Case{125, 1.663, 0.95, 1.4477949674899666, 1.87741647395464},
                          Case{10, 0.6667, 0.95, 0.29465477054206335, 1.027817264975975}}) {
        const auto got = capability(c.n, 0.0, 1.0, {{}, 3.0 * c.index}, c.confidence);
        REQUIRE(got);
        CHECK(got->cpk.value == Approx(c.index).epsilon(1e-12));
        CHECK(got->cpk.low == Approx(c.low).epsilon(1e-8));
        CHECK(got->cpk.high == Approx(c.high).epsilon(1e-8));
        CHECK_FALSE(got->cp);
        CHECK_FALSE(got->k);
        CHECK_FALSE(got->cpl);
        const auto mirrored = capability(c.n, 0.0, 1.0, {-3.0 * c.index, {}}, c.confidence);
        CHECK(mirrored->cpk.low == Approx(got->cpk.low).epsilon(1e-9));
    }
    // scipy 1.10.1: C·sqrt(chi2.ppf(α/2, n − 1)/(n − 1)) and 1 − α/2
    const auto both = capability(20, 0.0, 1.0, {-3.0, 3.0});
    CHECK(both->cp->low == Approx(0.6846634394852613).epsilon(1e-12));
    CHECK(both->cp->high == Approx(1.314941000512144).epsilon(1e-12));
    CHECK(capability(50, 0.0, 1.0, {-3.99, 3.99}, 0.9)->cp->low == Approx(1.106744791191201).epsilon(1e-12));
}

TEST_CASE("One-sided confidence limits cover the true index as often as they say", "[statistics][charts]") {
    std::mt19937_64 random{6};
    std::normal_distribution<double> normal{0.0, 1.0};
    int covered = 0;
    const int rounds = 250;
    for (int round = 0; round < rounds; ++round) {
        std::vector<double> values(15);
        for (auto& value : values) {
            value = normal(random);
        }
        const auto got = capability(values, {-3.0, {}}, 0.9); // true index 1
        covered += got->cpk.low <= 1.0 && 1.0 <= got->cpk.high ? 1 : 0;
    }
    CHECK(covered / static_cast<double>(rounds) == Approx(0.9).margin(0.076)); // four standard errors
}

TEST_CASE("Capability of few, equal, crooked and impossible values", "[statistics][charts][hostile]") {
    CHECK(capability(std::vector{1.0}, {0.0, 2.0}).error() == StatisticsFault::TooFewValues);
    CHECK(capability(std::vector<double>{}, {0.0, 2.0}).error() == StatisticsFault::NoValues);
    CHECK(capability(std::vector<double>(9, 1.0), {0.0, 2.0}).error() == StatisticsFault::NoSpread);
    CHECK(capability(std::vector{1.0, std::nan("")}, {0.0, 2.0}).error() == StatisticsFault::NotFinite);
    CHECK(capability(10, 1.0, 1.0, {}).error() == StatisticsFault::OutOfDomain);
    CHECK(capability(10, 1.0, 1.0, {2.0, 0.0}).error() == StatisticsFault::OutOfDomain);
    CHECK(capability(10, 1.0, -1.0, {0.0, 2.0}).error() == StatisticsFault::OutOfDomain);
    CHECK(capability(10, 1.0, 1.0, {0.0, std::nan("")}).error() == StatisticsFault::NotFinite);
    CHECK(capability(10, 1.0, 1.0, {0.0, 2.0}, 1.0).error() == StatisticsFault::OutOfDomain);
    CHECK(capability(10, 1.0, 1e-300, {0.0, 2.0}).error() == StatisticsFault::OutOfDomain);
    CHECK(capability(10, 1.0, 1e-5, {0.0, {}})->cpk.low < 33334.0);
    const auto two = capability(std::vector{1.0, 2.0}, {0.0, 5.0});
    REQUIRE(two);
    CHECK(two->fewValues);
    CHECK(two->cpl->low < two->cpl->value);
    std::vector<double> crooked;
    for (int i = 1; i <= 60; ++i) {
        crooked.push_back(-std::log(i / 61.0));
    }
    CHECK(capability(crooked, {0.0, 9.0})->notNormal);
    const auto many = capability(1'000'000, 0.0, 1.0, {-4.0, {}});
    REQUIRE(many);
    CHECK(many->cpk.low == Approx(4.0 / 3.0).epsilon(0.002));
    const auto outside = capability(30, 10.0, 1.0, {{}, 7.0}); // mean beyond the limit: a negative index
    CHECK(outside->cpk.value == Approx(-1.0));
    CHECK(outside->cpk.low < -1.0);
    CHECK(outside->cpk.high > -1.0);
}
