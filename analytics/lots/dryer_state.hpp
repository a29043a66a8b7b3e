#pragma once

#include "analytics/cure/window.hpp"
#include "analytics/quantity/duration.hpp"
#include "analytics/quantity/temperature.hpp"

#include <optional>
#include <string>
#include <vector>

/// What one proof covers.
namespace holdfast::analytics {

/// What one layer asks of the dryer.
struct HeatAsked final {
    Temperature cure = Temperature::fromCelsius(0);
    Duration hold{0};
    std::optional<EqualCurePairs> pairs;
    bool operator==(const HeatAsked&) const = default;
};

/// What a run asks of the dryer, without colours, names and order: two runs that ask the same are equal.
struct Requirement final {
    std::vector<HeatAsked> layers; ///< each once, ascending by cure, then hold
    std::optional<Temperature> hard;
    std::optional<Temperature> bleed;
    bool operator==(const Requirement&) const = default;
};
[[nodiscard]] Requirement requirementOf(const RunWindow& window);

/// Decisions 5: (dryer, set-point, belt speed, requirement, cloth weight class). A part that nobody knows is equal only
/// to another unknown one.
struct DryerState final {
    std::string dryer; ///< id
    std::optional<Temperature> setPoint;
    std::optional<double> beltMetresPerMinute;
    Requirement requirement;
    std::string clothWeightClass; ///< the cloth's name where the shop weighs none
    bool operator==(const DryerState&) const = default;
};

/// A stop longer than one dwell ends the state; exactly one does not. Without a known dwell every stop does.
[[nodiscard]] bool stopEndsState(Duration stopped, std::optional<Duration> dwell) noexcept;

/// Whether a lot gave cause to hold it, in the order the lots of a dryer were made.
enum class LotOutcome {
    good,    ///< cleared
    held,    ///< was ever on hold
    unproven ///< neither: it breaks a succession of good ones and counts as none held
};

/// Decisions 5: tightened as soon as 2 of the last 5 lots were held, normal again after 5 good in succession since. The
/// same switching as ISO 2859-1:1999, 9.3.1 and 9.3.2. Oldest first; no lots: normal.
[[nodiscard]] bool isTightened(const std::vector<LotOutcome>& lots);

} // namespace holdfast::analytics
