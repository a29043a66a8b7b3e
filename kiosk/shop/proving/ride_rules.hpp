#pragma once

#include "kiosk/shop/proving/recording.hpp"

/// When a ride begins, has fallen, and ends (contracts, Rides). All limits are starters (MEM) where contracts.md or
/// decisions 3 do not name them.
namespace holdfast::kiosk::shop {

inline constexpr MonotonicTime kPreRoll{60'000'000};
inline constexpr MonotonicTime kFallenFor{5'000'000};
inline constexpr MonotonicTime kLostTooLong{300'000'000};   // a silent probe's ride is then kept as cut off
inline constexpr MonotonicTime kLongestRide{1'800'000'000}; // a probe forgotten in the heat
inline constexpr MonotonicTime kSpoolRetryAfter{5'000'000}; // after it could not be written
inline constexpr MonotonicTime kWritingShownAfter{300'000}; // "Writing…"
inline constexpr auto kStartRise = analytics::TemperatureDifference::fromCelsius(5.0);
inline constexpr auto kFall = analytics::TemperatureDifference::fromCelsius(20.0);
inline constexpr auto kRideFrom = analytics::Temperature::fromCelsius(60.0); // below it, nobody sent a print through
inline constexpr auto kPassFrom = analytics::Temperature::fromCelsius(80.0);
inline constexpr auto kColdStart = analytics::Temperature::fromCelsius(40.0);
inline constexpr auto kColdestPossible = analytics::Temperature::fromCelsius(-40.0);
inline constexpr auto kHottestPossible = analytics::Temperature::fromCelsius(450.0);
inline constexpr std::size_t kFewestForLevel = 3;

/// The link's scale in the unit that the operator answered, if he did.
[[nodiscard]] drivers::CountScale scaleOf(const drivers::CountScale& link,
                                          const std::optional<analytics::TemperatureUnit>& answered);

/// Corrected value of a sample that may be used; nothing for a flagged, impossible or out-of-range one.
[[nodiscard]] std::optional<analytics::Temperature>
usableValue(const drivers::Sample& sample, const drivers::CountScale& scale, const KnownInstrument* known);

/// Drops what is older than the pre-roll before the newest.
void keepLastMinute(std::vector<drivers::Sample>& samples);

/// Median of the usable values but the newest two; nothing for fewer than three.
[[nodiscard]] std::optional<analytics::Temperature> levelBefore(const Probe& probe);
/// The newest two usable values lie 5 °C above the last minute's level.
[[nodiscard]] bool rideStarts(const Probe& probe);
/// The last minute from where it was cold enough to begin a ride; all of it if it never was.
[[nodiscard]] std::vector<drivers::Sample> preRoll(const Probe& probe);

/// Larger of 2 s and four medians of the steps, never more than 5 s.
[[nodiscard]] MonotonicTime gapLimitOf(const std::vector<drivers::Sample>& samples);

/// Every layer with a hold has t at or below L − g, with pairs at or below g_lo − g (contracts, Rides).
[[nodiscard]] bool holdsAreOver(const AnnouncedRun* run, const analytics::Calibration& calibration,
                                const analytics::GuardSetting& guard, analytics::Temperature t);
/// Lowest g_lo of the layers; 60 °C without a run.
[[nodiscard]] analytics::Temperature gelLowOf(const AnnouncedRun* run);

} // namespace holdfast::kiosk::shop
