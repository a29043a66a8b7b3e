#include "analytics/statistics/charts/attributes.hpp"
#include "analytics/statistics/charts/constants.hpp"
#include "tests/analytics/statistics/charts/shared_tables.hpp"

#include <catch2/catch.hpp>
#include <cmath>
#include <random>

using namespace holdfast::analytics::statistics;

namespace {

/// Defective chips of 30 wafers with 50 chips each, NIST/SEMATECH e-Handbook 6.3.3.2.
std::vector<Counted> wafers() {
    std::vector<Counted> periods;
    for (const double failed :
         {12, 15, 8, 10, 4, 7, 16, 9, 14, 10, 5, 6, 17, 12, 22, 8, 10, 5, 13, 11, 20, 18, 24, 15, 9, 12, 7, 13, 9, 6}) {
        periods.push_back({failed, 50.0});
    }
    return periods;
}

/// Defects of 25 wafers, NIST/SEMATECH e-Handbook 6.3.3.1.
std::vector<Counted> defects() {
    std::vector<Counted> periods;
    for (const double count :
         {16, 14, 28, 16, 12, 20, 10, 12, 10, 17, 19, 17, 14, 16, 15, 13, 14, 16, 11, 20, 11, 19, 16, 31, 13}) {
        periods.push_back({count, 1.0});
    }
    return periods;
}

std::vector<std::size_t> beyond(const AttributeChart& chart) {
    std::vector<std::size_t> points;
    for (const auto& signal : chart.findings.alarms) {
        if (signal.rule == NelsonRule::BeyondThreeSigma) {
            points.push_back(signal.at);
        }
    }
    return points;
}

} // namespace

TEST_CASE("The handbook's p chart of wafers", "[statistics][charts]") {
    const auto chart = attributeChart(ChartKind::P, wafers());
    REQUIRE(chart);
    const auto& limits = chart->points.front().limits;
    CHECK(limits.center == Approx(0.2313).margin(5e-5)); // e-Handbook 6.3.3.2
    CHECK(limits.upper == Approx(0.4102).margin(5e-5));
    CHECK(limits.lower == Approx(0.0524).margin(5e-5));
    // R 4.2.2, p̄ ± 3·sqrt(p̄(1 − p̄)/n)
    CHECK(limits.center == Approx(0.231333333333).margin(5e-13));
    CHECK(limits.lower == Approx(0.0524275480719).margin(5e-13));
    CHECK(limits.upper == Approx(0.410239118595).margin(5e-13));
    CHECK(beyond(*chart) == std::vector<std::size_t>{14, 22}); // wafers 15 and 23
    CHECK(chart->baseline.says(ChartCaveat::OverDispersed));   // Σz² = 85.41 on 29, scipy 1.10.1
}

TEST_CASE("The same as numbers: np chart", "[statistics][charts]") {
    const auto chart = attributeChart(ChartKind::Np, wafers());
    const auto& limits = chart->points.front().limits;
    CHECK(limits.center == Approx(11.5666666667).margin(5e-10)); // R 4.2.2
    CHECK(limits.lower == Approx(2.6213774036).margin(5e-10));
    CHECK(limits.upper == Approx(20.5119559297).margin(5e-10));
    CHECK(beyond(*chart) == std::vector<std::size_t>{14, 22});
    CHECK(chart->points[14].value == 22.0);
}

TEST_CASE("Without the wafers that had a cause, applied to later samples", "[statistics][charts]") {
    auto kept = wafers();
    kept.erase(kept.begin() + 22);
    kept.erase(kept.begin() + 14);
    const auto chart = attributeChart(ChartKind::P, kept);
    // R package qcc 3.0 documentation, orangejuice without 15 and 23
    CHECK(chart->baseline.center == Approx(0.215).margin(5e-7));
    CHECK(chart->points[0].limits.lower == Approx(0.04070284).margin(5e-9));
    CHECK(chart->points[0].limits.upper == Approx(0.3892972).margin(5e-8));
    const auto frozen = attributeBaseline("before the repair", ChartKind::P, kept);
    ChartOptions options;
    options.baseline = *frozen;
    const auto later = attributeChart(ChartKind::P, std::vector<Counted>{{25.0, 50.0}, {10.0, 50.0}}, options);
    CHECK(later->points[1].limits.upper == chart->points[0].limits.upper);
    CHECK(beyond(*later) == std::vector<std::size_t>{0});
    CHECK(later->baseline.name == "before the repair");
}

