#pragma once

#include <algorithm>
#include <cmath>
#include <vector>

namespace holdfast::analytics::statistics {

/// x·ln x, and its limit 0 where x is not above zero.
[[nodiscard]] inline double xLogX(double x) noexcept {
    return x > 0.0 ? x * std::log(x) : 0.0;
}

/// True of no values.
[[nodiscard]] inline bool allFinite(const std::vector<double>& values) {
    return std::all_of(values.begin(), values.end(), [](double value) { return std::isfinite(value); });
}

} // namespace holdfast::analytics::statistics
