#pragma once

#include "analytics/statistics/charts/baseline.hpp"
#include "analytics/statistics/charts/individuals.hpp"
#include "analytics/statistics/charts/rules.hpp"

#include <span>
#include <string>
#include <vector>

namespace holdfast::analytics::statistics {

enum class SubgroupSpread {
    Range,             ///< x̄–R: σ = R̄/d2, limits x̄̄ ± A2·R̄ and D3·R̄, D4·R̄
    StandardDeviation, ///< x̄–s: σ = s̄/c4, limits x̄̄ ± A3·s̄ and B3·s̄, B4·s̄
};

/// Means of subgroups with their spread, in the unit of the values.
struct SubgroupChart final {
    Baseline baseline; ///< sigma is that of a single value within a subgroup
    Limits means;
    Limits spreads;
    std::vector<double> meanValues;
    std::vector<double> spreadValues;
    RuleFindings findings;                   ///< of the means
    std::vector<std::size_t> spreadsOutside; ///< subgroups whose spread is beyond its limits
};

/// Centre and σ of a stretch of subgroups of equal size, one after the other in `values`. The relative standard error
/// of σ is d3/(d2·√m) or √(1 − c4²)/(c4·√m) for m subgroups. Faults: NoValues; NotFinite; OutOfDomain for a size below
/// 2 or above 1000; UnequalLengths where the values are no whole number of subgroups.
[[nodiscard]] tl::expected<Baseline, StatisticsFault> subgroupBaseline(std::string name, std::span<const double> values,
                                                                       std::size_t size, SubgroupSpread spread);

/// x̄–R or x̄–s chart (ISO 7870-2:2013, 6; Montgomery, Introduction to Statistical Quality Control, 7th ed., 6.2
/// and 6.3); `options.stretch` counts subgroups. Without spread only the rules of sides, trends and alternation are
/// read. Linear. Faults as above; OutOfDomain also for a baseline of another kind of chart or another size.
[[nodiscard]] tl::expected<SubgroupChart, StatisticsFault> subgroupChart(std::span<const double> values,
                                                                         std::size_t size, SubgroupSpread spread,
                                                                         const ChartOptions& options = {});

} // namespace holdfast::analytics::statistics
