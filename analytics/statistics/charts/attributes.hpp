#pragma once

#include "analytics/statistics/charts/baseline.hpp"
#include "analytics/statistics/charts/individuals.hpp"
#include "analytics/statistics/charts/rules.hpp"

#include <span>
#include <string>
#include <vector>

namespace holdfast::analytics::statistics {

/// One period or lot: how many failed (or how many faults), out of how much. For c every period offers the same chance
/// and `inspected` is not read.
struct Counted final {
    double failed = 0.0;
    double inspected = 0.0; ///< pieces, or the area in any unit; 0 for a period in which nothing was inspected
};

struct AttributePoint final {
    bool inspected = false; ///< without it the rest means nothing
    double value = 0.0;     ///< share, number or faults a unit, as the kind of chart plots
    double z = 0.0;         ///< standardised, dispersion included; 0 where there is no spread
    Limits limits;          ///< of this point; held at 0, and at 1 for shares
};

struct AttributeChart final {
    Baseline baseline; ///< center: share, mean count, or faults a unit; dispersion: Laney's σz; caveats
    std::vector<AttributePoint> points;
    RuleFindings findings; ///< over the standardised values; periods without a point are passed over
};

/// p̄ = Σfailed/Σinspected and the like of a stretch, to be frozen under a name; for p′ and u′ also
/// σz = mean |zᵢ − zᵢ₋₁|/d2 (D. B. Laney, "Improved control charts for attributes", Quality Engineering 14, 2002; d2 is
/// 2/√π, printed there as 1.128). Caveats: FewPoints, NoSpread when nothing or everything failed, SmallCounts where
/// fewer than five of either kind are expected, OverDispersed where Σz² lies in the upper 1 % of χ², EmptyPeriods.
/// Faults: NoValues when nothing was inspected; TooFewValues for p′ and u′ below two points; NotFinite; OutOfDomain for
/// a negative count or more failed than inspected, or a kind of chart that is none of counts.
[[nodiscard]] tl::expected<Baseline, StatisticsFault> attributeBaseline(std::string name, ChartKind kind,
                                                                        std::span<const Counted> stretch);

/// p, np, c, u, p′ or u′ chart with limits by point, 3σ around the baseline's centre (NIST/SEMATECH e-Handbook 6.3.3.1
/// and 6.3.3.2; ISO 7870-2:2013, 7; Laney 2002). Linear. Faults as above.
[[nodiscard]] tl::expected<AttributeChart, StatisticsFault>
attributeChart(ChartKind kind, std::span<const Counted> periods, const ChartOptions& options = {});

} // namespace holdfast::analytics::statistics
