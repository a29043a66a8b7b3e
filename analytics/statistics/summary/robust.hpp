#pragma once

#include "analytics/statistics/fault.hpp"
#include "analytics/statistics/summary/quantile.hpp"

#include <span>
#include <tl/expected.hpp>

namespace holdfast::analytics::statistics {

/// Half-way between the two middle values for an even count. Linear. Faults: NoValues; NotFinite.
[[nodiscard]] tl::expected<double, StatisticsFault> median(std::span<const double> values);

/// 1/Φ⁻¹(3/4): makes the median distance a standard deviation for normal values.
inline constexpr double kMadToSigma = 1.482602218505602;

/// Median distance from the median, times `scale`; bears half the values bad (F. R. Hampel, "The influence curve and
/// its role in robust estimation", JASA 69, 1974). 0 when more than half the values are equal. Linear. Faults:
/// NoValues; NotFinite.
[[nodiscard]] tl::expected<double, StatisticsFault> medianDistance(std::span<const double> values,
                                                                   double scale = kMadToSigma);

/// Third less first quartile.
[[nodiscard]] tl::expected<double, StatisticsFault> interquartileRange(std::span<const double> values,
                                                                       QuantileType type = QuantileType::Eight);

/// Rousseeuw and Croux's Qₙ, "Alternatives to the median absolute deviation", JASA 88 (1993): 2.21914 times the
/// (h over 2)-th smallest distance between two values, h = ⌊n/2⌋ + 1; bears half the values bad, 82 % as efficient as
/// the standard deviation for normal values (the median distance 37 %), and needs no middle. With `smallSample`, times
/// the factor that makes it unbiased for few normal values (Croux and Rousseeuw, "Time-efficient algorithms for two
/// highly robust estimators of scale", COMPSTAT 1992). The distance is found by halving over the doubles, so equal
/// values and ties come out exactly; n log n. Faults: NotFinite; TooFewValues below two.
[[nodiscard]] tl::expected<double, StatisticsFault> qn(std::span<const double> values, bool smallSample = true);

} // namespace holdfast::analytics::statistics
