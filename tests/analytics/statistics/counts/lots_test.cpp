#include "analytics/statistics/counts/lot_prediction.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <limits>
#include <random>
#include <vector>

using namespace holdfast::analytics::statistics;
using Catch::WithinAbs;
using Catch::WithinRel;

namespace {

/// Boys among the first twelve children of 6,115 families in Saxony, 1876–1885.
std::vector<CountOf> saxony() {
    const std::vector<int> families{3, 24, 104, 286, 670, 1033, 1343, 1112, 829, 478, 181, 45, 7};
    std::vector<CountOf> lots;
    for (std::size_t boys = 0; boys < families.size(); ++boys)
        lots.insert(lots.end(), static_cast<std::size_t>(families[boys]), CountOf{static_cast<std::int64_t>(boys), 12});
    return lots;
}

std::vector<CountOf> tenLots() {
    return {{0, 20}, {1, 25}, {3, 30}, {0, 10}, {2, 22}, {7, 28}, {1, 15}, {0, 12}, {4, 40}, {2, 18}};
}

LotModel betaModel(double a, double b) {
    return {a / (a + b), 1.0 / (a + b + 1.0), LotModelCaveat::None};
}

} // namespace

TEST_CASE("the families of Saxony", "[statistics][counts][lots]") {
    // Geissler 1889, in Edwards, Ann. Hum. Genet. 24, 1960; Lindsey, Parametric Statistical Inference, 1996. Published
    // moment estimates a = 34.1350, b = 31.6085 divide by the families, not the families less one: 0.03 apart here.
    const auto moments = fitLotsByMoments(saxony());
    REQUIRE(moments);
    CHECK_THAT(moments->alpha(), WithinAbs(34.1350, 0.05));
    CHECK_THAT(moments->beta(), WithinAbs(31.6085, 0.05));
    // scipy 1.10.1 betabinom.logpmf maximised by minimize(Nelder-Mead, xatol 1e-10): a = 34.10289, b = 31.57826, mean
    // 0.5192188. A published fit prints a = 34.09558, b = 31.5715: its search stopped 2e-4 of a short on a flat top.
    const auto likeliest = fitLots(saxony());
    REQUIRE(likeliest);
    CHECK_THAT(likeliest->alpha(), WithinAbs(34.10289, 0.002));
    CHECK_THAT(likeliest->beta(), WithinAbs(31.57826, 0.002));
    CHECK_THAT(likeliest->alpha(), WithinRel(34.09558, 3e-4));
    CHECK_THAT(likeliest->mean, WithinAbs(0.5192188, 1e-7));
    CHECK_THAT(likeliest->intraclass, WithinAbs(0.01499674, 1e-6));
    CHECK(likeliest->caveat == LotModelCaveat::None);
}

TEST_CASE("lots of different size, and lots that are nearly all or nothing", "[statistics][counts][lots]") {
    // scipy 1.10.1, as above.
    const auto model = fitLots(tenLots());
    REQUIRE(model);
    CHECK_THAT(model->mean, WithinAbs(0.0871666, 1e-6));
    CHECK_THAT(model->intraclass, WithinAbs(0.0191705, 1e-6));
    std::vector<CountOf> clustered;
    for (const std::int64_t bad : {0, 0, 0, 9, 0, 1, 0, 0, 8, 0, 0, 2})
        clustered.push_back({bad, 10});
    const auto wide = fitLots(clustered);
    REQUIRE(wide);
    CHECK_THAT(wide->mean, WithinAbs(0.1554198, 1e-6));
    CHECK_THAT(wide->intraclass, WithinAbs(0.5854576, 1e-6));
}

