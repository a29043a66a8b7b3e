#pragma once

#include "analytics/cure/ride/usual.hpp"
#include "kiosk/records/floor_queries.hpp"
#include "kiosk/shop/proving/proving_events.hpp"

#include <optional>
#include <vector>

/// What a dryer's usual is made of after a start: rides that stand in the book.
namespace holdfast::kiosk::shop {

/// The dryer's set-point at a time (wall milliseconds), by what was done at it, newest first; nothing where nobody said
/// to what it was turned, or where the changes asked for do not reach back so far.
[[nodiscard]] std::optional<analytics::AuthoredTemperature>
setPointAt(const std::vector<records::ActionRow>& newestFirst, const records::DryerNow& now, std::int64_t at);

/// What a kept ride tells of its dryer; nothing if it was not cured, has no rise that can be fitted, or shows a sign
/// that something was wrong.
[[nodiscard]] std::optional<analytics::UsualRide>
usualRideOf(const TraceLoaded& ride, const std::optional<analytics::AuthoredTemperature>& setPoint);

} // namespace holdfast::kiosk::shop
