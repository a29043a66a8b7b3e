#pragma once

#include "kiosk/demo/demo_dryer.hpp"
#include "kiosk/records/kinds.hpp"

#include <functional>
#include <string>
#include <vector>

namespace holdfast::kiosk::demo {

[[nodiscard]] const char* nameOf(DemoDryer dryer);
/// The probe that rides through it.
[[nodiscard]] const char* probeOf(DemoDryer dryer);

/// As described on the first day.
[[nodiscard]] std::vector<records::Record> demoDryers(const std::function<std::string()>& makeId);

} // namespace holdfast::kiosk::demo
