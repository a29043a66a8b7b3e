#include "analytics/cure/peak_verdict.hpp"

#include <algorithm>

namespace holdfast::analytics {
namespace {

using namespace judging;

/// The lowest g_lo of the layers: below it the held maximum cannot be a left-over of the print before.
Temperature lowestGel(const RunPlan& plan) {
    Temperature lowest = plan.layers.front().ink.requirement.gelLow();
    for (const auto& layer : plan.layers) {
        lowest = std::min(lowest, layer.ink.requirement.gelLow());
    }
    return lowest;
}

} // namespace

Verdict judgeSpot(const RunPlan& plan, const SpotReading& reading, const Calibration& spot, const GuardSetting& guard,
                  std::optional<Duration> dwell) {
    const auto frame = frameOf(plan, spot, guard);
    if (!frame) {
        return refused(because(ReasonCode::emptyLayerList));
    }
    if (isImpossible(reading.held, spot.instrument())) {
        Reason reason = because(ReasonCode::impossibleTemperature);
        reason.value = reading.held;
        return refused(std::move(reason));
    }
    const auto gelLow = lowestGel(plan);
    if (!reading.beforeUse || !reading.beforeUse->isFinite() || !(spot.corrected(*reading.beforeUse) < gelLow)) {
        Reason reason = because(ReasonCode::spotNotResetBelowGel);
        reason.value = reading.beforeUse;
        reason.limit = gelLow;
        return refused(std::move(reason));
    }
    const auto held = spot.corrected(reading.held);
    PeakShown peak;
    peak.low = held - reading.abovePeak;
    peak.high = held;
    auto verdict = judgePeak(*frame, peak, dwell, {});
    const auto twice = 2.0 * spot.uncertaintyAt(held).ofMean();
    if (frame->window.upper) {
        verdict.upperMargin = *frame->window.upper - held;
    }
    verdict.sustained = PeakAt{*peak.low, Duration{0}};
    verdict.raw = PeakAt{held, Duration{0}};
    verdict.peakRange = PeakRange{*peak.low - twice, held + twice, false};
    verdict.conformance = conformanceOf(*frame, verdict, held);
    return verdict;
}

} // namespace holdfast::analytics
