#pragma once

#include "kiosk/records/kinds.hpp"

#include <functional>
#include <string>
#include <vector>

namespace holdfast::kiosk::demo {

/// A dryer of the shop and the probe that rides through it. The kiosk stands at the first.
enum class DemoDryer { north, south, west };

[[nodiscard]] const char* nameOf(DemoDryer dryer);
[[nodiscard]] const char* probeOf(DemoDryer dryer);

/// As described on the first day.
[[nodiscard]] std::vector<records::Record> demoDryers(const std::function<std::string()>& makeId);

} // namespace holdfast::kiosk::demo
