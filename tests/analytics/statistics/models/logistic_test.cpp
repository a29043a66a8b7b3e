#include "analytics/statistics/models/logistic.hpp"

#include "tests/analytics/statistics/models/logistic_data.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <limits>
#include <random>

using namespace holdfast::analytics::statistics;

namespace {

LogisticOptions maximumLikelihood() {
    LogisticOptions options;
    options.penalty = Penalty::None;
    return options;
}

LogisticData oneColumn(std::vector<double> x, std::vector<double> y) {
    LogisticData data;
    data.covariates = {std::move(x)};
    data.events = std::move(y);
    return data;
}

bool isSound(const LogisticCoefficient& c) {
    const bool limits = std::isfinite(c.lower.value_or(0.0)) && std::isfinite(c.upper.value_or(0.0));
    return limits && std::isfinite(c.estimate) && std::isfinite(c.standardError) && c.p >= 0.0 && c.p <= 1.0;
}

} // namespace

TEST_CASE("O-rings by maximum likelihood", "[statistics][models][logistic]") {
    const auto fit = fitLogistic(oRings(), maximumLikelihood());
    REQUIRE(fit);
    // R 4.2.2: glm(y ~ T, family = binomial); Dalal, Fowlkes and Hoadley 1989 print 15.043 and -0.2322
    CHECK(fit->coefficients[0].estimate == Approx(15.0429016).margin(1e-6));
    CHECK(fit->coefficients[0].standardError == Approx(7.3786301).margin(1e-5));
    CHECK(fit->coefficients[1].estimate == Approx(-0.2321627).margin(1e-7));
    CHECK(fit->coefficients[1].standardError == Approx(0.1082364).margin(1e-6));
    CHECK(fit->nullDeviance == Approx(28.267153).margin(1e-6));
    CHECK(fit->deviance == Approx(20.315193).margin(1e-6));
    CHECK(fit->chanceAt({31}) == Approx(0.9996087829).margin(1e-9));
    CHECK(fit->chanceAt({53}) == Approx(0.939247809).margin(1e-8));
    CHECK(fit->separation == Separation::None);
    // R 4.2.2: uniroot on the deviance of glm(y ~ 1, offset = b*T), and of glm(y ~ 0 + T, offset = a)
    CHECK(*fit->coefficients[1].lower == Approx(-0.515432537595).margin(1e-7));
    CHECK(*fit->coefficients[1].upper == Approx(-0.0607862571987).margin(1e-7));
    CHECK(*fit->coefficients[0].lower == Approx(3.32869779337).margin(1e-5));
    CHECK(*fit->coefficients[0].upper == Approx(34.3395826095).margin(1e-5));
    CHECK(fit->coefficients[1].chiSquare == Approx(28.267153 - 20.315193).margin(2e-6));
    CHECK(fit->coefficients[1].p == Approx(0.00480353251014).epsilon(1e-6));
}

TEST_CASE("O-rings with Firth's penalty", "[statistics][models][logistic]") {
    const auto fit = fitLogistic(oRings());
    REQUIRE(fit);
    // R 4.2.2, brglm2 0.9: glm(…, method = "brglm_fit", type = "AS_mean")
    CHECK(fit->coefficients[0].estimate == Approx(11.949515132942).margin(1e-5));
    CHECK(fit->coefficients[0].standardError == Approx(6.2554386729).margin(1e-5));
    CHECK(fit->coefficients[1].estimate == Approx(-0.186041915524).margin(1e-7));
    CHECK(fit->coefficients[1].standardError == Approx(0.0915822631).margin(1e-7));
    // R 4.2.2: uniroot on the penalised likelihood, optimize over the constant
    CHECK(*fit->coefficients[1].lower == Approx(-0.419532812339).margin(1e-6));
    CHECK(*fit->coefficients[1].upper == Approx(-0.0405285267268).margin(1e-6));
    CHECK(fit->coefficients[1].chiSquare == Approx(6.76449727908).margin(1e-5));
    CHECK(fit->penalizedLogLikelihood == Approx(-7.22218816302).margin(1e-6));
}

