#include "analytics/statistics/models/margin_survival.hpp"

#include "tests/analytics/statistics/models/logistic_data.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <limits>
#include <random>

using namespace holdfast::analytics::statistics;

namespace {

/// Survival more likely with margin, `perLot` tests from each of `lots` lots.
std::vector<MarginTest> washTests(std::uint64_t seed, int lots, int perLot) {
    std::mt19937_64 random{seed};
    std::uniform_real_distribution<double> uniform;
    std::vector<MarginTest> tests;
    for (int lot = 0; lot < lots; ++lot) {
        for (int i = 0; i < perLot; ++i) {
            const double margin = -10.0 + 25.0 * uniform(random);
            const bool survived = uniform(random) < 1.0 / (1.0 + std::exp(-0.4 * margin));
            tests.push_back({margin, survived, lot});
        }
    }
    return tests;
}

} // namespace

TEST_CASE("The temperature at which an O-ring is in distress half the time", "[statistics][models][logistic]") {
    const auto half = valueForChance(oRings(), 0, {0.0}, 0.5, maximumLikelihood());
    REQUIRE(half);
    CHECK(half->value == Approx(64.7946409246).margin(1e-6)); // R 4.2.2, MASS 7.3: dose.p(glm(y ~ T, binomial), p = .5)
    // R 4.2.2: uniroot on the deviance of glm(y ~ 0 + I(T - x0), offset = qlogis(p))
    CHECK(*half->lower == Approx(52.4872526066).margin(1e-4));
    CHECK(*half->upper == Approx(69.269922133).margin(1e-4));
    CHECK_FALSE(half->rises);
    CHECK_FALSE(half->extrapolated);
    const auto tenth = valueForChance(oRings(), 0, {0.0}, 0.1, maximumLikelihood());
    REQUIRE(tenth);
    CHECK(tenth->value == Approx(74.2587975649).margin(1e-6));
    CHECK(*tenth->lower == Approx(68.8879096828).margin(1e-4));
    CHECK(*tenth->upper == Approx(93.416060119).margin(1e-3));
    const auto nine = valueForChance(oRings(), 0, {0.0}, 0.9, maximumLikelihood());
    CHECK(nine->value == Approx(55.3304842842).margin(1e-6));
    CHECK(*nine->lower == Approx(18.3595394172).margin(1e-3));
    CHECK(*nine->upper == Approx(63.0879070435).margin(1e-4));
}

TEST_CASE("The same with Firth's penalty", "[statistics][models][logistic]") {
    // R 4.2.2, brglm2 0.9; limits uniroot on the penalised likelihood held at the level, optimize over the slope
    const auto half = valueForChance(oRings(), 0, {0.0}, 0.5);
    REQUIRE(half);
    CHECK(half->value == Approx(64.230230587).margin(1e-5));
    CHECK(*half->lower == Approx(47.1000790142).margin(1e-3));
    CHECK(*half->upper == Approx(69.4205329818).margin(1e-4));
    const auto nine = valueForChance(oRings(), 0, {0.0}, 0.9);
    REQUIRE(nine);
    CHECK(nine->value == Approx(52.4198567196).margin(1e-5));
    CHECK(*nine->lower == Approx(-4.77109934642).margin(1e-2));
    CHECK(nine->extrapolated); // no flight was colder than 53
    const auto tenth = valueForChance(oRings(), 0, {0.0}, 0.1);
    CHECK(tenth->value == Approx(76.0406044544).margin(1e-5));
    CHECK(*tenth->upper == Approx(106.443019874).margin(1e-2));
}

TEST_CASE("Budworms: half the males die at a dose of 2.23", "[statistics][models][logistic]") {
    const auto result = valueForChance(budworms(), 1, {0.0, 0.0}, 0.5, maximumLikelihood());
    REQUIRE(result);
    // Venables and Ripley, Modern Applied Statistics, 4th ed., 7.2: dose.p, 2.2293; limits R 4.2.2 uniroot, as above
    CHECK(result->value == Approx(2.22926217016).margin(1e-7));
    CHECK(*result->lower == Approx(1.77707947798).margin(1e-6));
    CHECK(*result->upper == Approx(2.67426089451).margin(1e-6));
    CHECK(result->rises);
    const auto quarter = valueForChance(budworms(), 1, {0.0, 0.0}, 0.25, maximumLikelihood());
    CHECK(quarter->value == Approx(1.1969394233).margin(1e-7));
    const auto female = valueForChance(budworms(), 1, {1.0, 0.0}, 0.5, maximumLikelihood());
    CHECK(female->value == Approx(2.22926217016 + 1.100743363 / 1.06421396992).margin(1e-7));
}

