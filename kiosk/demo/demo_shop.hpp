#pragma once

/// An invented shop. Nothing in it is real: no person, no shop, no product.
namespace holdfast::kiosk::demo {

/// The probe of the dryer that the demo's kiosk stands at, and what its driver calls it.
inline constexpr const char* kDemoProbe = "P-3";
inline constexpr const char* kDemoCatalogueId = "line-type-k-celsius";
inline constexpr const char* kDemoSerialNumber = "004217";

} // namespace holdfast::kiosk::demo
