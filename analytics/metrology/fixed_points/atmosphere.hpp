#pragma once

#include "analytics/quantity/length.hpp"
#include "analytics/quantity/pressure.hpp"
#include "analytics/quantity/temperature.hpp"

#include <tl/expected.hpp>

/// The standard atmosphere below 11 km: ISO 2533:1975; U.S. Standard Atmosphere, 1976 (equations 18 and 33a).
namespace holdfast::analytics {

enum class AtmosphereFault { notFinite, tooLow, tooHigh };

/// Height counted in constant gravity.
class GeopotentialHeight final {
public:
    [[nodiscard]] static constexpr GeopotentialHeight fromMetres(double metres) noexcept {
        return GeopotentialHeight{metres};
    }
    [[nodiscard]] constexpr double metres() const noexcept { return m_metres; }
    constexpr auto operator<=>(const GeopotentialHeight&) const noexcept = default;

private:
    constexpr explicit GeopotentialHeight(double metres) noexcept : m_metres{metres} {}
    double m_metres;
};

/// H = r·z/(r + z), r = 6 356 766 m.
[[nodiscard]] GeopotentialHeight geopotentialHeight(Altitude altitude) noexcept;

/// Pressure of the standard atmosphere, 101 325 Pa at 0 m. Geopotential heights from −2000 m to 11 000 m, ends
/// included.
[[nodiscard]] tl::expected<Pressure, AtmosphereFault> standardPressure(GeopotentialHeight height) noexcept;
[[nodiscard]] tl::expected<Pressure, AtmosphereFault> standardPressure(Altitude altitude) noexcept;

/// What a barometer shows there when the report says this pressure reduced to sea level by the standard atmosphere
/// (the altimeter setting QNH): the heights of both in the standard atmosphere differ by the altitude. ISO 2533;
/// ICAO Doc 7488. A pressure that is not positive is tooLow.
[[nodiscard]] tl::expected<Pressure, AtmosphereFault> stationPressure(Pressure seaLevel, Altitude altitude) noexcept;

/// The inverse of stationPressure.
[[nodiscard]] tl::expected<Pressure, AtmosphereFault> seaLevelPressure(Pressure station, Altitude altitude) noexcept;

/// How far the station pressure moves when the air below is warmer or colder than the standard by this much, with which
/// some services reduce (QFF): p·(g·M/R)·H·ΔT/T², T of the middle of the column.
[[nodiscard]] tl::expected<PressureDifference, AtmosphereFault>
reductionSpread(Pressure station, Altitude altitude, TemperatureDifference airDeparture) noexcept;

/// How far it moves with the altitude: p·g·M/(R·T)·Δh.
[[nodiscard]] tl::expected<PressureDifference, AtmosphereFault> altitudeSpread(Pressure station, Altitude altitude,
                                                                               Length uncertainty) noexcept;

} // namespace holdfast::analytics
