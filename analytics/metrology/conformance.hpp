#pragma once

#include "analytics/metrology/calibration.hpp"

#include <optional>

/// Whether a value within its uncertainty meets its limits (JCGM 106:2012, Evaluation of measurement data: the role of
/// measurement uncertainty in conformity assessment).
namespace holdfast::analytics {

/// Risks a shop may set, ends included: 0.1 % to 20 %.
[[nodiscard]] bool isAllowedRisk(Probability risk) noexcept;

/// Limits of a requirement; either may be absent.
struct Limits final {
    std::optional<Temperature> lower;
    std::optional<Temperature> upper;
    bool operator==(const Limits&) const = default;
};

/// Probability that the true value lies within the limits, given an estimate with standard uncertainty u and a normal
/// distribution: Φ((t − L)/u), Φ((H − t)/u), Φ((H − t)/u) − Φ((L − t)/u) (JCGM 106:2012, 7.2 to 7.4). With u = 0 it is
/// 0 or 1, equality counting as met; without limits it is 1. Absent when the value, u or a limit is not finite, when u
/// is negative, or when the limits are reversed.
[[nodiscard]] std::optional<Probability> conformanceProbability(Temperature value, TemperatureDifference u,
                                                                const Limits& limits) noexcept;

/// Guards at the two limits; the one of an absent limit is not read.
struct Guards final {
    TemperatureDifference lower;
    TemperatureDifference upper;
};

/// Acceptance limits [L + g, H − g] (JCGM 106:2012, 8.3.2, guarded acceptance). Absent when no value is left between
/// them; a single value counts as left.
[[nodiscard]] std::optional<Limits> acceptanceLimits(const Limits& limits, const Guards& guards) noexcept;

enum class Conformity {
    conforming,    ///< within the acceptance limits
    nonConforming, ///< beyond a limit by its guard or more
    undecided
};

/// The three-zone rule (JCGM 106:2012, 8.3.2 and 8.3.3; ISO 14253-1:2017): equality counts as met on both sides.
/// A value or guard that is not finite is undecided.
[[nodiscard]] Conformity decide(Temperature value, const Limits& limits, const Guards& guards) noexcept;

} // namespace holdfast::analytics
