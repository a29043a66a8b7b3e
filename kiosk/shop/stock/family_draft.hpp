#pragma once

#include "kiosk/records/ink_records.hpp"
#include "kiosk/shop/stock/stock_fault.hpp"

#include <tl/expected.hpp>

#include <vector>

namespace holdfast::kiosk::shop {

/// An ink family while it is being written: everything as typed, temperatures in `unit`, checked at once and as a
/// whole. Empty is "not stated".
struct FamilyDraft final {
    analytics::TemperatureUnit unit = analytics::TemperatureUnit::fahrenheit;
    std::string name{};
    analytics::Chemistry chemistry = analytics::Chemistry::plastisol;
    std::string gelLow{};
    std::string gelHigh{};
    std::string cure{};
    std::string hold{}; ///< seconds
    bool unbroken = false;
    std::string ceiling{};
    analytics::BleedResistance bleedResistance = analytics::BleedResistance::none;
    std::string ease{};
    std::string hotterTime{}; ///< seconds
    std::string hotter{};
    std::string coolerTime{}; ///< seconds
    std::string cooler{};
    std::string potLife{};  ///< hours
    std::string bandLow{};  ///< per cent by mass
    std::string bandHigh{}; ///< per cent by mass
    std::string rest{};     ///< hours
    analytics::Mark mark = analytics::Mark::fromMemory;
    std::string source{};
    std::optional<records::FamilyRecord> before{}; ///< absent: a new family
};

[[nodiscard]] FamilyDraft draftOf(const records::FamilyRecord& family, analytics::TemperatureUnit unit);

/// Every fault at once: those of the texts in the order of the form, then those of the whole (analytics::faultsOf). The
/// next revision of `before`, whose name and chemistry stay; of a new family revision 1, and then `taken` are the names
/// that stand in the book.
[[nodiscard]] tl::expected<records::FamilyRecord, std::vector<StockFault>>
familyFrom(const FamilyDraft& draft, const std::vector<std::string>& taken);

} // namespace holdfast::kiosk::shop
