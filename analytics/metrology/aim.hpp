#pragma once

#include "analytics/metrology/calibration.hpp"

#include <optional>

namespace holdfast::analytics {

/// The fixed lines an aim is drawn between: each limit with its guard there (decisions 2).
struct AimRequest final {
    Temperature lower = Temperature::fromCelsius(0);
    TemperatureDifference guardLower;
    std::optional<Temperature> hardUpper;
    TemperatureDifference guardHard; ///< read only with hardUpper
    std::optional<Temperature> bleedUpper;
    TemperatureDifference guardBleed; ///< read only with bleedUpper
};

enum class AimRule {
    aboveLower, ///< L + 2.5 g
    middle,     ///< the middle of [L + g, upper − g], which lies below L + 2.5 g
    bleedOnly   ///< only the bleed ceiling leaves no room: L + 1.5 g, the bleed ceiling not counted
};

/// The sustained peak to set the dryer for, and the rule that gave it.
struct Aim final {
    Temperature at = Temperature::fromCelsius(0);
    AimRule rule = AimRule::aboveLower;
};

/// The smaller of L + 2.5 g and the middle of [L + g, upper − g], upper being the ceiling that leaves less room. A
/// single value counts as room. With bleedOnly, where L + 1.5 g would pass hard upper − g, the middle of [L + g, hard
/// upper − g]. Absent when the hard ceiling leaves no room, or when a limit or guard is not finite or a guard negative.
[[nodiscard]] std::optional<Aim> aimFor(const AimRequest& request) noexcept;

/// What to expect of an aim that is met exactly.
struct AimChance final {
    Probability conforming;    ///< that a film read there is within the limits (JCGM 106:2012, 7.2 to 7.4)
    Probability provenReading; ///< that one reading of such a film falls within the acceptance limits
};

/// Both chances with u = g/z at each limit; of two ceilings the less likely one to hold counts. With bleedOnly the
/// bleed ceiling is left out. Absent for a request that aimFor refuses or a risk without a finite z.
[[nodiscard]] std::optional<AimChance> chanceAt(const AimRequest& request, const Aim& aim,
                                                const GuardSetting& setting = {}) noexcept;

} // namespace holdfast::analytics
