#pragma once

#include "analytics/cure/prover.hpp"
#include "analytics/cure/window.hpp"

#include <vector>

/// What follows from the layers and ceilings of a window alone, whether of one run or of several on one belt.
namespace holdfast::analytics {

/// Lower, hold and uppers with who asks them, from `layers` (at least one) and `ceilings`.
void settleLimits(RunWindow& window);

/// The ceilings that count, as settled.
[[nodiscard]] Ceilings ceilingsOf(const RunWindow& window);

/// Lower above the hard upper, or with less than the least room below the bleed upper.
[[nodiscard]] bool isClosed(const RunWindow& window, const WindowRules& rules);

/// The layer whose lower limit plus guard is highest; the lowest of several.
[[nodiscard]] const LayerRequirement& bindingLayer(const std::vector<LayerRequirement>& layers);

/// The sustained peaks that prove the run, whether or not any is left. `shortfall` as Prover::shortfall.
[[nodiscard]] AcceptanceZone zoneOf(const RunWindow& window, TemperatureDifference shortfall);

/// Narrow and bleed-not-provable of an open window, from its zone or accepted steps.
void markOpen(RunWindow& window, const WindowRules& rules);

/// Where to aim in an open window.
void setAim(RunWindow& window);

/// Closed, or too little room for the guards or steps: then layers and ceilings are to blame; otherwise, if not
/// provable, only the instrument.
[[nodiscard]] bool limitsAreToBlame(const RunWindow& window);

/// Those who make a closed window, or one without room for the guards, what it is (decisions 1, Culprits).
[[nodiscard]] std::vector<Culprit> culpritsOf(const RunWindow& window);

/// A bleed watch where bleed is what stands in the way or is not ruled out; another cloth where the fabric is a
/// culprit.
[[nodiscard]] std::vector<Advice> adviceFor(const RunWindow& window);

} // namespace holdfast::analytics
