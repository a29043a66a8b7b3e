#include "analytics/statistics/charts/constants.hpp"
#include "analytics/statistics/charts/individuals.hpp"
#include "tests/analytics/statistics/charts/shared_tables.hpp"

#include <catch2/catch.hpp>
#include <chrono>
#include <cmath>
#include <random>

using namespace holdfast::analytics::statistics;

namespace {

/// Flow rates of ten batches, NIST/SEMATECH e-Handbook 6.3.2.2.
const std::vector<double> kFlow{49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1};

} // namespace

TEST_CASE("The handbook's individuals chart", "[statistics][charts]") {
    const auto chart = individualsChart(kFlow);
    REQUIRE(chart);
    CHECK(chart->limits.center == Approx(50.81).margin(5e-5));  // e-Handbook 6.3.2.2
    CHECK(chart->ranges.center == Approx(1.8778).margin(5e-5)); // e-Handbook 6.3.2.2
    // The handbook prints limits worked with d2 = 1.128; with d2 = 2/√π = 1.12838 they lie 0.0017 further in.
    const double printed = kD2OfTwo / 1.128;
    CHECK(50.81 + (chart->limits.upper - 50.81) * printed == Approx(55.8041).margin(5e-5));
    CHECK(50.81 + (chart->limits.lower - 50.81) * printed == Approx(45.8159).margin(5e-5));
    CHECK(chart->limits.upper == Approx(55.8041).margin(0.0018));
    // 3.267·MR̄ = 6.1349 with the printed D4, one unit of its last digit high
    CHECK(chart->ranges.upper == Approx(6.1349).margin(0.0012));
    CHECK(chart->ranges.center * 3.267 ==
          Approx(6.1349).margin(2.1e-4)); // the product of the printed figures is 6.1348
    CHECK(chart->ranges.lower == 0.0);
    CHECK(chart->findings.alarms.empty());
    CHECK(chart->rangesOutside.empty());
    CHECK(chart->baseline.says(ChartCaveat::FewPoints));
}

TEST_CASE("Viscosities of aircraft paint: batch 4 is out", "[statistics][charts]") {
    const auto rows = tables::rows("qcc_viscosity.txt");
    if (rows.empty()) {
        return;
    }
    std::vector<double> values;
    for (const auto& row : rows) {
        values.push_back(row[1]);
    }
    const auto trial = std::span{values}.first(20);
    const auto chart = individualsWithEwma(trial, {}, {0.2, 3.0, true});
    REQUIRE(chart);
    const auto& limits = chart->individuals.limits;
    // R 4.2.2, mean(x) ± 3·mean(abs(diff(x)))/(2/sqrt(pi))
    CHECK(limits.center == Approx(34.088).margin(5e-10));
    CHECK(chart->individuals.baseline.sigma == Approx(0.507481523628).margin(5e-12));
    CHECK(limits.lower == Approx(32.5655554291).margin(5e-10));
    CHECK(limits.upper == Approx(35.6104445709).margin(5e-10));
    // R package qcc 3.0 documentation (d2 = 1.128): 32.56504, 35.61096
    CHECK(limits.lower == Approx(32.56504).margin(6e-4));
    CHECK(limits.upper == Approx(35.61096).margin(6e-4));
    const auto& alarms = chart->individuals.findings.alarms;
    REQUIRE(!alarms.empty());
    CHECK(alarms.front().rule == NelsonRule::BeyondThreeSigma);
    CHECK(alarms.front().at == 3);
    CHECK(chart->ewma.values.back() == Approx(33.9924420536).margin(5e-10)); // R 4.2.2, λ 0.2 from the mean
    CHECK(chart->ewma.outside.empty());                                      // R 4.2.2, exact limits, L = 3
    // Without batch 4, applied to later batches: qcc 3.0 documentation, centre 33.98947, limits 32.75425 and 35.2247
    std::vector<double> cleaned = values;
    cleaned.erase(cleaned.begin() + 3);
    const auto frozen = individualsChart(cleaned, {RuleSet::all(), Stretch{0, 19}, {}});
    CHECK(frozen->limits.center == Approx(33.98947).margin(5e-6));
    CHECK(frozen->limits.lower == Approx(32.75425).margin(5e-4));
    CHECK(frozen->limits.upper == Approx(35.2247).margin(5e-4));
}

TEST_CASE("The standard error of sigma is what drawing shows", "[statistics][charts]") {
    std::mt19937_64 random{5};
    std::normal_distribution<double> normal{100.0, 2.0};
    for (const std::size_t n : {2U, 10U, 40U}) {
        double sum = 0.0;
        double squares = 0.0;
        double stated = 0.0;
        for (int round = 0; round < 40000; ++round) {
            std::vector<double> values(n);
            for (auto& value : values) {
                value = normal(random);
            }
            const auto baseline = individualsBaseline("x", values);
            sum += baseline->sigma;
            squares += baseline->sigma * baseline->sigma;
            stated = baseline->spreadError;
        }
        const double mean = sum / 40000;
        CHECK(mean == Approx(2.0).epsilon(0.015));
        CHECK(std::sqrt(squares / 40000 - mean * mean) / 2.0 == Approx(stated).epsilon(0.02)); // Cryer and Ryan 1990
    }
}

