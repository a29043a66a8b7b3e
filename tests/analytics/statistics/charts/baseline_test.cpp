#include "analytics/statistics/charts/attributes.hpp"
#include "analytics/statistics/charts/individuals.hpp"
#include "analytics/statistics/charts/subgroups.hpp"

#include <catch2/catch.hpp>
#include <cmath>

using namespace holdfast::analytics::statistics;

namespace {

const std::vector<double> kBefore{20.1, 19.8, 20.4, 19.6, 20.2, 20.0, 19.9, 20.3, 19.7, 20.0};

} // namespace

TEST_CASE("A baseline frozen under a name does not change with later points", "[statistics][charts][baseline]") {
    Baselines kept;
    REQUIRE(kept.keep(*individualsBaseline("after the burner was replaced", kBefore)));
    REQUIRE(kept.find("after the burner was replaced") != nullptr);
    ChartOptions options;
    options.baseline = *kept.find("after the burner was replaced");
    const auto near = individualsChart(std::vector{20.0, 20.1}, options);
    const auto far = individualsChart(std::vector{25.0, 26.0, 40.0}, options);
    REQUIRE(near);
    REQUIRE(far);
    CHECK(near->limits.upper == far->limits.upper);
    CHECK(near->findings.alarms.empty());
    CHECK(far->findings.alarms.front().rule == NelsonRule::BeyondThreeSigma);
    CHECK(far->findings.alarms.front().at == 0);
    CHECK(far->baseline.name == "after the burner was replaced");
    CHECK(far->baseline.says(ChartCaveat::FewPoints));                                // ten points, and it stays said
    CHECK(far->baseline.spreadError == Approx(std::sqrt(0.8264 * 10 - 1.082) / 9.0)); // Cryer and Ryan 1990
}

TEST_CASE("One later point can be judged by a frozen baseline", "[statistics][charts][baseline]") {
    ChartOptions options;
    options.baseline = *individualsBaseline("first ten", kBefore);
    CHECK(individualsChart(std::vector{22.5}, options)->findings.alarms.size() == 1);
    CHECK(individualsChart(std::vector{20.5}, options)->findings.alarms.empty());
}

TEST_CASE("Names are given once", "[statistics][charts][baseline]") {
    Baselines kept;
    CHECK(kept.keep(*individualsBaseline("a", kBefore)));
    CHECK(kept.keep(*individualsBaseline("a", kBefore)).error() == StatisticsFault::OutOfDomain);
    CHECK(kept.keep(*individualsBaseline("", kBefore)).error() == StatisticsFault::OutOfDomain);
    CHECK(kept.find("b") == nullptr);
    CHECK(kept.count() == 1);
}

TEST_CASE("A baseline of another kind of chart is refused", "[statistics][charts][baseline][hostile]") {
    ChartOptions options;
    options.baseline = *individualsBaseline("a", kBefore);
    CHECK(attributeChart(ChartKind::P, std::vector<Counted>{{1, 10}}, options).error() == StatisticsFault::OutOfDomain);
    CHECK(subgroupChart(kBefore, 5, SubgroupSpread::Range, options).error() == StatisticsFault::OutOfDomain);
    options.baseline = *subgroupBaseline("s", kBefore, 5, SubgroupSpread::Range);
    CHECK(individualsChart(kBefore, options).error() == StatisticsFault::OutOfDomain);
    CHECK(subgroupChart(kBefore, 2, SubgroupSpread::Range, options).error() == StatisticsFault::OutOfDomain);
    CHECK(subgroupChart(kBefore, 5, SubgroupSpread::Range, options).has_value());
    options.baseline->sigma = std::nan("");
    CHECK(subgroupChart(kBefore, 5, SubgroupSpread::Range, options).error() == StatisticsFault::OutOfDomain);
    Baseline spoilt;
    spoilt.center = std::nan("");
    spoilt.sigma = 1.0;
    options.baseline = spoilt;
    CHECK(individualsChart(kBefore, options).error() == StatisticsFault::OutOfDomain);
}
