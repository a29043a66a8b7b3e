#pragma once

namespace holdfast::kiosk::demo {

/// A dryer of the shop. The kiosk stands at the first.
enum class DemoDryer { north, south, west };

} // namespace holdfast::kiosk::demo
