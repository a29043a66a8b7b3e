#include "drivers/protocol/ticket_code.hpp"

#include <algorithm>
#include <array>
#include <limits>
#include <optional>

namespace holdfast::drivers {

namespace {

constexpr int kModulus = 31;
static_assert(kTicketSigns.size() == kModulus);
constexpr std::size_t kMostTicketSigns = 15; // kind, the thirteen signs of 2^64 - 1 in base 31, check
constexpr std::array kKinds = {TicketKind::run,    TicketKind::window, TicketKind::bucket, TicketKind::instrument,
                               TicketKind::action, TicketKind::person, TicketKind::print,  TicketKind::bin};

std::optional<int> valueOf(char sign) noexcept {
    const char capital = (sign >= 'a' && sign <= 'z') ? static_cast<char>(sign - 'a' + 'A') : sign;
    const auto place = kTicketSigns.find(capital);
    return place == std::string_view::npos ? std::nullopt : std::optional{static_cast<int>(place)};
}

/// Σ w·v over signs of which the last one has weight `lastWeight`.
int weightedSum(std::string_view signs, int lastWeight) noexcept {
    int sum = 0;
    int weight = lastWeight;
    for (auto sign = signs.rbegin(); sign != signs.rend(); ++sign, ++weight) {
        sum = (sum + weight * valueOf(*sign).value_or(0)) % kModulus;
    }
    return sum;
}

std::string_view withoutOuterBlanks(std::string_view text) noexcept {
    constexpr std::string_view blanks = " \t\r\n";
    const auto first = text.find_first_not_of(blanks);
    if (first == std::string_view::npos) {
        return {};
    }
    return text.substr(first, text.find_last_not_of(blanks) - first + 1);
}

std::optional<std::uint64_t> numberOf(std::string_view signs) noexcept {
    constexpr std::uint64_t most = std::numeric_limits<std::uint64_t>::max();
    std::uint64_t number = 0;
    for (const char sign : signs) {
        const auto value = static_cast<std::uint64_t>(valueOf(sign).value_or(0));
        if (number > (most - value) / kModulus) {
            return std::nullopt;
        }
        number = number * kModulus + value;
    }
    return number;
}

} // namespace

std::string encode(TicketKind kind, std::uint64_t number, int width) {
    std::string digits;
    for (; number > 0; number /= kModulus) {
        digits.push_back(kTicketSigns[number % kModulus]);
    }
    const auto wanted = static_cast<std::size_t>(std::clamp(width, 1, static_cast<int>(kMostTicketSigns) - 2));
    digits.resize(std::max(digits.size(), wanted), kTicketSigns.front());
    std::reverse(digits.begin(), digits.end());
    std::string code = static_cast<char>(kind) + digits;
    const int check = (kModulus - weightedSum(code, 2)) % kModulus;
    code.push_back(kTicketSigns[static_cast<std::size_t>(check)]);
    return code;
}

tl::expected<TicketCode, TicketFault> decode(std::string_view text) {
    const std::string_view code = withoutOuterBlanks(text);
    if (code.size() > kMostTicketSigns) {
        return tl::unexpected(TicketFault::tooLong);
    }
    if (!std::all_of(code.begin(), code.end(), [](char sign) { return valueOf(sign).has_value(); })) {
        return tl::unexpected(TicketFault::badSign);
    }
    if (code.size() < 3) {
        return tl::unexpected(TicketFault::tooShort);
    }
    if (weightedSum(code, 1) != 0) {
        return tl::unexpected(TicketFault::badCheck);
    }
    const char first = kTicketSigns[static_cast<std::size_t>(*valueOf(code.front()))];
    const auto kind = std::find(kKinds.begin(), kKinds.end(), static_cast<TicketKind>(first));
    if (kind == kKinds.end()) {
        return tl::unexpected(TicketFault::unknownKind);
    }
    const auto number = numberOf(code.substr(1, code.size() - 2));
    if (!number) {
        return tl::unexpected(TicketFault::tooLong);
    }
    return TicketCode{*kind, *number};
}

} // namespace holdfast::drivers
