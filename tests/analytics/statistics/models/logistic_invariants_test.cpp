#include "analytics/statistics/models/logistic.hpp"

#include "tests/analytics/statistics/models/logistic_data.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <limits>
#include <random>

using namespace holdfast::analytics::statistics;

TEST_CASE("Grouped counts and single tests give the same fit", "[statistics][models][logistic]") {
    const auto grouped = budworms();
    LogisticData single;
    single.covariates.resize(2);
    for (std::size_t i = 0; i < grouped.events.size(); ++i) {
        for (int k = 0; k < 20; ++k) {
            single.covariates[0].push_back(grouped.covariates[0][i]);
            single.covariates[1].push_back(grouped.covariates[1][i]);
            single.events.push_back(k < grouped.events[i] ? 1.0 : 0.0);
        }
    }
    const auto a = fitLogistic(grouped);
    const auto b = fitLogistic(single);
    REQUIRE((a && b));
    for (std::size_t j = 0; j < 3; ++j) {
        CHECK(a->coefficients[j].estimate == Approx(b->coefficients[j].estimate).margin(1e-9));
        CHECK(*a->coefficients[j].lower == Approx(*b->coefficients[j].lower).margin(1e-7));
    }
    CHECK(a->deviance < b->deviance); // of other saturated models
}

TEST_CASE("A constant alone is the share, half an event added by Firth", "[statistics][models][logistic]") {
    LogisticData data;
    data.events = {3};
    data.trials = {40};
    CHECK(fitLogistic(data, maximumLikelihood())->coefficients[0].estimate == Approx(std::log(3.0 / 37.0)));
    CHECK(fitLogistic(data)->coefficients[0].estimate == Approx(std::log(3.5 / 37.5)));
    data.events = {0};
    const auto none = fitLogistic(data);
    REQUIRE(none);
    CHECK(none->coefficients[0].estimate == Approx(std::log(0.5 / 40.5)));
    CHECK(isSound(none->coefficients[0]));
    const auto away = fitLogistic(data, maximumLikelihood());
    REQUIRE(away);
    CHECK(away->separation == Separation::Complete);
    CHECK(away->coefficients[0].runsAway == -1);
}

TEST_CASE("As many rows as coefficients: half an event added to each row", "[statistics][models][logistic]") {
    LogisticData data; // saturated, so the closed form of Firth 1993, 4.1, holds row by row
    data.covariates = {{3.0, 0.13}};
    data.events = {0, 0};
    data.trials = {3, 1};
    const auto fit = fitLogistic(data);
    REQUIRE(fit);
    CHECK(fit->chanceAt({3.0}) == Approx(0.5 / 4.0).margin(1e-6));
    CHECK(fit->chanceAt({0.13}) == Approx(0.5 / 2.0).margin(1e-6));
    const auto three = fitLogistic({{{1.0, 0.314, -0.198}, {2.0, 2.289, 0.96}}, {0, 1, 0}, {}});
    REQUIRE(three);
    CHECK(three->chanceAt({1.0, 2.0}) == Approx(0.25).margin(1e-6));
    CHECK(three->chanceAt({0.314, 2.289}) == Approx(0.75).margin(1e-6));
    CHECK(three->chanceAt({-0.198, 0.96}) == Approx(0.25).margin(1e-6));
}

TEST_CASE("Units of a covariate change its coefficient and nothing else", "[statistics][models][logistic]") {
    const auto fahrenheit = fitLogistic(oRings());
    auto data = oRings();
    for (double& value : data.covariates[0]) {
        value = 1e9 + (value - 32.0) / 1.8;
    }
    const auto moved = fitLogistic(data);
    REQUIRE(moved);
    CHECK(moved->coefficients[1].estimate == Approx(1.8 * fahrenheit->coefficients[1].estimate).epsilon(1e-6));
    CHECK(moved->coefficients[1].p == Approx(fahrenheit->coefficients[1].p).epsilon(1e-6));
    CHECK(*moved->coefficients[1].lower == Approx(1.8 * *fahrenheit->coefficients[1].lower).epsilon(1e-6));
}

TEST_CASE("Swapping failures and survivals turns the signs", "[statistics][models][logistic]") {
    auto data = endometrial();
    const auto plain = fitLogistic(data);
    for (double& event : data.events) {
        event = 1.0 - event;
    }
    const auto turned = fitLogistic(data);
    REQUIRE(turned);
    for (std::size_t j = 0; j < 4; ++j) {
        CHECK(turned->coefficients[j].estimate == Approx(-plain->coefficients[j].estimate).margin(1e-7));
        CHECK(*turned->coefficients[j].lower == Approx(-*plain->coefficients[j].upper).margin(1e-6));
    }
}

