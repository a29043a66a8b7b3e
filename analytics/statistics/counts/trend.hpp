#pragma once

#include "analytics/statistics/counts/proportion.hpp"

#include <span>

namespace holdfast::analytics::statistics {

struct TrendTest {
    double slope = 0.0;     ///< change of the failed share per unit of score, weighted least squares
    double z = 0.0;         ///< signed: above 0 the share rises with the score
    double chiSquare = 0.0; ///< z², one degree of freedom
    double twoSided = 1.0;  ///< p of χ² (large-sample)
};

/// Cochran–Armitage test of a trend in proportions over ordered groups: z = Σ sᵢ(xᵢ − nᵢp̄)/√(p̄(1 − p̄)·Sss), Sss =
/// Σ nᵢ(sᵢ − s̄)² (Armitage, Biometrics 11, 1955, 375–386; Fleiss, Statistical Methods for Rates and Proportions, 2nd
/// ed., 9.3). Groups of nothing count nothing. All pass or all fail, or one score only: NoSpread. Scores finite.
[[nodiscard]] tl::expected<TrendTest, StatisticsFault> cochranArmitage(std::span<const CountOf> groups,
                                                                       std::span<const double> scores) noexcept;

} // namespace holdfast::analytics::statistics
