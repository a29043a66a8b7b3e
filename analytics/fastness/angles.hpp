#pragma once

#include <cmath>
#include <numbers>

namespace holdfast::analytics {

[[nodiscard]] inline double degrees(double radians) noexcept {
    return radians * 180.0 / std::numbers::pi;
}
[[nodiscard]] inline double radians(double degrees) noexcept {
    return degrees * std::numbers::pi / 180.0;
}

/// Hue angle 0 ≤ h < 360 in degrees; 0 without chroma.
[[nodiscard]] inline double hueDegrees(double a, double b) noexcept {
    const double h = degrees(std::atan2(b, a));
    return h < 0.0 ? h + 360.0 : h;
}

/// Two angles differ by more than half a turn; a difference within 1e-9 degree of it is no more than half a turn.
[[nodiscard]] inline bool beyondHalfTurn(double first, double second) noexcept {
    return std::abs(first - second) > 180.0 + 1e-9;
}

/// Hue from first to second the short way round, −180 to 180 degrees.
[[nodiscard]] inline double hueStep(double first, double second) noexcept {
    const double step = second - first;
    if (!beyondHalfTurn(first, second))
        return step;
    return step > 0.0 ? step - 360.0 : step + 360.0;
}

/// Middle of two hues the short way round, 0 to 360 degrees.
[[nodiscard]] inline double meanHue(double first, double second) noexcept {
    const double sum = first + second;
    if (!beyondHalfTurn(first, second))
        return sum / 2.0;
    return sum < 360.0 ? sum / 2.0 + 180.0 : sum / 2.0 - 180.0;
}

} // namespace holdfast::analytics
