#pragma once

#include "analytics/quantity/temperature.hpp"

#include <chrono>

namespace holdfast::analytics {

/// A span of time in seconds; exact for every microsecond stamp a ride can hold.
using Duration = std::chrono::duration<double>;

/// A stamp on the monotonic clock, µs since an origin that only the recording knows.
using MonotonicTime = std::chrono::microseconds;

/// a ≥ b, equality counting as met within 1e-9 s.
[[nodiscard]] constexpr bool atLeast(Duration a, Duration b) noexcept {
    return a.count() >= b.count() - kDecisionTolerance;
}

/// How fast a temperature changes; °C/s inside.
class HeatingRate final {
public:
    [[nodiscard]] static constexpr HeatingRate fromCelsiusPerSecond(double rate) noexcept { return HeatingRate{rate}; }
    [[nodiscard]] constexpr double celsiusPerSecond() const noexcept { return m_rate; }
    constexpr auto operator<=>(const HeatingRate&) const noexcept = default;
    friend constexpr TemperatureDifference operator*(HeatingRate r, Duration t) noexcept {
        return TemperatureDifference::fromCelsius(r.m_rate * t.count());
    }

private:
    constexpr explicit HeatingRate(double rate) noexcept : m_rate{rate} {}
    double m_rate = 0.0;
};

[[nodiscard]] constexpr HeatingRate operator/(TemperatureDifference d, Duration t) noexcept {
    return HeatingRate::fromCelsiusPerSecond(d.celsius() / t.count());
}

} // namespace holdfast::analytics
