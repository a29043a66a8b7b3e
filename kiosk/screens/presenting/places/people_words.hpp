#pragma once

#include "kiosk/screens/presenting/places/people_now.hpp"

#include <algorithm>
#include <array>

/// What the pieces of the People share.
namespace holdfast::kiosk::screens {

inline constexpr std::string_view kPeoplePick = "shop.people.pick.";
inline constexpr std::string_view kPeopleRole = "shop.people.role.";

struct RoleId final {
    const char* id;
    records::Role role;
};
inline constexpr std::array<RoleId, 3> kPeopleRoles{{{"operator", records::Role::operatorAtDryer},
                                                     {"qa", records::Role::qualityAssurance},
                                                     {"owner", records::Role::owner}}};

[[nodiscard]] inline bool hasRole(const std::vector<records::Role>& roles, records::Role role) {
    return std::find(roles.begin(), roles.end(), role) != roles.end();
}

[[nodiscard]] inline const records::PersonOnFile* personOf(const shop::PeopleNow& now, std::int64_t number) {
    const auto found =
        std::find_if(now.people.begin(), now.people.end(), [&](const auto& one) { return one.number == number; });
    return found == now.people.end() ? nullptr : &*found;
}

} // namespace holdfast::kiosk::screens
