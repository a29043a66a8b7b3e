#include "analytics/statistics/counts/interval_survival.hpp"
#include "analytics/statistics/counts/survival.hpp"
#include "tests/support/not_finite.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <limits>
#include <vector>

using namespace holdfast::analytics::statistics;
using Catch::WithinAbs;
using holdfast::testing::kNaN;

namespace {

/// Weeks of remission under 6-mercaptopurine; negative: still in remission.
std::vector<WashOutcome> outcomes(const std::vector<double>& times) {
    std::vector<WashOutcome> result;
    for (const double time : times)
        result.push_back({std::abs(time), time > 0.0, 1});
    return result;
}

// Freireich and others, Blood 21, 1963; Cox, J. R. Stat. Soc. B 34, 1972.
std::vector<WashOutcome> treated() {
    return outcomes({6, 6, 6, -6, 7, -9, 10, -10, -11, 13, 16, -17, -19, -20, 22, 23, -25, -32, -32, -34, -35});
}
std::vector<WashOutcome> placebo() {
    return outcomes({1, 1, 2, 2, 3, 4, 4, 5, 5, 8, 8, 8, 8, 11, 11, 12, 12, 15, 17, 22, 23});
}

} // namespace

TEST_CASE("remission under treatment, step by step", "[statistics][counts][survival]") {
    // R 4.2.2, survival 3.5-3: survfit(Surv(t, e) ~ 1, conf.type = "log-log"); the published S are 0.857, 0.807, 0.753,
    // 0.690, 0.627, 0.538, 0.448.
    struct Row {
        double time;
        int atRisk;
        double survival, error, lower, upper;
    };
    const std::vector<Row> rows{{6, 21, .857142857143, .0763603548321, .619717955266, .951551747647},
                                {7, 17, .806722689076, .0869352851801, .563146564622, .922809019203},
                                {10, 15, .752941176471, .0963496529943, .503199510800, .889361835169},
                                {13, 12, .690196078431, .1068147077750, .431610222486, .849065963349},
                                {16, 11, .627450980392, .1140538652568, .367510855988, .804912189472},
                                {22, 7, .537815126050, .1282337516930, .267778936767, .746790717635},
                                {23, 6, .448179271709, .1345914567558, .188052005959, .680142628495}};
    const auto curve = kaplanMeier(treated());
    REQUIRE(curve);
    REQUIRE(curve->steps.size() == rows.size());
    for (std::size_t i = 0; i < rows.size(); ++i) {
        CHECK(curve->steps[i].cycles == rows[i].time);
        CHECK(curve->steps[i].atRisk == rows[i].atRisk);
        CHECK_THAT(curve->steps[i].survival, WithinAbs(rows[i].survival, 1e-11));
        CHECK_THAT(curve->steps[i].standardError, WithinAbs(rows[i].error, 1e-11));
        CHECK_THAT(curve->steps[i].lower, WithinAbs(rows[i].lower, 1e-11));
        CHECK_THAT(curve->steps[i].upper, WithinAbs(rows[i].upper, 1e-11));
    }
    CHECK(*curve->median() == 23.0); // published median
    CHECK(*curve->at(5.9) == 1.0);
    CHECK_THAT(*curve->at(30), WithinAbs(.448179271709, 1e-11));
    CHECK_FALSE(curve->at(36));
    CHECK_FALSE(curve->at(kNaN));
}

TEST_CASE("maintained chemotherapy, and a curve that ends at nothing", "[statistics][counts][survival]") {
    // Miller, Survival Analysis, 1981; R survival 3.5-3 aml, conf.type = "log-log".
    const auto maintained = kaplanMeier(outcomes({9, 13, -13, 18, 23, -28, 31, 34, -45, 48, -161}));
    REQUIRE(maintained);
    REQUIRE(maintained->steps.size() == 7);
    CHECK_THAT(maintained->steps[3].survival, WithinAbs(.61363636, 1e-8));
    CHECK_THAT(maintained->steps[3].standardError, WithinAbs(.152632331, 1e-9));
    CHECK_THAT(maintained->steps[6].survival, WithinAbs(.18409091, 1e-8));
    CHECK_THAT(maintained->steps[6].lower, WithinAbs(.011738480, 1e-9));
    CHECK_THAT(maintained->steps[6].upper, WithinAbs(.52501484, 1e-8));
    const auto other = outcomes({5, 5, 8, 8, 12, -16, 23, 27, 30, 33, 43, 45});
    const auto curve = kaplanMeier(other);
    REQUIRE(curve);
    CHECK_THAT(curve->steps[3].survival, WithinAbs(.486111111, 1e-9));
    CHECK_THAT(curve->steps[7].survival, WithinAbs(.097222222, 1e-9));
    const auto& last = curve->steps.back(); // R prints NaN and NA there
    CHECK(last.survival == 0.0);
    CHECK(last.lower == 0.0);
    CHECK(last.upper == curve->steps[7].upper);
    CHECK(*curve->at(1000) == 0.0);
    // R survival 3.5-3 survdiff(Surv(time, status) ~ x, data = aml): 3.39638869898
    const auto test = logRank(outcomes({9, 13, -13, 18, 23, -28, 31, 34, -45, 48, -161}), other);
    REQUIRE(test);
    CHECK_THAT(test->chiSquare, WithinAbs(3.39638869898, 1e-10));
}

