#pragma once

#include "analytics/cure/ink_family.hpp"
#include "analytics/metrology/calibration.hpp"

#include <optional>
#include <vector>

/// What an instrument can prove on one day, and what decides it.
namespace holdfast::kiosk::shop::instruments {

/// At the cure minimum of one of the shop's inks.
struct ProofAt final {
    analytics::Temperature limit = analytics::Temperature::fromCelsius(0);
    analytics::TemperatureDifference guard; ///< infinite where it needs a tolerance that nothing states
    analytics::TemperatureDifference
        shortfall{}; ///< a held maximum less the sustained peak (decisions 4, Spot); else 0
    std::optional<analytics::CalibrationFault> fault{};
    /// What it must show for cured.
    [[nodiscard]] analytics::Temperature least() const noexcept { return limit + guard + shortfall; }
    /// A surface gun's shot in the tunnel shows too cool up to this (decisions 4, Surface gun).
    [[nodiscard]] analytics::Temperature mostTooCool() const noexcept { return limit - guard; }
};

enum class Ground {
    certificate, ///< in date
    check,       ///< passed and in date; no certificate is
    stripInDate, ///< the maker's tolerance, before its date
    none,
};

/// Why there is no ground; `none` while there is one.
enum class Lack { none, nothingYet, expired, checkFailed, stripExpired };

/// How many of the shop's inks ask for a time at heat that the instrument cannot see: a strip and a held maximum see
/// none, so such an ink is never cured by them (decisions 4).
enum class TimedInks { none, some, all };

struct Standing final {
    analytics::InstrumentKind kind = analytics::InstrumentKind::probe;
    Ground ground = Ground::none;
    Lack lack = Lack::none;
    std::optional<analytics::Date> until{}; ///< last day of the ground, or of what expired; absent: no date
    /// At the coolest and the hottest cure of the shop's inks, without those it cannot see the time of; by temperature.
    std::vector<ProofAt> proofs{};
    TimedInks timedInks = TimedInks::none;
    /// Some ink cured; a surface gun never does.
    [[nodiscard]] bool provesSomething() const noexcept;
    /// Nobody need do anything about it: it proves something, or is a surface gun with a ground.
    [[nodiscard]] bool isInOrder() const noexcept;
};

/// `families` empty: no proofs, and the ground and the kind alone decide.
[[nodiscard]] Standing standingOf(const analytics::Instrument& instrument, analytics::Date today,
                                  const std::vector<analytics::InkFamily>& families,
                                  const analytics::GuardSetting& guard);

} // namespace holdfast::kiosk::shop::instruments
