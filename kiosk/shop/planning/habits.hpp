#pragma once

#include "analytics/cure/advice/advice.hpp"
#include "kiosk/records/shop_records.hpp"

#include <optional>
#include <string>
#include <string_view>

/// How the shop prints, as settings: what the advice counts on. Until the shop says otherwise they are common practice.
namespace holdfast::kiosk::shop {

inline constexpr std::string_view kCoveringColours = "covering_colours";
inline constexpr std::string_view kLightGarments = "light_garments";

/// Names parted by commas; a setting that is absent or no text leaves the starter. An empty text is an empty list.
[[nodiscard]] analytics::PrintingHabits habitsFrom(const std::optional<records::SettingValue>& coveringColours,
                                                   const std::optional<records::SettingValue>& lightGarments);

/// The starter of one of the two keys as it is typed; empty for any other.
[[nodiscard]] std::string starterHabit(std::string_view key);

} // namespace holdfast::kiosk::shop