TEST_CASE("The handbook's c chart of defects", "[statistics][charts]") {
    const auto chart = attributeChart(ChartKind::C, defects());
    REQUIRE(chart);
    CHECK(chart->points[0].limits.center == 16.0); // e-Handbook 6.3.3.1, exact: 400/25
    CHECK(chart->points[0].limits.upper == 28.0);
    CHECK(chart->points[0].limits.lower == 4.0);
    CHECK(beyond(*chart) == std::vector<std::size_t>{23}); // 31; wafer 3 with 28 is on the limit and not out
    CHECK(chart->points[2].z == 3.0);
}

TEST_CASE("Circuit boards: c chart of the trial samples", "[statistics][charts]") {
    const auto rows = tables::rows("qcc_circuit.txt");
    if (rows.empty()) {
        return;
    }
    std::vector<Counted> trial;
    std::vector<Counted> kept;
    for (const auto& row : rows) {
        if (row[3] == 1.0) {
            trial.push_back({row[1], row[2]});
            if (row[0] != 6.0 && row[0] != 20.0) {
                kept.push_back({row[1], row[2]});
            }
        }
    }
    const auto chart = attributeChart(ChartKind::C, trial);
    CHECK(chart->points[0].limits.center == Approx(19.8461538462).margin(5e-10)); // R 4.2.2
    CHECK(chart->points[0].limits.lower == Approx(6.48144716717).margin(5e-12));
    CHECK(chart->points[0].limits.upper == Approx(33.2108605251).margin(5e-10));
    CHECK(beyond(*chart) == std::vector<std::size_t>{5, 19});
    const auto c = attributeChart(ChartKind::C, kept);
    CHECK(c->points[0].limits.lower == Approx(6.362532).margin(5e-7)); // R package qcc 3.0 documentation
    CHECK(c->points[0].limits.upper == Approx(32.9708).margin(5e-5));
    const auto u = attributeChart(ChartKind::U, kept);
    CHECK(u->baseline.center == Approx(0.1966667).margin(5e-8));
    CHECK(u->points[0].limits.lower == Approx(0.06362532).margin(5e-9));
    CHECK(u->points[0].limits.upper == Approx(0.329708).margin(5e-7));
}

TEST_CASE("Orange juice cans: later samples", "[statistics][charts]") {
    const auto rows = tables::rows("qcc_orangejuice2.txt");
    if (rows.empty()) {
        return;
    }
    std::vector<Counted> all;
    for (const auto& row : rows) {
        all.push_back({row[1], row[2]});
    }
    const auto chart = attributeChart(ChartKind::P, all, {RuleSet::all(), Stretch{0, 24}, {}});
    CHECK(chart->baseline.center == Approx(0.110833333333).margin(5e-13)); // R 4.2.2
    CHECK(chart->points[0].limits.upper == Approx(0.244020701353).margin(5e-13));
    CHECK(chart->points[0].limits.lower == 0.0);
    CHECK(beyond(*chart).empty());
    const auto np = attributeChart(ChartKind::Np, all, {RuleSet::all(), Stretch{0, 24}, {}});
    CHECK(np->points[0].limits.upper == Approx(12.2010350676).margin(5e-10));
    CHECK(np->points[0].limits.center == Approx(5.54166666667).margin(5e-11));
}

