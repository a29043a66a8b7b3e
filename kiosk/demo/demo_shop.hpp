#pragma once

#include <cstdint>

/// An invented shop. Nothing in it is real: no person, no shop, no product.
namespace holdfast::kiosk::demo {

/// The probe of the dryer that the demo's kiosk stands at, and what its driver calls it.
inline constexpr const char* kDemoProbe = "P-3";
inline constexpr const char* kDemoCatalogueId = "line-type-k-celsius";
inline constexpr const char* kDemoSerialNumber = "004217";

/// The run whose ride is the last entry of the demo's history: without it the history is not complete.
inline constexpr std::int64_t kDemoLastRun = 20413;

} // namespace holdfast::kiosk::demo
