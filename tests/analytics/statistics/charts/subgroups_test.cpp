#include "analytics/statistics/charts/subgroups.hpp"
#include "tests/analytics/statistics/charts/shared_tables.hpp"

#include <catch2/catch.hpp>
#include <cmath>

using namespace holdfast::analytics::statistics;

TEST_CASE("Piston rings: mean and range, limits of the first 25 kept for the rest", "[statistics][charts]") {
    const auto rows = tables::rows("qcc_pistonrings.txt");
    if (rows.empty()) {
        return;
    }
    std::vector<double> values;
    for (const auto& row : rows) {
        values.push_back(row[0]);
    }
    const ChartOptions trial{RuleSet::all(), Stretch{0, 25}, {}};
    const auto chart = subgroupChart(values, 5, SubgroupSpread::Range, trial);
    REQUIRE(chart);
    CHECK(chart->means.center == Approx(74.001176).margin(5e-8));           // R 4.2.2, mean of means
    CHECK(chart->spreads.center == Approx(0.02276).margin(5e-7));           // R 4.2.2, mean of ranges
    CHECK(chart->baseline.sigma == Approx(0.00978533760732).margin(5e-13)); // R̄/d2, d2 = 2.3259289
    CHECK(chart->means.lower == Approx(73.988047592).margin(5e-10));
    CHECK(chart->means.upper == Approx(74.014304408).margin(5e-10));
    CHECK(chart->spreads.upper == Approx(0.0481260005426).margin(5e-13));
    CHECK(chart->spreads.lower == 0.0);
    // Montgomery, Introduction to Statistical Quality Control, piston rings (A2 = 0.577, D4 = 2.115)
    CHECK(chart->means.center == Approx(74.00118).margin(1e-5));
    CHECK(chart->means.upper == Approx(74.0143).margin(1e-4));
    CHECK(chart->means.lower == Approx(73.98805).margin(1e-4));
    CHECK(chart->spreads.upper == Approx(0.04812).margin(1e-4));
    // R package qcc 3.0 documentation (d2 = 2.326): σ 0.009785039, R limit 0.04812533
    CHECK(chart->baseline.sigma == Approx(0.009785039).margin(4e-7));
    CHECK(chart->spreads.upper == Approx(0.04812533).margin(1e-6));
    CHECK(chart->spreadsOutside.empty());
    std::vector<std::size_t> beyond;
    for (const auto& signal : chart->findings.alarms) {
        if (signal.rule == NelsonRule::BeyondThreeSigma) {
            beyond.push_back(signal.at);
        }
    }
    CHECK(beyond == std::vector<std::size_t>{36, 37, 38}); // scipy/numpy reading of the same limits: samples 37 to 39
}

TEST_CASE("Piston rings: mean and standard deviation", "[statistics][charts]") {
    const auto rows = tables::rows("qcc_pistonrings.txt");
    if (rows.empty()) {
        return;
    }
    std::vector<double> values;
    for (std::size_t i = 0; i < 125; ++i) {
        values.push_back(rows[i][0]);
    }
    const auto chart = subgroupChart(values, 5, SubgroupSpread::StandardDeviation);
    REQUIRE(chart);
    CHECK(chart->spreads.center == Approx(0.00924003660229).margin(5e-13)); // R 4.2.2, mean of sd
    CHECK(chart->baseline.sigma == Approx(0.00982997672829).margin(5e-13)); // s̄/c4
    CHECK(chart->spreads.upper == Approx(0.0193024167682).margin(5e-13));   // B4·s̄
    CHECK(chart->spreads.lower == 0.0);
    CHECK(chart->spreads.upper == Approx(0.01930242).margin(5e-9)); // R package qcc 3.0 documentation
    CHECK(chart->baseline.sigma == Approx(0.009829977).margin(5e-10));
    CHECK(chart->means.upper == Approx(74.001176 + 1.42730 * 0.00924003660229).margin(1e-7)); // A3(5) = 1.42730
}

TEST_CASE("Subgroups of hostile columns", "[statistics][charts][hostile]") {
    const std::vector<double> six{1, 2, 3, 4, 5, 6};
    CHECK(subgroupChart({}, 5, SubgroupSpread::Range).error() == StatisticsFault::NoValues);
    CHECK(subgroupChart(six, 4, SubgroupSpread::Range).error() == StatisticsFault::UnequalLengths);
    CHECK(subgroupChart(six, 1, SubgroupSpread::Range).error() == StatisticsFault::OutOfDomain);
    CHECK(subgroupChart(six, 0, SubgroupSpread::Range).error() == StatisticsFault::OutOfDomain);
    CHECK(subgroupChart(std::vector{1.0, std::nan("")}, 2, SubgroupSpread::Range).error() ==
          StatisticsFault::NotFinite);
    CHECK(subgroupChart(six, 2, SubgroupSpread::Range, {RuleSet::all(), Stretch{2, 2}, {}}).error() ==
          StatisticsFault::OutOfDomain);
    const auto equal = subgroupChart(std::vector<double>(30, 7.0), 3, SubgroupSpread::StandardDeviation);
    REQUIRE(equal);
    CHECK(equal->baseline.says(ChartCaveat::NoSpread));
    CHECK(equal->means.upper == 7.0);
    CHECK(equal->findings.alarms.empty());
    const auto one = subgroupChart(six, 6, SubgroupSpread::Range);
    REQUIRE(one);
    CHECK(one->baseline.says(ChartCaveat::FewPoints));
    CHECK(subgroupChart(std::vector{1.7e308, -1.7e308}, 2, SubgroupSpread::Range).error() ==
          StatisticsFault::OutOfDomain);
}
