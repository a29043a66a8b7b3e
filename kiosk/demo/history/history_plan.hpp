#pragma once

#include "analytics/quantity/temperature.hpp"
#include "kiosk/demo/history/planted_failures.hpp"

#include <array>
#include <chrono>
#include <cstdint>
#include <optional>

namespace holdfast::kiosk::demo {

/// How the shop works and errs. Shares are of one.
struct HistoryPlan final {
    std::uint64_t seed = 20374;
    /// The day after the history, on which the twelve working days begin: 2026-11-10 at the tests' noon.
    std::chrono::sys_days end{std::chrono::year{2026} / 11 / 10};
    int days = 548;               ///< eighteen months
    std::int64_t nextRun = 20374; ///< number of the first run after the history

    std::array<double, 3> runsADay{4.1, 3.2, 3.0}; ///< North, South, West
    /// Of the film above what is asked: where readings usually lie, and how far one strays.
    analytics::TemperatureDifference usualMargin = analytics::TemperatureDifference::fromCelsius(6.0);
    analytics::TemperatureDifference spread = analytics::TemperatureDifference::fromCelsius(1.6);
    double intraclass = 0.5; ///< share of the spread's square that an episode's readings have in common

    double strips = 0.05; ///< of due readings
    double spots = 0.03;
    analytics::TemperatureDifference optimism =
        analytics::TemperatureDifference::fromCelsius(0.8); ///< of who reads a strip
    double retaken = 0.8;                                   ///< of readings that are not proven
    double skipped = 0.008;
    double coldRuns = 0.03; ///< in which something was damp or fed too close: one reading is under-cured
    double hotRuns = 0.006;
    double tested = 0.2; ///< of runs: a print is pulled and washed
    double voidLoads = 0.012;
    double complaints = 0.004; ///< of runs, whatever the heat

    /// Of every probe and spot; absent: each about as its calibration gives it, so that South's readings, whose probe
    /// has no certificate, are a little less often proven than the others.
    std::optional<analytics::TemperatureDifference> guard{};

    PlantedFailures planted{};

    /// Without planted failures, and without anything else in which dryers, lots or buckets would differ but by chance.
    [[nodiscard]] static HistoryPlan quiet(std::uint64_t seed) {
        HistoryPlan plan;
        plan.seed = seed;
        plan.guard = analytics::TemperatureDifference::fromCelsius(2.6);
        plan.planted = PlantedFailures::none();
        return plan;
    }
};

} // namespace holdfast::kiosk::demo
