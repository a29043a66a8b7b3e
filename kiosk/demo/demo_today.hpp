#pragma once

#include "kiosk/demo/demo_ride.hpp"

#include <optional>

namespace holdfast::kiosk::demo {

/// How the print of one of today's runs rides, in the history and whenever that run is scanned in the demo: too cold,
/// too hot, with a dropout at the top, just right. Nothing: as fits its window.
[[nodiscard]] std::optional<RideShape> rideOfToday(std::int64_t run);

} // namespace holdfast::kiosk::demo
