#pragma once

#include "analytics/cure/trace_facts.hpp"

#include <optional>

namespace holdfast::analytics {

/// A level for which the answer to "was it kept for the hold?" is known already; it narrows the search, and the level
/// found lies on the side of it that the answer says.
struct KnownLevel final {
    Temperature level = Temperature::fromCelsius(0);
    bool kept = false;
};

/// The highest level at or above which a trace stayed for `hold` in total, along the joined lines (as timeAtOrAbove
/// counts). Absent when the joined time of the whole trace is shorter than `hold`. Exact to rounding; linear time on
/// average: the total falls as the level rises, and each step of the search drops the lines that can no longer matter.
[[nodiscard]] std::optional<Temperature> highestLevelKept(const Pass& pass, Duration hold, KnownLevel known);

/// The same for the longest spell, where a dip of at most 2 s down to level − guard does not end the spell but does not
/// count (as longestSpellBridgingDips). By halving, to 1e-7 °C from below; each step drops the samples that can no
/// longer matter.
[[nodiscard]] std::optional<Temperature> highestLevelKeptUnbroken(const Pass& pass, Duration hold,
                                                                  TemperatureDifference guard, KnownLevel known);

} // namespace holdfast::analytics
