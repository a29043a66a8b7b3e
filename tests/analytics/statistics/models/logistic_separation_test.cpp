#include "analytics/statistics/models/logistic.hpp"

#include "tests/analytics/statistics/models/logistic_data.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <random>

using namespace holdfast::analytics::statistics;

TEST_CASE("Endometrial cancer by maximum likelihood: neovasculation runs away and is flagged",
          "[statistics][models][logistic]") {
    const auto fit = fitLogistic(endometrial(), maximumLikelihood());
    REQUIRE(fit);
    CHECK(fit->separation == Separation::Quasi);
    CHECK(fit->coefficients[1].runsAway == 1);
    CHECK(fit->coefficients[0].runsAway == 0);
    CHECK(fit->coefficients[2].runsAway == 0);
    CHECK(fit->coefficients[3].runsAway == 0);
    // R 4.2.2 glm(HG ~ ., family = binomial), the coefficients that stay finite
    CHECK(fit->coefficients[0].estimate == Approx(4.3045).margin(0.0005));
    CHECK(fit->coefficients[2].estimate == Approx(-0.04218).margin(0.00005));
    CHECK(fit->coefficients[3].estimate == Approx(-2.9026).margin(0.0005));
    CHECK_FALSE(fit->coefficients[1].lower);
    CHECK_FALSE(fit->coefficients[1].upper);
}

TEST_CASE("Complete separation has a closed form under Firth", "[statistics][models][logistic]") {
    const auto data = oneColumn({0, 0, 0, 0, 1, 1, 1, 1}, {0, 0, 0, 0, 1, 1, 1, 1});
    const auto fit = fitLogistic(data);
    REQUIRE(fit);
    // ½ added to each cell of a saturated 2 × 2 table (Firth 1993, 4.1); brglm2 0.9 gives the same
    CHECK(fit->coefficients[0].estimate == Approx(std::log(0.5 / 4.5)).margin(1e-8));
    CHECK(fit->coefficients[1].estimate == Approx(2.0 * std::log(4.5 / 0.5)).margin(1e-8));
    CHECK(fit->coefficients[0].standardError == Approx(1.666666667).margin(1e-8));
    CHECK(fit->coefficients[1].standardError == Approx(2.357022604).margin(1e-8));
    CHECK(*fit->coefficients[1].lower > 0.0);
    const auto plain = fitLogistic(data, maximumLikelihood());
    REQUIRE(plain);
    CHECK(plain->separation == Separation::Complete);
    CHECK(plain->coefficients[1].runsAway == 1);
    CHECK(plain->coefficients[0].runsAway == -1);
}

TEST_CASE("Separation in every form is seen, and overlap never taken for it", "[statistics][models][logistic]") {
    std::mt19937_64 random{31};
    std::normal_distribution<double> normal;
    for (int trial = 0; trial < 60; ++trial) {
        LogisticData data;
        data.covariates.resize(2);
        const double edge = normal(random);
        for (int i = 0; i < 40; ++i) {
            data.covariates[0].push_back(normal(random));
            data.covariates[1].push_back(normal(random));
            data.events.push_back(data.covariates[0].back() + 0.5 * data.covariates[1].back() > edge ? 1.0 : 0.0);
        }
        const auto split = fitLogistic(data, maximumLikelihood());
        REQUIRE(split);
        CHECK(split->separation == Separation::Complete);
        const auto firth = fitLogistic(data);
        REQUIRE(firth);
        CHECK(isSound(firth->coefficients[1]));
        // two opposite pairs of twins on both sides overlap whatever the line
        for (const double side : {-9.0, 9.0}) {
            for (const double event : {0.0, 1.0}) {
                data.covariates[0].insert(data.covariates[0].end(), {side, 0.0});
                data.covariates[1].insert(data.covariates[1].end(), {0.0, side});
                data.events.insert(data.events.end(), {event, event});
            }
        }
        const auto overlap = fitLogistic(data, maximumLikelihood());
        REQUIRE(overlap);
        CHECK(overlap->separation == Separation::None);
    }
}

TEST_CASE("A tie on the edge is quasi-separation", "[statistics][models][logistic]") {
    const auto fit = fitLogistic(oneColumn({1, 2, 3, 4, 4, 5, 6}, {0, 0, 0, 0, 1, 1, 1}), maximumLikelihood());
    REQUIRE(fit);
    CHECK(fit->separation == Separation::Quasi);
    CHECK(fit->coefficients[1].runsAway == 1);
    CHECK(isSound(fit->coefficients[1]));
}
