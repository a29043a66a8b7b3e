#pragma once

#include "analytics/cure/verdict.hpp"

#include <vector>

/// How a verdict is put together from what was found. Private to this room.
namespace holdfast::analytics::judging {

/// Reasons by what they speak for. The first list that is not empty decides the word, in the order of decisions 4:
/// under-cured, overheated, not proven, cured.
struct Findings final {
    std::vector<Reason> tooCool;
    std::vector<Reason> tooHot;
    std::vector<Reason> hindered; ///< not proven whatever the margin
    std::vector<Reason> open;     ///< not proven because the margin is too small
    std::vector<Reason> met;
    std::vector<Reason> notes; ///< change no word

    [[nodiscard]] Word word() const noexcept;
};

[[nodiscard]] Reason because(ReasonCode code);
[[nodiscard]] Reason because(ReasonCode code, int layer);
[[nodiscard]] Reason because(ReasonCode code, Temperature value, const GuardedLimit& limit);
[[nodiscard]] Reason because(ReasonCode code, int layer, Temperature value, const GuardedLimit& limit);

/// Adds a reason unless one with the same code, layer and subject is there.
void addOnce(std::vector<Reason>& reasons, const Reason& reason);

/// What to do about these reasons, easiest first for each, each remedy once.
[[nodiscard]] std::vector<Remedy> remediesFor(const std::vector<Reason>& reasons);

/// A run with its window for one instrument: what every kind of reading is judged in.
struct Frame final {
    const RunPlan* plan = nullptr;
    const Calibration* calibration = nullptr;
    GuardSetting guard;
    RunWindow window;
};

/// Why this instrument proves nothing cured at this limit today; absent when it may.
[[nodiscard]] std::optional<Reason> whyNotInDate(const Calibration& calibration, Temperature limit);

/// The plan must have a window; absent when it has none.
[[nodiscard]] std::optional<Frame> frameOf(const RunPlan& plan, const Calibration& calibration,
                                           const GuardSetting& guard);

/// What stands against cured before any reading is looked at: a closed window, an instrument that cannot prove it or is
/// not in date, a bad bucket.
void addStandingHindrances(const Frame& frame, Findings& findings);

/// Word, reasons and remedies from the findings; the smallest margin, its guard and layer words from `layers`.
void conclude(const Frame& frame, Findings findings, Verdict& verdict);

/// Nothing was read: a verdict "refused" with this reason.
[[nodiscard]] Verdict refused(Reason reason);

/// The layers with their limits, all "not proven", no margins.
[[nodiscard]] std::vector<LayerVerdict> blankLayers(const Frame& frame);

/// The reason for a peak over one of the run's ceilings, with the cloth or ink that it belongs to.
[[nodiscard]] Reason overCeiling(const Frame& frame, ReasonCode code, Temperature peak, const GuardedLimit& ceiling);

/// Where a layer's guard is taken: its cure limit, with pairs T1.
[[nodiscard]] Temperature guardedAt(const LayerRequirement& layer) noexcept;

/// The chance that the film lies within the lower limit of the layer with the smallest margin and the hard ceiling
/// (decisions 2): Φ(H − hottest over u there) − Φ(−margin over u at L). Absent without a margin that is a point.
[[nodiscard]] std::optional<Probability> conformanceOf(const Frame& frame, const Verdict& verdict,
                                                       std::optional<Temperature> hottest);

} // namespace holdfast::analytics::judging
