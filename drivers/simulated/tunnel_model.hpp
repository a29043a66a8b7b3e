#pragma once

#include "drivers/clock/clock.hpp"

#include <cstdint>
#include <vector>

/// Plain numbers in °C and s: the instruments' floor knows no quantity types, and nothing here leaves the simulator but
/// as bytes on a line.
namespace holdfast::drivers {

/// A conveyor dryer as a first-order lag: dT/dt = (air − T)/τ inside the heated length, (ambient − T)/τ outside (step
/// response T0 + (air − T0)(1 − e^(−t/τ)), any control handbook; 63.2 % of the step at t = τ).
struct TunnelModel {
    double ambientCelsius = 24.0;
    double airCelsius = 180.0;
    double heatedLengthMetres = 3.0;
    double beltMetresPerMinute = 4.5;
    double lagSeconds = 18.0;        ///< τ of film and cloth in moving air, on an empty belt
    double coolingLagSeconds = 22.0; ///< τ behind the outfeed
    double loadFactor = 1.0;         ///< a full belt takes heat out of the air: the lag grows by this, 1 and above

    [[nodiscard]] double secondsInside() const noexcept;
    /// `seconds` after a film of `startCelsius` has come under the heat; before 0 it is still at its start.
    [[nodiscard]] double celsiusAt(double seconds, double startCelsius) const noexcept;
    /// What it is at the outfeed, the hottest it gets.
    [[nodiscard]] double peakCelsius(double startCelsius) const noexcept;
    /// The same tunnel with the air so hot that a film of `startCelsius` peaks at `peakCelsius`.
    [[nodiscard]] TunnelModel withPeak(double peakCelsius, double startCelsius) const noexcept;
};

/// Normally distributed noise as a pure function of seed and index: the same ride is the same ride every time.
[[nodiscard]] double noiseAt(std::uint64_t seed, std::int64_t index) noexcept;

} // namespace holdfast::drivers
