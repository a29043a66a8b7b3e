#pragma once

#include "analytics/statistics/fault.hpp"

#include <cstddef>
#include <optional>
#include <span>
#include <tl/expected.hpp>

namespace holdfast::analytics::statistics {

/// What a column of values comes to, in the unit of the values.
struct Moments final {
    std::size_t count = 0;
    double mean = 0.0;
    std::optional<double> sd; ///< √(Σ(x − x̄)²/(n − 1)); absent for one value
    double min = 0.0;
    double max = 0.0;
    /// r₁ = Σ(xᵢ − x̄)(xᵢ₊₁ − x̄)/Σ(x − x̄)², in the order given; absent for one value and for equal values.
    std::optional<double> lag1;
    bool asDecimals = false; ///< worked on the decimals the values were written as, see moments()
};

/// Mean, standard deviation, extremes and lag-1 autocorrelation in two passes with compensated sums (Chan, Golub and
/// LeVeque, "Algorithms for computing the sample variance", The American Statistician 37, 1983, corrected two-pass).
///
/// A reading is a decimal somebody wrote down; the nearest double is off by up to half a unit of its last place, and
/// for 10000000.1, 10000000.3 … no arithmetic on the doubles gives a standard deviation to more than nine digits. So,
/// if every value is the nearest double of a decimal with k ≤ 9 places and fewer than 16 digits, the sums run over the
/// whole numbers 10ᵏx and are divided by 10ᵏ at the end. All nine NIST StRD univariate sets come out to their certified
/// digits this way; RunningMoments, one pass over an accumulator, does not reach them (its docstring says by how much).
///
/// Faults: NoValues; NotFinite; OutOfDomain when a sum leaves the range of a double. Linear in the number of values.
[[nodiscard]] tl::expected<Moments, StatisticsFault> moments(std::span<const double> values);

} // namespace holdfast::analytics::statistics
