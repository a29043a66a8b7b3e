#pragma once

#include "analytics/statistics/fault.hpp"

#include <span>
#include <tl/expected.hpp>
#include <vector>

namespace holdfast::analytics::statistics {

/// Definitions of a sample quantile by number as in Hyndman and Fan, "Sample quantiles in statistical packages", The
/// American Statistician 50 (1996). Each is the straight line between x₍ₖ₎ and x₍ₖ₊₁₎ at the position h = k + g, held
/// within 1 … n:
enum class QuantileType {
    Six,   ///< h = (n + 1)p: Weibull 1939; NIST/SEMATECH e-Handbook 7.2.6.2
    Seven, ///< h = (n − 1)p + 1: Gumbel 1939; the default of R
    Eight, ///< h = (n + 1/3)p + 1/3: about median-unbiased whatever the distribution; Hyndman and Fan's choice
};

/// The quantile at p ∈ [0, 1], in the unit of the values. One value is every quantile of itself. Faults: NoValues;
/// NotFinite; OutOfDomain. Linear (selection), on a copy.
[[nodiscard]] tl::expected<double, StatisticsFault> quantile(std::span<const double> values, double p,
                                                             QuantileType type = QuantileType::Eight);

/// Several at once, in the order asked for; n log n.
[[nodiscard]] tl::expected<std::vector<double>, StatisticsFault>
quantiles(std::span<const double> values, std::span<const double> ps, QuantileType type = QuantileType::Eight);

} // namespace holdfast::analytics::statistics
