#pragma once

#include "analytics/metrology/instrument.hpp"

#include <optional>

namespace holdfast::analytics {

/// Whether the standard gives this type such a class at all (IEC 60584-1 has no class 3 for type J).
[[nodiscard]] bool isClassDefined(ThermocoupleType type, ToleranceClass toleranceClass) noexcept;

/// Largest deviation, either way, that a new thermocouple of this class may show at this temperature: the greater of a
/// fixed figure and a share of |t in °C| (IEC 60584-1:2013; ASTM E230/E230M, Table 1). Absent outside the
/// class's range (its ends are inside), for a class the type does not have, and for a temperature that is not finite.
[[nodiscard]] std::optional<TemperatureDifference> classTolerance(ThermocoupleType type, ToleranceClass toleranceClass,
                                                                  Temperature at) noexcept;

} // namespace holdfast::analytics
