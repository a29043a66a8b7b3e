#include "kiosk/shop/keeping/badge.hpp"

#include "drivers/protocol/ticket_code.hpp"

#include <algorithm>
#include <cassert>

namespace holdfast::kiosk::shop {
namespace {

constexpr int kBadgeWidth = 3;
constexpr std::int64_t kIssue = 10'000;

} // namespace

std::string badgeOf(std::int64_t person, int issue) {
    assert(person > 0 && person < kIssue && issue >= 0);
    return drivers::encode(drivers::TicketKind::person, static_cast<std::uint64_t>(person + issue * kIssue),
                           kBadgeWidth);
}

std::int64_t badgeNumberOf(const records::PersonOnFile& person) {
    const auto code = drivers::decode(person.badge);
    const bool own = code && code->kind == drivers::TicketKind::person &&
                     static_cast<std::int64_t>(code->number % kIssue) == person.number;
    return own ? static_cast<std::int64_t>(code->number) : person.number; // one without a code has the first issue
}

std::string nextBadgeOf(const records::PersonOnFile& person) {
    return badgeOf(person.number, static_cast<int>(badgeNumberOf(person) / kIssue) + 1);
}

std::optional<BadgeRead> badgeRead(std::int64_t number, const std::vector<records::PersonOnFile>& people) {
    const auto found =
        std::find_if(people.begin(), people.end(), [&](const auto& one) { return one.number == number % kIssue; });
    if (found == people.end() || number > badgeNumberOf(*found)) {
        return std::nullopt; // also an issue that was never printed
    }
    return BadgeRead{found->number, number < badgeNumberOf(*found)};
}

} // namespace holdfast::kiosk::shop