TEST_CASE("Endometrial cancer: Firth's estimates, profile limits and penalised tests",
          "[statistics][models][logistic]") {
    const auto fit = fitLogistic(endometrial());
    REQUIRE(fit);
    // Heinze and Schemper 2002, table: 2.93, -0.03, -2.60; to eight places R 4.2.2, brglm2 0.9
    struct Expected final {
        double estimate, error, lower, upper, chiSquare, p;
    };
    // limits, tests: R 4.2.2, uniroot and optim (BFGS) on the penalised likelihood; logistf prints the same figures
    const std::vector<Expected> expected{
        {3.77455940, 1.48869160, 1.08253710852, 7.20928049839, 8.19801357604, 0.00419362788512},
        {2.92927326, 1.55076369, 0.609724436354, 7.85463171374, 6.79845724884, 0.00912366754617},
        {-0.03475175, 0.03957815, -0.124458720852, 0.0404554731809, 0.746828513515, 0.38748220354},
        {-2.60416382, 0.77601762, -4.36518324726, -1.23272105723, 17.7593174795, 2.50686721477e-05}};
    REQUIRE(fit->coefficients.size() == 4);
    for (std::size_t j = 0; j < 4; ++j) {
        INFO("coefficient " << j);
        CHECK(fit->coefficients[j].estimate == Approx(expected[j].estimate).margin(1e-6));
        CHECK(fit->coefficients[j].standardError == Approx(expected[j].error).margin(1e-6));
        CHECK(*fit->coefficients[j].lower == Approx(expected[j].lower).margin(5e-6));
        CHECK(*fit->coefficients[j].upper == Approx(expected[j].upper).margin(5e-6));
        CHECK(fit->coefficients[j].chiSquare == Approx(expected[j].chiSquare).margin(1e-6));
        CHECK(fit->coefficients[j].p == Approx(expected[j].p).epsilon(1e-5));
    }
    CHECK(fit->penalizedLogLikelihood == Approx(-24.0372678007).margin(1e-8)); // R, as above
}

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

TEST_CASE("Budworms: grouped counts and two covariates", "[statistics][models][logistic]") {
    const auto fit = fitLogistic(budworms(), maximumLikelihood());
    REQUIRE(fit);
    // R 4.2.2 glm(cbind(dead, 20 - dead) ~ sex + dose); Venables and Ripley, Modern Applied Statistics, 4th ed., 7.2,
    // print -2.372 (.385), -1.101 (.356), 1.064 (.131), deviances 124.876 and 6.757
    CHECK(fit->coefficients[0].estimate == Approx(-2.37241194409).margin(1e-8));
    CHECK(fit->coefficients[1].estimate == Approx(-1.100743363).margin(1e-8));
    CHECK(fit->coefficients[2].estimate == Approx(1.06421396992).margin(1e-8));
    CHECK(fit->coefficients[0].standardError == Approx(0.385510854966).margin(1e-6));
    CHECK(fit->coefficients[1].standardError == Approx(0.355827130919).margin(1e-6));
    CHECK(fit->coefficients[2].standardError == Approx(0.131077489527).margin(1e-6));
    CHECK(fit->deviance == Approx(6.75706423223).margin(1e-8));
    CHECK(fit->nullDeviance == Approx(124.875592604).margin(1e-7));
    CHECK(*fit->coefficients[2].lower == Approx(0.822854515698).margin(1e-6)); // uniroot on the deviance with offset
    CHECK(*fit->coefficients[2].upper == Approx(1.33903877926).margin(1e-6));
    const auto firth = fitLogistic(budworms());
    REQUIRE(firth);
    // R 4.2.2, brglm2 0.9, type AS_mean
    CHECK(firth->coefficients[0].estimate == Approx(-2.3181348037).margin(1e-7));
    CHECK(firth->coefficients[1].estimate == Approx(-1.07667072428).margin(1e-7));
    CHECK(firth->coefficients[2].estimate == Approx(1.03997480648).margin(1e-7));
    CHECK(firth->coefficients[2].standardError == Approx(0.128662479122).margin(1e-7));
}

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