TEST_CASE("over-dispersion is Pearson's over its degrees of freedom", "[statistics][counts][lots]") {
    // R 4.2.2 chisq.test(rbind(x, n - x)): 13.8245555555556 on 9, p 0.1287044218134; glm(cbind(x, n - x) ~ 1, family =
    // quasibinomial) prints the dispersion 1.536126, for its iteration stops before the last digits.
    const auto result = overDispersion(tenLots());
    REQUIRE(result);
    CHECK_THAT(result->pearson, WithinAbs(13.8245555555556, 1e-12));
    CHECK_THAT(result->greaterP, WithinAbs(0.1287044218134, 1e-12));
    CHECK_THAT(result->factor, WithinAbs(1.536126, 1e-4));
    CHECK(result->freedoms == 9.0);
}

TEST_CASE("a lot's bad pieces given its own readings", "[statistics][counts][lots]") {
    // scipy 1.10.1 betabinom(pieces - read, a + bad, b + good): ppf(.05), ppf(.95), mean, 1 - pmf(0).
    struct Row {
        double a, b;
        LotAsked lot;
        std::int64_t lower, upper;
        double expected, anyOfTheRest;
    };
    const auto row = GENERATE(Row{2, 38, {{1, 10}, 110}, 2, 15, 7.0, 0.9658987846907311},
                              Row{0.5, 9.5, {{0, 5}, 205}, 0, 26, 6.666666666666667, 0.7420828263790405},
                              Row{0.3, 20, {{2, 8}, 72}, 2, 15, 7.201413427561837, 0.9401687767047933});
    const auto bad = predictBad(betaModel(row.a, row.b), row.lot);
    REQUIRE(bad);
    CHECK(bad->lower == row.lower);
    CHECK(bad->upper == row.upper);
    CHECK_THAT(bad->expected, WithinAbs(row.expected, 1e-9));
    if (row.lot.own.hits == 0)
        CHECK_THAT(bad->anyBad, WithinAbs(row.anyOfTheRest, 1e-10));
    else
        CHECK(bad->anyBad == 1.0);
}

TEST_CASE("several lots together are the convolution of each", "[statistics][counts][lots]") {
    // scipy 1.10.1: betabinom(100, 3, 47) and betabinom(200, 2, 43) convolved: 4, 30, mean 14.8888889, any 0.9989118.
    const LotModel model = betaModel(2, 38);
    const std::vector<LotAsked> lots{{{0, 5}, 205}}; // Beta(2, 43), 200 pieces open
    const auto one = predictBadTogether(model, lots);
    REQUIRE(one);
    CHECK(one->upper == predictBad(model, lots[0])->upper);
    const std::vector<LotAsked> two{{{1, 10}, 110}, {{0, 5}, 205}}; // Beta(3, 47), 100 open, and the one above
    const auto both = predictBadTogether(model, two);
    REQUIRE(both);
    CHECK(both->lower == 4 + 1); // the one found on top
    CHECK(both->upper == 30 + 1);
    CHECK_THAT(both->expected, WithinAbs(14.88888888888889 + 1.0, 1e-9));
    CHECK(both->anyBad == 1.0);
    CHECK(predictBadTogether(model, {})->upper == 0);
}

TEST_CASE("the range covers lots drawn from the model", "[statistics][counts][lots]") {
    std::mt19937_64 random{12};
    std::gamma_distribution<> ga(0.8);
    std::gamma_distribution<> gb(14.0);
    const LotModel model = betaModel(0.8, 14.0);
    int covered = 0;
    constexpr int kLots = 1500;
    for (int i = 0; i < kLots; ++i) {
        const double x = ga(random);
        const double share = x / (x + gb(random));
        std::binomial_distribution<std::int64_t> readings(8, share);
        std::binomial_distribution<std::int64_t> rest(120, share);
        const std::int64_t found = readings(random);
        const auto bad = predictBad(model, {{found, 8}, 128});
        REQUIRE(bad);
        const std::int64_t truth = found + rest(random);
        covered += bad->lower <= truth && truth <= bad->upper ? 1 : 0;
    }
    CHECK(covered >= 1315); // 90 % of 1500 less three standard errors
}

