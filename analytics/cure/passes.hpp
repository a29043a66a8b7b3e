#pragma once

#include "analytics/cure/trace.hpp"

/// Step 8 of decisions 3. Private to this room.
namespace holdfast::analytics::tracing {

/// A cleaned recording before it is cut.
struct Whole final {
    std::vector<CleanSample> samples;
    std::vector<Join> joins;
    Duration median{0};
    bool startsHot = false;
    std::optional<std::size_t> unitInDoubtFrom; ///< first sample behind a step that asks for the unit
    std::optional<Duration> unitSwitchedAt;     ///< last sample before
    std::optional<Duration> unitSwitchSeenAt;   ///< first sample behind
    bool hotAfterUnitSwitch = false;            ///< something above 80 °C was left out behind the switch
};

/// Cuts at the first sample at or below 60 °C after 80 °C was passed, and at gaps that may hide such a one. A rest that
/// never passes 80 °C is counted in `tail`, unless it is all there is.
[[nodiscard]] std::vector<Pass> cutIntoPasses(Whole whole, const TraceRules& rules, int& tail);

} // namespace holdfast::analytics::tracing
