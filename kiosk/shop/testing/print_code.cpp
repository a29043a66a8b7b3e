#include "kiosk/shop/testing/print_code.hpp"

#include "drivers/protocol/ticket_code.hpp"
#include "kiosk/records/print_records.hpp"

#include <cassert>

namespace holdfast::kiosk::shop {
namespace {

constexpr int kSigns = 4;               ///< behind the T, before the check sign
constexpr std::size_t kOnThePrint = 5;  ///< with the check sign
constexpr std::size_t kWithItsKind = 6; ///< with the T

} // namespace

std::string printSigns(std::int64_t number) {
    assert(number >= 0 && number < records::kMostPrints);
    return drivers::encode(drivers::TicketKind::print, static_cast<std::uint64_t>(number), kSigns).substr(1);
}

std::optional<std::int64_t> printTyped(const std::string& text) {
    std::string signs;
    for (const char sign : text) {
        if (sign != ' ' && sign != '\t' && sign != '-') {
            signs += sign;
        }
    }
    if (signs.size() == kOnThePrint) {
        signs.insert(signs.begin(), static_cast<char>(drivers::TicketKind::print));
    }
    if (signs.size() != kWithItsKind) {
        return std::nullopt;
    }
    const auto code = drivers::decode(signs);
    if (!code || code->kind != drivers::TicketKind::print ||
        code->number >= static_cast<std::uint64_t>(records::kMostPrints)) {
        return std::nullopt;
    }
    return static_cast<std::int64_t>(code->number);
}

} // namespace holdfast::kiosk::shop