TEST_CASE("Personal computers: u chart of five a sample", "[statistics][charts]") {
    const auto rows = tables::rows("qcc_pcmanufact.txt");
    if (rows.empty()) {
        return;
    }
    std::vector<Counted> periods;
    for (const auto& row : rows) {
        periods.push_back({row[0], row[1]});
    }
    const auto chart = attributeChart(ChartKind::U, periods);
    CHECK(chart->baseline.center == Approx(1.93).margin(5e-13)); // R 4.2.2
    CHECK(chart->points[7].limits.lower == Approx(0.0661330519589).margin(5e-13));
    CHECK(chart->points[7].limits.upper == Approx(3.79386694804).margin(5e-12));
    CHECK(beyond(*chart).empty());
}

TEST_CASE("Dyed cloth: u chart with limits by the area of each roll", "[statistics][charts]") {
    const auto rows = tables::rows("qcc_dyedcloth.txt");
    if (rows.empty()) {
        return;
    }
    std::vector<Counted> rolls;
    for (const auto& row : rows) {
        rolls.push_back({row[0], row[1]});
    }
    const auto chart = attributeChart(ChartKind::U, rolls);
    REQUIRE(chart);
    CHECK(chart->baseline.center == Approx(1.42325581395).margin(5e-12));
    // R 4.2.2, ū ± 3·sqrt(ū/area)
    const std::vector<std::pair<double, double>> expected{
        {0.291473930127, 2.55503769778}, {0.157885199984, 2.68862642792}, {0.430617436637, 2.41589419127},
        {0.291473930127, 2.55503769778}, {0.262072101865, 2.58443952604}, {0.291473930127, 2.55503769778},
        {0.390085034041, 2.45642659387}, {0.318749790965, 2.52776183694}, {0.390085034041, 2.45642659387},
        {0.410959322778, 2.43555230513}};
    for (std::size_t i = 0; i < expected.size(); ++i) {
        CHECK(chart->points[i].limits.lower == Approx(expected[i].first).margin(5e-12));
        CHECK(chart->points[i].limits.upper == Approx(expected[i].second).margin(5e-12));
    }
    CHECK(beyond(*chart).empty());
}

TEST_CASE("Over-dispersed shares get the limits of Laney's p′", "[statistics][charts]") {
    const auto chart = attributeChart(ChartKind::LaneyP, wafers());
    REQUIRE(chart);
    // Laney 2002, by numpy 1.24: z = (p − p̄)/sqrt(p̄(1 − p̄)/n), σz = mean(abs(diff(z)))/(2/sqrt(pi))
    CHECK(chart->baseline.dispersion == Approx(1.6603086218728396).epsilon(1e-12));
    CHECK(chart->points[0].limits.upper == Approx(0.5283721511057751).epsilon(1e-12));
    CHECK(chart->points[0].limits.lower == 0.0);
    CHECK(chart->points[14].z == Approx(2.1074686624950547).epsilon(1e-12));
    CHECK(beyond(*chart).empty());
}

TEST_CASE("Under-dispersed counts of varying size get the limits of u′", "[statistics][charts]") {
    const std::vector<Counted> rolls{{14, 100}, {12, 80},  {20, 130}, {11, 100}, {7, 95},
                                     {10, 100}, {21, 120}, {16, 105}, {19, 120}, {23, 125}};
    const auto chart = attributeChart(ChartKind::LaneyU, rolls);
    // numpy 1.24, formula as above with sqrt(ū/n)
    CHECK(chart->baseline.center == Approx(0.14232558139534884).epsilon(1e-13));
    CHECK(chart->baseline.dispersion == Approx(0.6785674603079338).epsilon(1e-12));
    CHECK(chart->points[0].limits.upper == Approx(0.2191246172484249).epsilon(1e-12));
    CHECK(chart->points[1].limits.upper == Approx(0.22818951378230967).epsilon(1e-12));
    CHECK(chart->points[6].z == Approx(1.3981828749026222).epsilon(1e-12));
}