TEST_CASE("treatment and placebo differ as published", "[statistics][counts][survival]") {
    // R 4.2.2, survival 3.5-3 survdiff: 16.79294098922, expected 19.25050094803, variance 6.25696057368, p 4.16881e-05.
    const auto test = logRank(treated(), placebo());
    REQUIRE(test);
    CHECK(test->observed == 9.0);
    CHECK_THAT(test->expected, WithinAbs(19.25050094803, 1e-10));
    CHECK_THAT(test->variance, WithinAbs(6.25696057368, 1e-10));
    CHECK_THAT(test->chiSquare, WithinAbs(16.79294098922, 1e-10));
    CHECK_THAT(test->twoSided, WithinAbs(4.16881e-05, 1e-10));
    const auto turned = logRank(placebo(), treated());
    CHECK_THAT(turned->chiSquare, WithinAbs(test->chiSquare, 1e-11));
}

TEST_CASE("angina pectoris by yearly intervals", "[statistics][counts][survival]") {
    // Gehan, J. Chronic Dis. 21, 1969; Lee, Statistical Methods for Survival Data Analysis, table 4.6 (from memory,
    // each figure recomputed by hand): failed, lost, exposed, failing, survival at the end of the interval.
    const std::vector<LifeInterval> intervals{{456, 0},   {226, 39}, {152, 22}, {171, 23}, {135, 24},
                                              {125, 107}, {83, 133}, {74, 102}, {51, 68},  {42, 64},
                                              {43, 45},   {34, 53},  {18, 33},  {9, 27},   {6, 23}};
    const std::vector<double> exposed{2418, 1942.5, 1686,  1511.5, 1317,  1116.5, 871.5, 671,
                                      512,  395,    298.5, 206.5,  129.5, 81.5,   47.5};
    const std::vector<double> survival{.8114, .7170, .6524, .5786, .5193, .4611, .4172,
                                       .3712, .3342, .2987, .2557, .2136, .1839, .1636};
    const auto rows = lifeTable(2418, intervals);
    REQUIRE(rows);
    for (std::size_t i = 0; i < exposed.size(); ++i)
        CHECK_THAT((*rows)[i].exposed, WithinAbs(exposed[i], 1e-12));
    for (std::size_t i = 0; i < survival.size(); ++i)
        CHECK_THAT((*rows)[i].survival, WithinAbs(survival[i], 5.1e-5));
    CHECK_THAT((*rows)[0].failing, WithinAbs(.1886, 5e-5));
    CHECK_THAT((*rows)[0].standardError, WithinAbs(.00796, 5e-6));
    CHECK_THAT((*rows)[1].standardError, WithinAbs(.00918, 5e-6));
}

TEST_CASE("pieces looked at after some washes only", "[statistics][counts][survival]") {
    // R 4.2.2, survival 3.5-3: survfit(Surv(L, R, type = "interval2") ~ 1, weights = w), printed at the middles.
    const double never = -1;
    const std::vector<double> held{0, 1, 1, 3, 3, 5, 0, 5, 10, 3, 1, 10, 5, 3, 15};
    const std::vector<double> by{1, 3, 5, 5, 10, 10, 3, never, never, never, never, 15, 15, 15, never};
    const std::vector<std::int64_t> pieces{1, 2, 3, 4, 3, 5, 1, 4, 3, 2, 1, 2, 3, 1, 6};
    std::vector<InspectedOutcome> seen;
    for (std::size_t i = 0; i < held.size(); ++i)
        seen.push_back({held[i], by[i] == never ? std::nullopt : std::optional{by[i]}, pieces[i]});
    const auto steps = intervalSurvival(seen);
    REQUIRE(steps);
    const std::vector<double> survival{.969567203440, .877128011030, .675411176314, .382054443231, .250900726026, 0.0};
    REQUIRE(steps->size() == survival.size());
    for (std::size_t i = 0; i < survival.size(); ++i)
        CHECK_THAT((*steps)[i].survival, WithinAbs(survival[i], 1e-4));
    CHECK((*steps)[3].after == 5.0);
    CHECK(*(*steps)[3].by == 10.0);
    CHECK_FALSE(steps->back().by);
}

