#pragma once

#include "kiosk/records/shop_records.hpp"

#include <tl/expected.hpp>

#include <array>
#include <string>
#include <string_view>
#include <vector>

/// What can be set on the Shop screen, and what each setting may be.
namespace holdfast::kiosk::shop {

enum class SettingKind {
    choice,  ///< one of `choices`
    number,  ///< from `low` to `high`
    count,   ///< a whole number from `low` to `high`
    printer, ///< a queue's name; empty: none
    names,   ///< parted by commas; empty: none
};

struct SettingRow final {
    std::string_view key;
    SettingKind kind = SettingKind::choice;
    bool toBeSigned = false;
    std::array<std::string_view, 2> choices{};
    double low = 0.0;
    double high = 0.0;
};

inline constexpr std::array<SettingRow, 12> kSettings{{
    {"language", SettingKind::choice, false, {"en", "es"}},
    {"unit", SettingKind::choice, false, {"F", "C"}},
    {"theme", SettingKind::choice, false, {"light", "dark"}},
    {"panel_inch", SettingKind::number, true, {}, 7.0, 32.0},
    {"risk_percent", SettingKind::number, true, {}, 0.1, 20.0},
    {"reading_every_pieces", SettingKind::count, true, {}, 1.0, 100000.0},
    {"reading_every_minutes", SettingKind::count, true, {}, 1.0, 1440.0},
    {"sheet_paper", SettingKind::choice, true, {"a4", "letter"}},
    {"label_printer", SettingKind::printer, true},
    {"sheet_printer", SettingKind::printer, true},
    {"covering_colours", SettingKind::names, true},
    {"light_garments", SettingKind::names, true},
}};

enum class SettingFaultCause {
    unknownKey,
    notAChoice,
    notANumber,
    notWhole,
    outOfRange,   ///< `low`, `high`
    namesTooLong, ///< together
    controlSign,
    notAPrinter, ///< blanks, signs that no queue's name holds, a minus in front, or over 127 signs (CUPS lpadmin(8))
};

struct SettingFault final {
    SettingFaultCause cause{};
    std::string text{}; ///< as typed, its first signs
    double low = 0.0;
    double high = 0.0;
};

[[nodiscard]] const SettingRow* settingNamed(std::string_view key);

[[nodiscard]] tl::expected<records::SettingChanged, SettingFault> settingFrom(std::string_view key,
                                                                              const std::string& typed);

/// As it is typed; an absent one is empty.
[[nodiscard]] std::string typedSetting(const records::SettingValue& value);

} // namespace holdfast::kiosk::shop