TEST_CASE("On purely binomial lots p′ settles to p", "[statistics][charts]") {
    std::mt19937_64 random{12};
    std::binomial_distribution<int> binomial{400, 0.06};
    std::vector<Counted> lots;
    for (int i = 0; i < 5000; ++i) {
        lots.push_back({static_cast<double>(binomial(random)), 400.0});
    }
    const auto laney = attributeChart(ChartKind::LaneyP, lots);
    CHECK(laney->baseline.dispersion == Approx(1.0).margin(0.04)); // s.e. about √(0.83/5000)
    CHECK_FALSE(attributeChart(ChartKind::P, lots)->baseline.says(ChartCaveat::OverDispersed));
}

TEST_CASE("Empty weeks are passed over and not forgotten", "[statistics][charts][hostile]") {
    auto periods = wafers();
    periods.insert(periods.begin() + 10, Counted{0.0, 0.0});
    const auto chart = attributeChart(ChartKind::P, periods);
    REQUIRE(chart);
    CHECK(chart->points.size() == 31);
    CHECK_FALSE(chart->points[10].inspected);
    CHECK(chart->baseline.points == 30);
    CHECK(chart->baseline.says(ChartCaveat::EmptyPeriods));
    CHECK(beyond(*chart) == std::vector<std::size_t>{15, 23});
    CHECK(chart->findings.marks.size() == 31);
    CHECK(chart->findings.marks[10] == 0);
}

TEST_CASE("All pass, all fail, one lot, impossible counts", "[statistics][charts][hostile]") {
    const std::vector<Counted> allPass(30, Counted{0.0, 40.0});
    const std::vector<Counted> allFail(30, Counted{40.0, 40.0});
    for (const auto& lots : {allPass, allFail}) {
        for (const auto kind : {ChartKind::P, ChartKind::Np, ChartKind::LaneyP}) {
            const auto chart = attributeChart(kind, lots);
            REQUIRE(chart);
            CHECK(chart->baseline.says(ChartCaveat::NoSpread));
            CHECK(chart->findings.alarms.empty());
            CHECK(chart->points[3].z == 0.0);
            CHECK(chart->points[3].limits.lower == chart->points[3].limits.upper);
        }
    }
    CHECK(attributeChart(ChartKind::C, allPass)->baseline.says(ChartCaveat::NoSpread));
    CHECK(attributeChart(ChartKind::U, allPass)->findings.alarms.empty());
    CHECK(attributeChart(ChartKind::P, {}).error() == StatisticsFault::NoValues);
    CHECK(attributeChart(ChartKind::P, std::vector<Counted>(3)).error() == StatisticsFault::NoValues);
    CHECK(attributeChart(ChartKind::P, std::vector<Counted>{{1.0, 10.0}})->baseline.says(ChartCaveat::FewPoints));
    CHECK(attributeChart(ChartKind::LaneyP, std::vector<Counted>{{1.0, 10.0}}).error() ==
          StatisticsFault::TooFewValues);
    CHECK(attributeChart(ChartKind::P, std::vector<Counted>{{11.0, 10.0}}).error() == StatisticsFault::OutOfDomain);
    CHECK(attributeChart(ChartKind::P, std::vector<Counted>{{-1.0, 10.0}}).error() == StatisticsFault::OutOfDomain);
    CHECK(attributeChart(ChartKind::U, std::vector<Counted>{{1.0, -1.0}}).error() == StatisticsFault::OutOfDomain);
    CHECK(attributeChart(ChartKind::U, std::vector<Counted>{{1.0, 0.0}}).error() == StatisticsFault::OutOfDomain);
    CHECK(attributeChart(ChartKind::P, std::vector<Counted>{{std::nan(""), 10.0}}).error() ==
          StatisticsFault::NotFinite);
    CHECK(attributeChart(ChartKind::Individuals, wafers()).error() == StatisticsFault::OutOfDomain);
    CHECK(attributeChart(ChartKind::P, wafers(), {RuleSet::all(), Stretch{29, 5}, {}}).error() ==
          StatisticsFault::OutOfDomain);
    CHECK(attributeBaseline("x", ChartKind::P, std::vector<Counted>(25, Counted{1.0, 10.0}))
              ->says(ChartCaveat::SmallCounts));
}
