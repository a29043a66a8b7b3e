#pragma once

#include "analytics/metrology/calibration.hpp"

#include <optional>
#include <span>

namespace holdfast::analytics {

/// u_p of a probe that sits like this: wet ink 1.5 °C, taped on cured film 3 °C, in or under cloth 4 °C (starter
/// settings from memory; the shop's own repeat rides replace them). A strip and a spot count as the probe there.
[[nodiscard]] TemperatureDifference starterPlacement(Placement placement) noexcept;

/// u_p of a surface gun, 3 °C (from memory).
[[nodiscard]] TemperatureDifference starterGunPlacement() noexcept;

/// u_p of this instrument: its own if it has one, otherwise the starter setting of its kind and placement.
[[nodiscard]] TemperatureDifference placementOf(const Instrument& instrument) noexcept;

/// Rides the shop repeats, nothing changed, to learn its own u_p.
inline constexpr std::size_t kRepeatRides = 10;

/// u_p from the peaks of repeat rides of one print in one dryer state: s·t(n − 1, 1 − α)/z(1 − α), so that z·u_p is the
/// one-sided limit a sample that small supports (Student's t; JCGM 100:2008, G.3). Absent with fewer than kRepeatRides
/// peaks, one that is not finite, or a risk that no guard can be made of.
[[nodiscard]] std::optional<TemperatureDifference> ownPlacementFrom(std::span<const Temperature> peaks,
                                                                    const GuardSetting& setting = {}) noexcept;

} // namespace holdfast::analytics
