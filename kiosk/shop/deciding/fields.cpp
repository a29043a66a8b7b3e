#include "kiosk/shop/deciding/fields.hpp"

#include "analytics/lots/piece_span.hpp"
#include "kiosk/records/json_object.hpp"
#include "kiosk/shop/typed/typed.hpp"

#include <algorithm>
#include <charconv>

namespace holdfast::kiosk::shop::deciding {
namespace {

bool isDigits(const std::string& text) noexcept {
    return !text.empty() && std::all_of(text.begin(), text.end(), [](char sign) { return sign >= '0' && sign <= '9'; });
}

/// "-3" and "−3" (U+2212).
bool isBelowZero(const std::string& text) {
    const std::string minus{"\xE2\x88\x92"};
    const std::size_t sign = text.compare(0, minus.size(), minus) == 0 ? minus.size() : text.front() == '-' ? 1 : 0;
    return sign > 0 && isDigits(text.substr(sign));
}

} // namespace

bool has(const Faults& faults, Cause cause) noexcept {
    return std::any_of(faults.begin(), faults.end(), [&](const Fault& fault) { return fault.cause == cause; });
}

void Fields::fault(Cause cause, const std::string& field, const std::string& text) {
    m_faults.push_back({cause, field, firstSigns(text)});
}

std::string Fields::text(const std::string& typed, const std::string& field) {
    auto text = trimmed(typed);
    const auto wrong = textFault(text);
    if (wrong == TextFault::tooLong) {
        fault(Cause::textTooLong, field, text);
    } else if (wrong == TextFault::controlSign) {
        fault(Cause::controlSign, field);
    }
    return text;
}

std::optional<int> Fields::count(const std::string& typed, const std::string& field) {
    const auto text = trimmed(typed);
    if (text.empty()) {
        return std::nullopt;
    }
    if (isBelowZero(text)) {
        fault(Cause::countBelowZero, field, text);
        return std::nullopt;
    }
    if (!isDigits(text)) {
        fault(Cause::notACount, field, text);
        return std::nullopt;
    }
    int value = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
    if (error != std::errc{} || end != text.data() + text.size() || value > analytics::kMostPieces) {
        fault(Cause::countTooLarge, field, text);
        return std::nullopt;
    }
    return value;
}

std::optional<int> Fields::countOfSome(const std::string& typed, const std::string& field) {
    if (trimmed(typed).empty()) {
        fault(Cause::countMissing, field);
        return std::nullopt;
    }
    const auto value = count(typed, field);
    if (value == 0) {
        fault(Cause::countOfNone, field);
        return std::nullopt;
    }
    return value;
}

std::optional<analytics::Date> Fields::day(const std::string& typed, const std::string& field) {
    const auto text = trimmed(typed);
    if (text.empty()) {
        return std::nullopt;
    }
    const auto day = records::dateFrom(text);
    if (!day) {
        fault(Cause::notADay, field, text);
    }
    return day;
}

std::vector<std::string> Fields::names(const std::string& typed, const std::string& field) {
    return namesTyped(text(typed, field));
}

} // namespace holdfast::kiosk::shop::deciding
