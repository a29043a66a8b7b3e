#pragma once

#include "kiosk/records/floor_queries.hpp"

#include <optional>
#include <string>
#include <vector>

/// The codes on badges. A badge names its person and how often it was replaced; only the newest counts.
namespace holdfast::kiosk::shop {

/// Code of a person's badge, P…; each issue after the first adds ten thousand to the number, so that a code never
/// becomes another person's. Persons from 1 to 9,999.
[[nodiscard]] std::string badgeOf(std::int64_t person, int issue = 0);

/// The number behind the code of the person's newest badge, as it is printed.
[[nodiscard]] std::int64_t badgeNumberOf(const records::PersonOnFile& person);

/// The code that takes the place of the person's badge.
[[nodiscard]] std::string nextBadgeOf(const records::PersonOnFile& person);

struct BadgeRead final {
    std::int64_t person = 0;
    bool replaced = false; ///< an old one: it opens nothing
    bool operator==(const BadgeRead&) const = default;
};

/// Whose badge has this number; nothing: nobody's in the book.
[[nodiscard]] std::optional<BadgeRead> badgeRead(std::int64_t number, const std::vector<records::PersonOnFile>& people);

} // namespace holdfast::kiosk::shop
