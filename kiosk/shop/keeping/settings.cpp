#include "kiosk/shop/keeping/settings.hpp"

#include "kiosk/shop/typed/typed.hpp"

#include <algorithm>

namespace holdfast::kiosk::shop {
namespace {

constexpr std::size_t kLongestQueue = 127;

bool isQueueName(const std::string& name) {
    return name.size() <= kLongestQueue && (name.empty() || name.front() != '-') &&
           std::all_of(name.begin(), name.end(), [](char sign) {
               return static_cast<unsigned char>(sign) > 0x20U && sign != 0x7F && sign != '/' && sign != '#' &&
                      sign != '\'' && sign != '"' && sign != '\\' && sign != '?';
           });
}

} // namespace

const SettingRow* settingNamed(std::string_view key) {
    const auto* found =
        std::find_if(kSettings.begin(), kSettings.end(), [&](const auto& row) { return row.key == key; });
    return found == kSettings.end() ? nullptr : found;
}

tl::expected<records::SettingChanged, SettingFault> settingFrom(std::string_view key, const std::string& typed) {
    const auto* row = settingNamed(key);
    const auto text = trimmed(typed);
    const auto fault = [&](SettingFaultCause cause) {
        return tl::unexpected(
            SettingFault{cause, firstSigns(text), row != nullptr ? row->low : 0.0, row != nullptr ? row->high : 0.0});
    };
    if (row == nullptr) {
        return fault(SettingFaultCause::unknownKey);
    }
    switch (row->kind) {
    case SettingKind::choice:
        if (text.empty() || std::find(row->choices.begin(), row->choices.end(), text) == row->choices.end()) {
            return fault(SettingFaultCause::notAChoice);
        }
        return records::SettingChanged{std::string{key}, text};
    case SettingKind::printer:
        if (!isQueueName(text)) {
            return fault(SettingFaultCause::notAPrinter);
        }
        return records::SettingChanged{std::string{key}, text};
    case SettingKind::names:
        if (const auto wrong = textFault(text); wrong && *wrong != TextFault::missing) {
            return fault(*wrong == TextFault::tooLong ? SettingFaultCause::namesTooLong
                                                      : SettingFaultCause::controlSign);
        }
        return records::SettingChanged{std::string{key}, namesJoined(namesTyped(text))};
    case SettingKind::number:
    case SettingKind::count:
        break;
    }
    const auto value = numberFrom(text);
    if (!value) {
        return fault(SettingFaultCause::notANumber);
    }
    if (*value < row->low || *value > row->high) {
        return fault(SettingFaultCause::outOfRange);
    }
    if (row->kind == SettingKind::number) {
        return records::SettingChanged{std::string{key}, *value};
    }
    const auto whole = static_cast<std::int64_t>(*value);
    if (static_cast<double>(whole) != *value) {
        return fault(SettingFaultCause::notWhole);
    }
    return records::SettingChanged{std::string{key}, whole};
}

std::string typedSetting(const records::SettingValue& value) {
    if (const auto* text = std::get_if<std::string>(&value)) {
        return *text;
    }
    if (const auto* number = std::get_if<double>(&value)) {
        return numberTyped(*number);
    }
    if (const auto* whole = std::get_if<std::int64_t>(&value)) {
        return std::to_string(*whole);
    }
    return {};
}

} // namespace holdfast::kiosk::shop
