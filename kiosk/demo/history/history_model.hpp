#pragma once

#include "kiosk/demo/history/history_facts.hpp"
#include "kiosk/demo/history/history_plan.hpp"

namespace holdfast::kiosk::demo {

/// The same facts for the same plan, in a few milliseconds. Words are those of the rules with the guards of
/// `InstrumentFact`; a book judges the same readings by the calibration of their day.
[[nodiscard]] HistoryFacts historyOf(const HistoryPlan& plan);

/// By how much a dryer's film is hotter than usual on a day, by what was planted.
[[nodiscard]] analytics::TemperatureDifference plantedShift(const PlantedFailures& planted, DemoDryer dryer,
                                                            int daysBack) noexcept;
/// By how much an instrument reads too high on a day, by what was planted.
[[nodiscard]] analytics::TemperatureDifference plantedError(const PlantedFailures& planted, const char* instrument,
                                                            int daysBack) noexcept;

/// Chance that a print does not survive five washes, by how far its film got above what its ink asks: one in a hundred
/// and fifty at 6 °C, two in five at 0.
[[nodiscard]] double washOutChance(analytics::TemperatureDifference trueMargin) noexcept;

} // namespace holdfast::kiosk::demo
