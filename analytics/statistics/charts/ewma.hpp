#pragma once

#include "analytics/statistics/fault.hpp"

#include <cstddef>
#include <span>
#include <tl/expected.hpp>
#include <vector>

namespace holdfast::analytics::statistics {

struct EwmaRules final {
    double lambda = 0.2;       ///< weight of the latest value, in (0, 1]
    double width = 2.8593;     ///< limits in standard deviations of the average: in control 370 points, ewmaWidthFor
    bool growingLimits = true; ///< the exact, narrower limits of the first points instead of the settled ones
};

/// Exponentially weighted moving average in the unit of the values.
struct EwmaTrack final {
    double center = 0.0;
    std::vector<double> values;
    std::vector<double> halfWidths;   ///< the limits are center ± this
    std::vector<std::size_t> outside; ///< points beyond them
};

/// zᵢ = λxᵢ + (1 − λ)zᵢ₋₁ from z₀ = centre; limits ± width·σ·√(λ/(2 − λ)·(1 − (1 − λ)²ⁱ)), settled without the last
/// factor (S. W. Roberts, Technometrics 1, 1959; Lucas and Saccucci, Technometrics 32, 1990; NIST/SEMATECH e-Handbook
/// 6.3.2.4). With σ = 0 there are no limits and nothing is outside. Linear. Faults: NoValues; NotFinite; OutOfDomain.
[[nodiscard]] tl::expected<EwmaTrack, StatisticsFault> ewma(std::span<const double> values, double center, double sigma,
                                                            const EwmaRules& rules = {});

} // namespace holdfast::analytics::statistics
