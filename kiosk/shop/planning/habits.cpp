#include "kiosk/shop/planning/habits.hpp"

#include "kiosk/shop/typed/typed.hpp"

namespace holdfast::kiosk::shop {
namespace {

void take(const std::optional<records::SettingValue>& value, std::vector<std::string>& names) {
    const auto* text = value ? std::get_if<std::string>(&*value) : nullptr;
    if (text != nullptr) {
        names = namesTyped(*text);
    }
}

} // namespace

analytics::PrintingHabits habitsFrom(const std::optional<records::SettingValue>& coveringColours,
                                     const std::optional<records::SettingValue>& lightGarments) {
    analytics::PrintingHabits habits;
    take(coveringColours, habits.coveringColours);
    take(lightGarments, habits.lightGarments);
    return habits;
}

std::string starterHabit(std::string_view key) {
    const analytics::PrintingHabits starters;
    const auto* names = key == kCoveringColours ? &starters.coveringColours
                        : key == kLightGarments ? &starters.lightGarments
                                                : nullptr;
    return names != nullptr ? namesJoined(*names) : std::string{};
}

} // namespace holdfast::kiosk::shop
