#pragma once

#include "analytics/statistics/fault.hpp"

#include <tl/expected.hpp>

#include <cstddef>
#include <cstdint>
#include <vector>

namespace holdfast::analytics::statistics {

/// Kendall's rank correlation of two columns, and Mann's test for trend when the first column is time.
struct Kendall final {
    std::size_t n = 0;
    std::int64_t score = 0;  ///< S: pairs that go together less pairs that go against each other
    double tauB = 0.0;       ///< S over the root of (pairs untied in x · pairs untied in y), -1 to 1
    double deviation = 0.0;  ///< standard deviation of S when nothing is related, corrected for ties
    double z = 0.0;          ///< S/deviation, no continuity correction
    double p = 1.0;          ///< two-sided
    bool exact = false;      ///< p counted over all orders (no ties, n ≤ kMostExactKendall), not from z
    bool ties = false;       ///< equal values in x or y
    std::int64_t slopes = 0; ///< pairs whose x differ
};

inline constexpr std::size_t kMostExactKendall = 50;

/// Kendall's tau-b and the variance of S with ties (Kendall, Rank Correlation Methods, 4th ed. 1970, ch. 3 and 4)
/// by Knight's merge sort (JASA 61:436, 1966): n·log n time, n memory. Two points and up; NoSpread when one
/// column is all equal. p is counted exactly up to 50 untied points, beyond that or with ties by the normal law.
[[nodiscard]] tl::expected<Kendall, StatisticsFault> kendall(const std::vector<double>& x,
                                                             const std::vector<double>& y);

/// Chance of 0, 1, … n(n−1)/2 discordant pairs over all n! orders, 1 ≤ n ≤ kMostExactKendall (Kendall 1970, ch. 5).
[[nodiscard]] std::vector<double> discordantChances(std::size_t n);

} // namespace holdfast::analytics::statistics
