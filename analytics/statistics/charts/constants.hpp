#pragma once

#include "analytics/statistics/fault.hpp"

#include <tl/expected.hpp>

namespace holdfast::analytics::statistics {

/// What turns the range or standard deviation of subgroups of n normal values into limits.
struct ChartConstants final {
    int n = 0;
    double d2 = 0.0;        ///< mean of the range, in σ
    double d3 = 0.0;        ///< standard deviation of the range, in σ
    double c4 = 0.0;        ///< mean of the standard deviation, in σ
    double a2 = 0.0;        ///< 3/(d2·√n)
    double a3 = 0.0;        ///< 3/(c4·√n)
    double b3 = 0.0;        ///< max(0, 1 − 3·√(1 − c4²)/c4)
    double b4 = 0.0;        ///< 1 + 3·√(1 − c4²)/c4
    double capitalD3 = 0.0; ///< D3 = max(0, 1 − 3·d3/d2)
    double capitalD4 = 0.0; ///< D4 = 1 + 3·d3/d2
    double e2 = 0.0;        ///< 3/d2
};

/// Range of two normal values: d2 = 2/√π, d3 = √(2 − 4/π).
inline constexpr double kD2OfTwo = 1.1283791670955126;
inline constexpr double kD3OfTwo = 0.8525024664274215;

/// The constants for any subgroup of 2 … 1,000,000, computed and not looked up: P(R ≤ r) = n∫φ(x)(Φ(x + r) − Φ(x))ⁿ⁻¹dx
/// (H. O. Hartley, Biometrika 32, 1942), d2 = ∫P(R > r)dr, d2² + d3² = 2∫r·P(R > r)dr;
/// c4 = √(2/(n − 1))·Γ(n/2)/Γ((n − 1)/2). Printed tables (ASTM E2587; Montgomery, Introduction to Statistical Quality
/// Control, appendix VI) round some of them by one unit of the last digit. OutOfDomain for any other n.
[[nodiscard]] tl::expected<ChartConstants, StatisticsFault> chartConstants(int n);

/// Mean of the standard deviation of n normal values, in σ; n ≥ 2.
[[nodiscard]] double c4Of(double n);

} // namespace holdfast::analytics::statistics
