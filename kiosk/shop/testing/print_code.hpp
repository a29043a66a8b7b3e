#pragma once

#include <cstdint>
#include <optional>
#include <string>

/// The five signs on a print under test: its ticket code without the leading T, as a laundry pen writes it.
namespace holdfast::kiosk::shop {

/// Four signs and a check sign; `number` from 0 to below records::kMostPrints (asserted).
[[nodiscard]] std::string printSigns(std::int64_t number);

/// The number behind what somebody typed or read out: five signs as they stand on the print, or the whole code with its
/// T; small letters and blanks within it do not matter. Nothing if the check sign does not fit.
[[nodiscard]] std::optional<std::int64_t> printTyped(const std::string& text);

} // namespace holdfast::kiosk::shop
