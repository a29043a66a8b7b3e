#pragma once

#include "analytics/statistics/charts/baseline.hpp"
#include "analytics/statistics/charts/ewma.hpp"
#include "analytics/statistics/charts/rules.hpp"

#include <optional>
#include <span>
#include <string>
#include <vector>

namespace holdfast::analytics::statistics {

/// A run of points, by place.
struct Stretch final {
    std::size_t first = 0;
    std::size_t count = 0;
};

/// Where a chart's limits come from: a frozen baseline, else the stretch, else all its points.
struct ChartOptions final {
    RuleSet rules = RuleSet::all();
    std::optional<Stretch> stretch;
    std::optional<Baseline> baseline;
};

/// Values one at a time with their moving ranges, in the unit of the values.
struct IndividualsChart final {
    Baseline baseline;                      ///< with the chart's caveats
    Limits limits;                          ///< x̄ ± 3·MR̄/d2, d2 = 2/√π
    Limits ranges;                          ///< of |xᵢ − xᵢ₋₁|: 0, MR̄, D4·MR̄
    std::vector<std::size_t> rangesOutside; ///< i where the range from i − 1 to i is above its limit
    RuleFindings findings;
};

/// Centre x̄ and σ = MR̄/d2 of a stretch, to be frozen under a name. Its relative standard error is
/// √Var(MR̄/d2)/σ, with Var(MR̄/d2)/σ² = (0.8264n − 1.082)/(n − 1)² (J. D. Cryer and T. P. Ryan, "The
/// estimation of sigma for an X chart", Journal of Quality Technology 22, 1990). Caveats: FewPoints below kUsualPoints,
/// NoSpread for equal values, Correlated for a lag-1 autocorrelation above 2/√n. Faults: NoValues; TooFewValues below
/// two; NotFinite; OutOfDomain where a sum leaves the range of a double.
[[nodiscard]] tl::expected<Baseline, StatisticsFault> individualsBaseline(std::string name,
                                                                          std::span<const double> stretch);

/// Individuals chart in time order; NIST/SEMATECH e-Handbook 6.3.2.2, whose limits are printed with d2 = 1.128. Without
/// spread the limits fall on the centre and only the rules of sides, trends and alternation are read. Linear: one pass
/// for limits, one for the rules. One value has a chart only under a frozen baseline. Faults as above; OutOfDomain for
/// a stretch outside the points or a baseline of another kind of chart.
[[nodiscard]] tl::expected<IndividualsChart, StatisticsFault> individualsChart(std::span<const double> values,
                                                                               const ChartOptions& options = {});

/// The chart and, around the same centre and spread, its exponentially weighted average beside it.
struct IndividualsWithEwma final {
    IndividualsChart individuals;
    EwmaTrack ewma;
};
[[nodiscard]] tl::expected<IndividualsWithEwma, StatisticsFault>
individualsWithEwma(std::span<const double> values, const ChartOptions& options = {}, const EwmaRules& rules = {});

/// The rules that need no spread: sides, trends, alternation.
[[nodiscard]] RuleSet withoutSpread(RuleSet rules);

} // namespace holdfast::analytics::statistics