TEST_CASE("with every piece seen at every cycle the interval curve is Kaplan and Meier's",
          "[statistics][counts][survival]") {
    std::vector<InspectedOutcome> seen;
    for (const auto& outcome : treated()) // failed between the week before and its week, or held until its week
        seen.push_back(outcome.failed ? InspectedOutcome{outcome.cycles - 1.0, outcome.cycles, 1}
                                      : InspectedOutcome{outcome.cycles, std::nullopt, 1});
    const auto steps = intervalSurvival(seen);
    const auto curve = kaplanMeier(treated());
    REQUIRE(steps);
    REQUIRE(steps->size() == curve->steps.size() + 1);
    for (std::size_t i = 0; i < curve->steps.size(); ++i)
        CHECK_THAT((*steps)[i].survival, WithinAbs(curve->steps[i].survival, 1e-8));
}

TEST_CASE("survival of nothing, of all and of none", "[statistics][counts][survival]") {
    CHECK(kaplanMeier({}).error() == StatisticsFault::NoValues);
    CHECK(kaplanMeier(std::vector<WashOutcome>{{kNaN, true, 1}}).error() == StatisticsFault::NotFinite);
    CHECK(kaplanMeier(std::vector<WashOutcome>{{-1, true, 1}}).error() == StatisticsFault::OutOfDomain);
    CHECK(kaplanMeier(std::vector<WashOutcome>{{1, true, -1}}).error() == StatisticsFault::OutOfDomain);
    CHECK(kaplanMeier(std::vector<WashOutcome>{{1, true, 0}}).error() == StatisticsFault::NoValues);
    CHECK(kaplanMeier(treated(), kNaN).error() == StatisticsFault::OutOfDomain);
    const auto held = kaplanMeier(std::vector<WashOutcome>{{5, false, 10}});
    REQUIRE(held);
    CHECK(held->steps.empty());
    CHECK(*held->at(5) == 1.0);
    CHECK_FALSE(held->at(6));
    CHECK_FALSE(held->median());
    const auto gone = kaplanMeier(std::vector<WashOutcome>{{5, true, 10}});
    REQUIRE(gone);
    CHECK(gone->steps[0].survival == 0.0);
    CHECK(gone->steps[0].upper == 1.0);
    CHECK(logRank(treated(), {}).error() == StatisticsFault::TooFewValues);
    CHECK(logRank(outcomes({-3, -4}), outcomes({-5})).error() == StatisticsFault::NoSpread);
    CHECK(lifeTable(0, std::vector<LifeInterval>{{0, 0}}).error() == StatisticsFault::NoValues);
    CHECK(lifeTable(5, {}).error() == StatisticsFault::NoValues);
    CHECK(lifeTable(5, std::vector<LifeInterval>{{4, 2}}).error() == StatisticsFault::OutOfDomain);
    CHECK(lifeTable(5, std::vector<LifeInterval>{{-1, 2}}).error() == StatisticsFault::OutOfDomain);
    const auto emptied = lifeTable(5, std::vector<LifeInterval>{{5, 0}, {0, 0}});
    REQUIRE(emptied);
    CHECK((*emptied)[1].survival == 0.0);
    CHECK((*emptied)[1].failing == 0.0);
    CHECK(intervalSurvival({}).error() == StatisticsFault::NoValues);
    CHECK(intervalSurvival(std::vector<InspectedOutcome>{{3, 3.0, 1}}).error() == StatisticsFault::OutOfDomain);
    CHECK(intervalSurvival(std::vector<InspectedOutcome>{{kNaN, 3.0, 1}}).error() == StatisticsFault::NotFinite);
    CHECK(intervalSurvival(std::vector<InspectedOutcome>{{1, 3.0, -1}}).error() == StatisticsFault::OutOfDomain);
    const auto none = intervalSurvival(std::vector<InspectedOutcome>{{4, std::nullopt, 3}});
    REQUIRE(none);
    CHECK(none->size() == 1);
}