TEST_CASE("No limits where the slope may be nothing", "[statistics][models][logistic]") {
    LogisticData data;
    data.covariates = {{1, 2, 3, 4, 5, 6, 7, 8}};
    data.events = {0, 1, 0, 1, 1, 0, 1, 1};
    const auto result = valueForChance(data, 0, {0.0}, 0.9);
    REQUIRE(result);
    CHECK(std::isfinite(result->value));
    CHECK_FALSE(result->lower);
    CHECK_FALSE(result->upper);
    data.events = {0, 1, 1, 0, 0, 1, 1, 0}; // no slope at all
    CHECK(valueForChance(data, 0, {0.0}, 0.9).error() == StatisticsFault::NoSpread);
}

TEST_CASE("No margin for a chance under ten failures and ten survivals from five lots each",
          "[statistics][models][logistic]") {
    // decisions 6
    std::vector<MarginTest> tests;
    for (int i = 0; i < 10; ++i) {
        tests.push_back({static_cast<double>(i), false, i % 5});
        tests.push_back({static_cast<double>(i) + 4.0, true, i % 5});
    }
    CHECK(countSurvival(tests).allowMargin());
    CHECK(marginForChance(tests, 0.9));
    auto fewFailures = tests;
    fewFailures[0].survived = true; // 9 failures, 11 survivals
    CHECK(marginForChance(fewFailures, 0.9).error() == StatisticsFault::TooFewEvents);
    auto fewLots = tests;
    for (auto& test : fewLots) {
        test.lot = test.survived ? test.lot : test.lot % 4;
    }
    CHECK(countSurvival(fewLots).failureLots == 4);
    CHECK(marginForChance(fewLots, 0.9).error() == StatisticsFault::TooFewEvents);
    CHECK(marginForChance({}, 0.9).error() == StatisticsFault::TooFewEvents);
    CHECK(marginForChance(tests, 1.0).error() == StatisticsFault::OutOfDomain);
    CHECK(marginForChance(tests, std::numeric_limits<double>::quiet_NaN()).error() == StatisticsFault::OutOfDomain);
    CHECK(survivalByMargin({}).error() == StatisticsFault::NoValues);
    CHECK(survivalByMargin(fewFailures)); // the slope may still be looked at
}

TEST_CASE("The margin for a chance holds the truth as often as its limits say", "[statistics][models][logistic]") {
    // chance 0.9 where 0.4·margin = ln 9
    const double truth = std::log(9.0) / 0.4;
    int held = 0;
    int given = 0;
    for (std::uint64_t seed = 1; seed <= 500; ++seed) {
        const auto result = marginForChance(washTests(seed, 10, 12), 0.9);
        if (result && result->lower && result->upper) {
            ++given;
            held += *result->lower <= truth && truth <= *result->upper ? 1 : 0;
        }
    }
    CHECK(given > 490);
    CHECK(held / static_cast<double>(given) > 0.92);
    CHECK(held / static_cast<double>(given) < 0.98);
}

TEST_CASE("Separated tests have a margin under Firth and a refusal under maximum likelihood",
          "[statistics][models][logistic]") {
    LogisticData data;
    data.covariates.resize(1);
    for (int i = 0; i < 24; ++i) {
        data.covariates[0].push_back(i);
        data.events.push_back(i < 12 ? 0.0 : 1.0);
    }
    const auto firth = valueForChance(data, 0, {0.0}, 0.5);
    REQUIRE(firth);
    CHECK(firth->value == Approx(11.5).margin(1e-6));
    CHECK(*firth->lower == Approx(23.0 - *firth->upper).margin(1e-5));
    CHECK(valueForChance(data, 0, {0.0}, 0.5, maximumLikelihood()).error() == StatisticsFault::Separated);
    CHECK(valueForChance(data, 1, {0.0}, 0.5).error() == StatisticsFault::OutOfDomain);
    CHECK(valueForChance(data, 0, {}, 0.5).error() == StatisticsFault::OutOfDomain);
}
