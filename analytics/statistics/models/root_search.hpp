#pragma once

#include <cmath>
#include <optional>

namespace holdfast::analytics::statistics {

/// The distance at which a rising function reaches zero, by the Illinois rule (Dowell and Jarratt, BIT 11:168, 1971),
/// between `low`, where it is `atLow` < 0, and `high`, where it is `atHigh` ≥ 0. None where f gives none.
template <class Function>
[[nodiscard]] std::optional<double> zeroBetween(Function&& f, double low, double atLow, double high, double atHigh) {
    int lastSide = 0;
    for (int i = 0; i < 80 && high - low > 1e-11 * high; ++i) {
        const double middle = low + (high - low) * atLow / (atLow - atHigh);
        const std::optional<double> value = f(middle);
        if (!value || std::abs(*value) < 1e-9) {
            return value ? std::optional{middle} : std::nullopt;
        }
        const int side = *value < 0.0 ? -1 : 1;
        if (side < 0) {
            low = middle;
            atLow = *value;
            atHigh = lastSide == side ? atHigh * 0.5 : atHigh;
        } else {
            high = middle;
            atHigh = *value;
            atLow = lastSide == side ? atLow * 0.5 : atLow;
        }
        lastSide = side;
    }
    return high;
}

/// How far from a best value a profile likelihood has fallen to its limit: f(distance) gives an optional, below zero at
/// distance 0 (`atZero`) and rising. `step` is the first guess, doubled until the sign changes; none after `doublings`.
template <class Function>
[[nodiscard]] std::optional<double> distanceToZero(Function&& f, double atZero, double step, int doublings = 40) {
    double low = 0.0;
    double atLow = atZero;
    double high = step;
    for (int i = 0; i <= doublings; ++i) {
        const std::optional<double> atHigh = f(high);
        if (!atHigh) {
            return std::nullopt;
        }
        if (*atHigh >= 0.0) {
            return zeroBetween(f, low, atLow, high, *atHigh);
        }
        low = high;
        atLow = *atHigh;
        high *= 2.0;
    }
    return std::nullopt;
}

} // namespace holdfast::analytics::statistics
