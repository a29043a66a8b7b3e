#pragma once

#include "analytics/statistics/fault.hpp"

#include <cstddef>
#include <optional>
#include <span>
#include <tl/expected.hpp>
#include <vector>

namespace holdfast::analytics::statistics {

/// Mean and standard deviation of the window that ends with one value, in the unit of the values.
struct RollingPoint final {
    std::size_t count = 0; ///< values in the window; fewer than its length at the start
    double mean = 0.0;
    std::optional<double> sd; ///< n − 1; absent for one value
};

/// The window of the last `length` values, one point for each value.
///
/// Nothing is ever subtracted: the window is two stacks whose parts are joined by the pairwise rule of Chan, Golub and
/// LeVeque (1983), each value taken in twice at most (Tangwongsan, Hirzel and Schneider, "Optimal and general
/// out-of-order sliding-window aggregation", VLDB 2019, section 2, two-stacks). A rolling accumulator that takes the
/// leaving value off again (boost::accumulators::tag::rolling_variance) keeps the rounding error of a large value for
/// ever after it has left; this does not. Linear in the number of values whatever the length.
///
/// Faults: NoValues; NotFinite; OutOfDomain for a length of 0.
[[nodiscard]] tl::expected<std::vector<RollingPoint>, StatisticsFault> rolling(std::span<const double> values,
                                                                               std::size_t length);

/// The window of time (tᵢ − width, tᵢ], one point for each value; times in any unit, width in the same.
/// Faults as above, and UnequalLengths; OutOfOrder for a time before the one ahead of it (a clock that went backwards);
/// OutOfDomain for a width that is not positive.
[[nodiscard]] tl::expected<std::vector<RollingPoint>, StatisticsFault>
rollingInTime(std::span<const double> times, std::span<const double> values, double width);

} // namespace holdfast::analytics::statistics