TEST_CASE("no bad reading at all still leaves a chance", "[statistics][counts][lots]") {
    const auto model = fitLots(std::vector<CountOf>{{0, 10}, {0, 20}, {0, 5}});
    REQUIRE(model);
    CHECK(model->caveat == LotModelCaveat::NothingBad);
    CHECK_THAT(model->mean, WithinAbs(0.5 / 36.0, 1e-15)); // Beta(1/2, 1/2 + 35)
    const auto bad = predictBad(*model, {{0, 10}, 200});
    REQUIRE(bad);
    CHECK(bad->anyBad > 0.3);
    CHECK(bad->upper > 0);
    CHECK(fitLots(std::vector<CountOf>{{9, 9}, {4, 4}})->caveat == LotModelCaveat::EverythingBad);
    CHECK(fitLots(std::vector<CountOf>{{1, 1}, {0, 1}, {0, 1}})->caveat == LotModelCaveat::NothingRepeated);
    CHECK(fitLots(std::vector<CountOf>{{1, 5}, {0, 7}})->caveat == LotModelCaveat::FewLots);
    const auto alike = fitLots(std::vector<CountOf>(6, CountOf{1, 10}));
    CHECK(alike->caveat == LotModelCaveat::LotsAlike);
    CHECK(alike->intraclass == 0.0);
    // binomial then: scipy 1.10.1 binom.ppf([.05, .95], 90, .1) = 5, 14
    const auto binomial = predictBad(*alike, {{0, 10}, 100});
    CHECK(binomial->lower == 5);
    CHECK(binomial->upper == 14);
    CHECK_THAT(binomial->anyBad, WithinAbs(1.0 - std::pow(0.9, 90), 1e-12));
}

TEST_CASE("lots that are none are refused", "[statistics][counts][lots]") {
    const double nan = std::numeric_limits<double>::quiet_NaN();
    CHECK(fitLots({}).error() == StatisticsFault::NoValues);
    CHECK(fitLots(std::vector<CountOf>{{0, 0}}).error() == StatisticsFault::NoValues);
    CHECK(fitLots(std::vector<CountOf>{{-1, 5}}).error() == StatisticsFault::OutOfDomain);
    CHECK(fitLots(std::vector<CountOf>{{6, 5}}).error() == StatisticsFault::OutOfDomain);
    CHECK(fitLots(std::vector<CountOf>{{1, 2'000'000}, {0, 3}}).error() == StatisticsFault::OutOfDomain);
    CHECK(fitLotsByMoments(std::vector<CountOf>{{2, 1}}).error() == StatisticsFault::OutOfDomain);
    CHECK(overDispersion(std::vector<CountOf>{{1, 5}}).error() == StatisticsFault::TooFewValues);
    CHECK(overDispersion(std::vector<CountOf>{{0, 5}, {0, 5}}).error() == StatisticsFault::NoSpread);
    const LotModel model = betaModel(1, 9);
    CHECK(predictBad({nan, .1}, {{0, 1}, 5}).error() == StatisticsFault::OutOfDomain);
    CHECK(predictBad({.1, 1.0}, {{0, 1}, 5}).error() == StatisticsFault::OutOfDomain);
    CHECK(predictBad(model, {{0, 6}, 5}).error() == StatisticsFault::OutOfDomain);
    CHECK(predictBad(model, {{0, 0}, -5}).error() == StatisticsFault::OutOfDomain);
    CHECK(predictBad(model, {{0, 0}, kMostPieces + 1}).error() == StatisticsFault::OutOfDomain);
    CHECK(predictBad({1e-320, .5}, {{0, 0}, 5})->upper == 0);
    CHECK(predictBad({1.0 - 1e-16, 1.0 - 1e-10}, {{8, 8}, 50})->lower == 50);
    CHECK(predictBad(model, {{0, 0}, 5}, nan).error() == StatisticsFault::OutOfDomain);
    const auto nothingLeft = predictBad(model, {{2, 5}, 5});
    REQUIRE(nothingLeft);
    CHECK(nothingLeft->lower == 2);
    CHECK(nothingLeft->upper == 2);
    const auto empty = predictBad(model, {{0, 0}, 0});
    CHECK(empty->anyBad == 0.0);
}
