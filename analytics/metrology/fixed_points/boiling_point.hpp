#pragma once

#include "analytics/quantity/pressure.hpp"
#include "analytics/quantity/temperature.hpp"

#include <tl/expected.hpp>

/// Where water boils: IAPWS R7-97(2012), Industrial Formulation 1997, region 4 (equations 29 to 31).
namespace holdfast::analytics {

enum class SaturationFault { notFinite, tooLow, tooHigh };

/// Saturation temperature by the backward equation 31. Valid, ends included, from 611.213 Pa to 22.064 MPa.
[[nodiscard]] tl::expected<Temperature, SaturationFault> saturationTemperature(Pressure pressure) noexcept;

/// Saturation pressure by equation 30. Valid, ends included, from 273.15 K to 647.096 K.
[[nodiscard]] tl::expected<Pressure, SaturationFault> saturationPressure(Temperature temperature) noexcept;

/// Air pressures a shop can have, ends included: about 5600 m up to the highest ever measured at a dead-sea shore.
inline constexpr Pressure kLowestStationPressure = Pressure::fromKilopascal(50.0);
inline constexpr Pressure kHighestStationPressure = Pressure::fromKilopascal(110.0);

/// Boiling point of pure water in an open vessel at this station pressure; refuses what no shop's air has.
[[nodiscard]] tl::expected<Temperature, SaturationFault> boilingPoint(Pressure station) noexcept;

/// How far an uncertainty of the pressure moves the boiling point there: |dT/dp|·u, the slope taken over 200 Pa of the
/// backward equation.
[[nodiscard]] tl::expected<TemperatureDifference, SaturationFault> boilingPointSpread(Pressure station,
                                                                                      PressureDifference u) noexcept;

} // namespace holdfast::analytics
