#pragma once

#include "kiosk/records/ink_records.hpp"
#include "kiosk/shop/stock/stock_fault.hpp"

#include <tl/expected.hpp>

#include <vector>

namespace holdfast::kiosk::shop {

/// A cloth while it is being written, temperatures in `unit`. Empty is "not stated".
struct FabricDraft final {
    analytics::TemperatureUnit unit = analytics::TemperatureUnit::fahrenheit;
    std::string name{};
    std::string hardCeiling{};
    std::string bleedCeiling{};
    analytics::BleedResistance need = analytics::BleedResistance::none;
    std::string coloursNotAtRisk{}; ///< parted by commas
    analytics::Mark mark = analytics::Mark::fromMemory;
    std::string source{};
    std::optional<records::FabricRecord> before{}; ///< absent: a new cloth
};

[[nodiscard]] FabricDraft draftOf(const records::FabricRecord& fabric, analytics::TemperatureUnit unit);

/// As familyFrom().
[[nodiscard]] tl::expected<records::FabricRecord, std::vector<StockFault>>
fabricFrom(const FabricDraft& draft, const std::vector<std::string>& taken);

} // namespace holdfast::kiosk::shop
