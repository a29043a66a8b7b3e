#pragma once

#include "analytics/cure/trace.hpp"

#include <optional>

namespace holdfast::kiosk::command {

/// Largest (T(t + span) − T(t)) / span over every t with both ends in one stretch joined by lines, T along the lines
/// and t not restricted to sample times. Absent when no stretch is as long as the span. Linear in the samples.
[[nodiscard]] std::optional<analytics::HeatingRate> greatestRise(const analytics::Pass& pass, analytics::Duration span);

} // namespace holdfast::kiosk::command
