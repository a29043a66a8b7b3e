#pragma once

#include "analytics/cure/step_rules.hpp"

/// Step 4 of decisions 3: an instrument that begins to speak the other unit. Private to this room.
namespace holdfast::analytics::tracing {

/// |new − convert(old)| ≤ 1 % of |convert(old)| + film rate × Δt, in the instrument's own numbers and both directions
/// (up x·9/5 + 32, down (x − 32)·5/9). Asked only of steps too fast for a film.
[[nodiscard]] bool isUnitSwitch(const Row& from, const Row& to, TemperatureUnit unit, HeatingRate filmRate) noexcept;

/// From below 80 °C over more than 2 s: nearer to convert(old), in either direction, than to old.
[[nodiscard]] bool leavesUnitInDoubt(const Row& from, const Row& to, TemperatureUnit unit,
                                     const TraceRules& rules) noexcept;

} // namespace holdfast::analytics::tracing
