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
    std::optional<analytics::CalibrationFault> fault{};
};

enum class Ground {
    certificate, ///< in date
    check,       ///< passed and in date; no certificate is
    stripInDate, ///< the maker's tolerance, before its date
    none,
};

/// Why there is no ground; `none` while there is one.
enum class Lack { none, nothingYet, expired, checkFailed, stripExpired };

struct Standing final {
    Ground ground = Ground::none;
    Lack lack = Lack::none;
    std::optional<analytics::Date> until{}; ///< last day of the ground, or of what expired; absent: no date
    std::vector<ProofAt> proofs{};          ///< at the coolest and the hottest cure of the shop's inks; by temperature
    [[nodiscard]] bool provesSomething() const noexcept;
};

/// `families` empty: no proofs, and the ground alone decides.
[[nodiscard]] Standing standingOf(const analytics::Instrument& instrument, analytics::Date today,
                                  const std::vector<analytics::InkFamily>& families,
                                  const analytics::GuardSetting& guard);

} // namespace holdfast::kiosk::shop::instruments