TEST_CASE("Shifting and stretching values moves their chart and not its signals", "[statistics][charts]") {
    std::mt19937_64 random{31};
    std::normal_distribution<double> normal{0.0, 1.0};
    std::vector<double> values(400);
    std::vector<double> moved(400);
    for (std::size_t i = 0; i < values.size(); ++i) {
        values[i] = normal(random) + (i > 300 ? 1.5 : 0.0);
        moved[i] = 160.0 + 4.0 * values[i];
    }
    const auto one = individualsChart(values);
    const auto other = individualsChart(moved);
    CHECK(other->limits.upper == Approx(160.0 + 4.0 * one->limits.upper).epsilon(1e-13));
    CHECK(one->findings.alarms.size() == other->findings.alarms.size());
    CHECK(one->findings.marks == other->findings.marks);
    CHECK(one->findings.alarms.size() > 3);
}

TEST_CASE("A warm-up that carries over from one to the next is said", "[statistics][charts]") {
    std::mt19937_64 random{8};
    std::normal_distribution<double> normal{0.0, 1.0};
    std::vector<double> values(100);
    double carried = 0.0;
    for (auto& value : values) {
        carried = 0.7 * carried + normal(random);
        value = carried;
    }
    CHECK(individualsChart(values)->baseline.says(ChartCaveat::Correlated));
    for (auto& value : values) {
        value = normal(random);
    }
    CHECK_FALSE(individualsChart(values)->baseline.says(ChartCaveat::Correlated));
}

TEST_CASE("Individuals of hostile columns get a chart with its caveat, or the reason why not",
          "[statistics][charts][hostile]") {
    CHECK(individualsChart({}).error() == StatisticsFault::NoValues);
    CHECK(individualsChart(std::vector{1.0}).error() == StatisticsFault::TooFewValues);
    CHECK(individualsChart(std::vector{1.0, std::nan(""), 2.0}).error() == StatisticsFault::NotFinite);
    CHECK(individualsChart(std::vector{1.7e308, -1.7e308}).error() == StatisticsFault::OutOfDomain);
    CHECK(individualsChart(kFlow, {RuleSet::all(), Stretch{8, 3}, {}}).error() == StatisticsFault::OutOfDomain);
    CHECK(individualsChart(kFlow, {RuleSet::all(), Stretch{8, 0}, {}}).error() == StatisticsFault::NoValues);
    const auto equal = individualsChart(std::vector<double>(40, 12.1));
    REQUIRE(equal);
    CHECK(equal->baseline.says(ChartCaveat::NoSpread));
    CHECK(equal->limits.lower == 12.1);
    CHECK(equal->limits.upper == 12.1);
    CHECK(equal->findings.alarms.empty());
    CHECK(equal->rangesOutside.empty());
    std::vector<double> jump(12, 5.0);
    jump.insert(jump.end(), 12, 6.0);
    const auto fromEqual = individualsChart(jump, {RuleSet::all(), Stretch{0, 12}, {}});
    REQUIRE(fromEqual->findings.alarms.size() == 1); // no limits, but nine in a row on one side can be told
    CHECK(fromEqual->findings.alarms[0].rule == NelsonRule::OneSide);
    CHECK(individualsWithEwma(jump)->ewma.values.size() == 24);
    CHECK(individualsWithEwma(std::vector<double>(5, 1.0))->ewma.outside.empty());
}

TEST_CASE("A million individuals with all rules", "[statistics][charts][hostile]") {
    std::mt19937_64 random{1};
    std::normal_distribution<double> normal{20.0, 3.0};
    std::vector<double> values(1'000'000);
    for (auto& value : values) {
        value = normal(random);
    }
    const auto begin = std::chrono::steady_clock::now();
    const auto chart = individualsChart(values);
    const auto took = std::chrono::steady_clock::now() - begin;
    REQUIRE(chart);
    CHECK(chart->baseline.sigma == Approx(3.0).epsilon(0.005));
    const auto beyond = std::count_if(chart->findings.alarms.begin(), chart->findings.alarms.end(),
                                      [](const Signal& signal) { return signal.rule == NelsonRule::BeyondThreeSigma; });
    CHECK(static_cast<double>(beyond) == Approx(2699.8).margin(4.0 * 52.0)); // 2Φ(−3) of a million
    CHECK(took < std::chrono::seconds{2});
}