TEST_CASE("Profile limits of Firth's fit hold the true slope", "[statistics][models][logistic]") {
    std::mt19937_64 random{37};
    std::normal_distribution<double> normal;
    std::uniform_real_distribution<double> uniform;
    int held = 0;
    constexpr int kTrials = 1'000;
    for (int trial = 0; trial < kTrials; ++trial) {
        LogisticData data;
        data.covariates.resize(1);
        for (int i = 0; i < 50; ++i) {
            const double x = normal(random);
            data.covariates[0].push_back(x);
            data.events.push_back(uniform(random) < 1.0 / (1.0 + std::exp(-1.0 - 1.5 * x)) ? 1.0 : 0.0);
        }
        const auto fit = fitLogistic(data);
        REQUIRE(fit);
        held += *fit->coefficients[1].lower <= 1.5 && 1.5 <= *fit->coefficients[1].upper ? 1 : 0;
    }
    CHECK(held > 930); // 0.95 less 3 standard errors
    CHECK(held < 975);
}

TEST_CASE("A hundred thousand tests and three covariates", "[statistics][models][logistic]") {
    std::mt19937_64 random{41};
    std::normal_distribution<double> normal;
    std::uniform_real_distribution<double> uniform;
    LogisticData data;
    data.covariates.resize(3);
    for (int i = 0; i < 100'000; ++i) {
        double eta = 1.0;
        for (std::size_t j = 0; j < 3; ++j) {
            data.covariates[j].push_back(normal(random));
            eta += 0.3 * static_cast<double>(j) * data.covariates[j].back();
        }
        data.events.push_back(uniform(random) < 1.0 / (1.0 + std::exp(-eta)) ? 1.0 : 0.0);
    }
    const auto fit = fitLogistic(data);
    REQUIRE(fit);
    for (std::size_t j = 0; j < 3; ++j) {
        CHECK(fit->coefficients[j + 1].estimate == Approx(0.3 * static_cast<double>(j)).margin(0.03));
        CHECK(isSound(fit->coefficients[j + 1]));
    }
}

TEST_CASE("Data that cannot be fitted are refused by name", "[statistics][models][logistic]") {
    const double nan = std::numeric_limits<double>::quiet_NaN();
    CHECK(fitLogistic({}).error() == StatisticsFault::NoValues);
    CHECK(fitLogistic(oneColumn({1}, {1})).error() == StatisticsFault::TooFewValues);
    CHECK(fitLogistic(oneColumn({1, 2}, {1})).error() == StatisticsFault::UnequalLengths);
    CHECK(fitLogistic(oneColumn({5, 5, 5}, {1, 0, 1})).error() == StatisticsFault::Collinear);
    CHECK(fitLogistic(oneColumn({1, nan, 3}, {1, 0, 1})).error() == StatisticsFault::NotFinite);
    CHECK(fitLogistic(oneColumn({1, 2, 3}, {1, 0, nan})).error() == StatisticsFault::NotFinite);
    CHECK(fitLogistic(oneColumn({1, 2, 3}, {1, 0, 2})).error() == StatisticsFault::OutOfDomain);
    CHECK(fitLogistic(oneColumn({1, 2, 3}, {1, 0, -1})).error() == StatisticsFault::OutOfDomain);
    CHECK(fitLogistic(oneColumn({1e300, -1e300, 3}, {1, 0, 1})).error() == StatisticsFault::NotFinite);
    LogisticOptions level;
    level.level = 1.0;
    CHECK(fitLogistic(oRings(), level).error() == StatisticsFault::OutOfDomain);
    auto twice = oRings();
    twice.covariates.push_back(twice.covariates[0]);
    for (double& value : twice.covariates[1]) {
        value = 3.0 * value - 7.0;
    }
    CHECK(fitLogistic(twice).error() == StatisticsFault::Collinear);
    auto many = oRings();
    many.covariates.resize(12, many.covariates[0]);
    CHECK(fitLogistic(many).error() == StatisticsFault::OutOfDomain);
    auto empty = oRings();
    empty.trials.assign(23, 0.0);
    empty.events.assign(23, 0.0);
    CHECK(fitLogistic(empty).error() == StatisticsFault::NoValues);
    for (const double all : {0.0, 1.0}) { // all passed, all failed
        auto same = oRings();
        same.events.assign(23, all);
        const auto firth = fitLogistic(same);
        REQUIRE(firth);
        CHECK(isSound(firth->coefficients[0]));
        CHECK(isSound(firth->coefficients[1]));
        CHECK(fitLogistic(same, maximumLikelihood())->separation == Separation::Complete);
    }
}
