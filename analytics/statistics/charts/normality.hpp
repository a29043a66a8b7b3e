#pragma once

#include "analytics/statistics/fault.hpp"

#include <span>
#include <tl/expected.hpp>

namespace holdfast::analytics::statistics {

struct AndersonDarling final {
    double statistic = 0.0; ///< A²
    double adjusted = 0.0;  ///< A²·(1 + 0.75/n + 2.25/n²); 5 % point 0.752
    double p = 1.0;         ///< chance of as much or more from normal values
};

/// Are the values normal, mean and standard deviation estimated from them? A² = −n − Σ(2i − 1)(ln Fᵢ + ln(1 −
/// Fₙ₊₁₋ᵢ))/n; p by R. B. D'Agostino and M. A. Stephens, Goodness-of-Fit Techniques (1986), table 4.9 (Stephens, JASA
/// 69, 1974). Below eight values the formula is not established. n log n. Faults: NoValues; NotFinite; TooFewValues
/// below eight; NoSpread.
[[nodiscard]] tl::expected<AndersonDarling, StatisticsFault> andersonDarling(std::span<const double> values);

} // namespace holdfast::analytics::statistics
