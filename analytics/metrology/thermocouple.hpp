#pragma once

#include "analytics/metrology/instrument.hpp"
#include "analytics/quantity/voltage.hpp"

#include <tl/expected.hpp>

namespace holdfast::analytics {

/// Why a thermocouple conversion has no answer.
enum class ThermocoupleError { notFinite, belowRange, aboveRange };

/// Range of the reference function of this type, ends included: K −270…1372, J −210…1200, T −270…400, E −270…1000,
/// N −270…1300 °C (IEC 60584-1:2013; NIST SRD 60).
[[nodiscard]] MeasuringRange referenceRange(ThermocoupleType type) noexcept;

/// Electromotive force against a reference junction at 0 °C, by the ITS-90 reference function
/// (IEC 60584-1:2013; NIST Monograph 175, 1993; NIST SRD 60).
[[nodiscard]] tl::expected<Emf, ThermocoupleError> emfOf(ThermocoupleType type, Temperature junction) noexcept;

/// The exact inverse of emfOf over its whole range, also below 0 °C: Newton's steps on the reference function inside a
/// bracket that always holds the root. Agrees with emfOf to better than 1e-6 °C; never extrapolates: half a
/// microvolt beyond an end, the rounding of the printed tables, reads as that end, and more is out of range.
[[nodiscard]] tl::expected<Temperature, ThermocoupleError> temperatureOf(ThermocoupleType type, Emf emf) noexcept;

/// The published inverse polynomial (NIST SRD 60), good to 0.06 °C, defined down to −200 °C (J −210 °C) only. For
/// comparison with instruments that use it; everything else asks temperatureOf.
[[nodiscard]] tl::expected<Temperature, ThermocoupleError> inversePolynomial(ThermocoupleType type, Emf emf) noexcept;

/// Cold-junction compensation: E(t) = measured + E(t_ref), then the exact inverse (IEC 60584-1:2013; NIST
/// Monograph 175, 1993). An error of the reference junction comes back as that error.
[[nodiscard]] tl::expected<Temperature, ThermocoupleError> compensated(ThermocoupleType type, Emf measured,
                                                                       Temperature referenceJunction) noexcept;

} // namespace holdfast::analytics
