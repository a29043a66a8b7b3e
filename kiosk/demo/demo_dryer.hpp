#pragma once

namespace holdfast::kiosk::demo {

/// A dryer of the shop. The kiosk stands at the first.
enum class DemoDryer { north, south, west };

inline constexpr auto kNorth = DemoDryer::north;
inline constexpr auto kSouth = DemoDryer::south;
inline constexpr auto kWest = DemoDryer::west;

} // namespace holdfast::kiosk::demo
