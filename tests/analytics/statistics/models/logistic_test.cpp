#include "analytics/statistics/models/logistic.hpp"

#include "tests/analytics/statistics/models/logistic_data.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace holdfast::analytics::statistics;

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
