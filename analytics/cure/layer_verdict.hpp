#pragma once

#include "analytics/cure/pass_evidence.hpp"
#include "analytics/cure/verdict.hpp"

#include <functional>
#include <string>

/// One layer's lower limit. Private to this room.
namespace holdfast::analytics::judging {

/// One thing a film must have got: a temperature, a hold, or a dose. A layer has one; a mix has one for each part too.
struct Condition final {
    std::string name;   ///< of the family
    GuardedLimit limit; ///< C; with pairs T2, its guard taken at T1
    Duration hold{0};
    bool unbroken = false;
    std::optional<EqualCurePairs> pairs;
    Temperature gelLow = Temperature::fromCelsius(0);
};

/// The condition a layer as a whole must meet to be cured.
[[nodiscard]] Condition conditionOf(const Layer& layer, const LayerRequirement& requirement);

/// The conditions of which failing a single one makes the layer under-cured: the layer's own, or those of a mix's
/// parts, each guarded at its own limit.
[[nodiscard]] std::vector<Condition> failingConditions(const Layer& layer, const LayerRequirement& requirement,
                                                       const std::function<TemperatureDifference(Temperature)>& guard);

/// What a trace shows about one layer's lower limit. At most one of `reached` and `failed`.
struct LowerFinding final {
    bool reached = false;
    bool failed = false;
    std::optional<MarginRange> margin;
    std::vector<Reason> tooCool; ///< not empty exactly if failed
    std::vector<Reason> hindered;
    std::vector<Reason> open; ///< or hindered not empty if neither reached nor failed
    std::vector<Reason> met;
};

/// Decisions 4, hold 0, hold h and pairs. `guard` gives the guard at a part's own limit.
[[nodiscard]] LowerFinding judgeLower(const Layer& layer, const LayerRequirement& requirement, EvidenceShelf& shelf,
                                      const std::function<TemperatureDifference(Temperature)>& guard);

} // namespace holdfast::analytics::judging
