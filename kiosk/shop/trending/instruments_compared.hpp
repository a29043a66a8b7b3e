#pragma once

#include "kiosk/shop/trending/suspects.hpp"

namespace holdfast::kiosk::shop::trending {

/// An instrument against its fellows on the same dryer and families in the same episodes: a hotter one tells of more
/// margin than there is.
struct InstrumentOffset final {
    FactIndex instrument = kNoFact;
    analytics::TemperatureDifference hotter{}; ///< than its fellows, Hodges–Lehmann over the pairs
    analytics::TemperatureDifference least{};  ///< 95 %
    analytics::TemperatureDifference most{};
    int pairs = 0;       ///< episodes in which it had a fellow; weeks if those are too few
    bool byWeek = false; ///< the pairs are weeks
    int readings = 0;    ///< its own
    int fellows = 0;     ///< readings of the others
    double p = 1.0;
    double q = 1.0;
    Strength strength = Strength::byChance;
    Figure<SinceWhen> since{tl::unexpected(Refusal{})};      ///< its difference changed
    std::optional<analytics::TemperatureDifference> aWeek{}; ///< if it drifts: limits exclude none
};

inline constexpr int kLeastPairs = 6;

/// By strength, then size. Instruments with fewer than kLeastPairs pairs are left out. Strips are not
/// among them: they are intervals. Refusals: noReadings, nothingToCompare, tooFewPairs.
[[nodiscard]] Figure<std::vector<InstrumentOffset>>
compareInstruments(const TrendFacts& facts, const TrendFilter& filter, std::uint64_t seed = 1);

} // namespace holdfast::kiosk::shop::trending
