#pragma once

#include "analytics/statistics/fault.hpp"

#include <tl/expected.hpp>

#include <cstddef>
#include <vector>

namespace holdfast::analytics::statistics {

/// Fewest pairs, and most that are looked at.
inline constexpr std::size_t kPairedLocationLeast = 6;
inline constexpr std::size_t kPairedLocationMost = 1'500;

/// Where the differences of pairs lie, in their own unit, however wild a few of them are.
struct PairedLocation final {
    double estimate = 0.0; ///< median of the Walsh averages
    double lower = 0.0;    ///< 95 %
    double upper = 0.0;
    double p = 1.0; ///< two-sided, against 0
};

/// Wilcoxon's signed ranks with the Hodges–Lehmann estimate and Tukey's limits (Hollander and Wolfe, Nonparametric
/// Statistical Methods, 2nd ed., 3.1 to 3.3), by the normal law without correction for continuity; ties have mid-ranks
/// and their variance, differences of 0 are left out of p alone. Of more than 1,500 the last 1,500. n² time and memory.
///
/// Faults: TooFewValues (fewer than six), NotFinite, NoSpread (none that is not 0).
[[nodiscard]] tl::expected<PairedLocation, StatisticsFault> locatePairs(const std::vector<double>& differences);

} // namespace holdfast::analytics::statistics
