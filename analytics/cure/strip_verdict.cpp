#include "analytics/cure/peak_verdict.hpp"

#include <algorithm>

namespace holdfast::analytics {
namespace {

using namespace judging;

/// Why a strip's reading counts for nothing; absent when it may be judged.
std::optional<Reason> whyRefused(const StripReading& reading, const Calibration& strip) {
    const auto& maker = strip.instrument().strip;
    if (!maker || maker->steps.empty() || !strip.toleranceAt(maker->steps.front())) {
        return because(ReasonCode::noToleranceKnown);
    }
    const auto& steps = maker->steps;
    if (strip.faultAt(steps.front()) == CalibrationFault::stripExpired) {
        return because(ReasonCode::stripExpired);
    }
    if (reading.usedBefore) {
        return because(ReasonCode::stripUsedBefore);
    }
    if (!reading.allLightBefore) {
        return because(ReasonCode::stripNotAllLightBefore);
    }
    if (std::max(reading.lastDark.value_or(0), reading.firstLight.value_or(0)) >= steps.size()) {
        return because(ReasonCode::stripUnknownStep);
    }
    const bool finite = std::all_of(steps.begin(), steps.end(), [](Temperature t) { return t.isFinite(); });
    const bool crossed = reading.lastDark && reading.firstLight && *reading.lastDark >= *reading.firstLight;
    if (!finite || !std::is_sorted(steps.begin(), steps.end()) || crossed) {
        return because(ReasonCode::stripStepsOutOfOrder);
    }
    return std::nullopt;
}

} // namespace

Verdict judgeStrip(const RunPlan& plan, const StripReading& reading, const Calibration& strip,
                   const GuardSetting& guard, std::optional<Duration> dwell) {
    const auto frame = frameOf(plan, strip, guard);
    if (!frame) {
        return refused(because(ReasonCode::emptyLayerList));
    }
    if (auto why = whyRefused(reading, strip)) {
        why->subject = strip.instrument().name;
        return refused(std::move(*why));
    }
    const auto& steps = strip.instrument().strip->steps;
    // δ + z·u_p, the same distance from a dark step down and from a light step up
    const auto reach = [&](Temperature step) { return *strip.toleranceAt(step) + strip.guardAt(step, guard); };
    PeakShown peak;
    peak.guarded = true;
    if (reading.lastDark) {
        peak.low = steps[*reading.lastDark] - reach(steps[*reading.lastDark]);
    }
    if (reading.firstLight) {
        peak.high = steps[*reading.firstLight] + reach(steps[*reading.firstLight]);
    }
    Findings findings;
    Reason interval = because(ReasonCode::stripInterval);
    interval.value = peak.low;
    interval.limit = peak.high;
    if (peak.low || peak.high) {
        findings.notes.push_back(interval);
    }
    auto verdict = judgePeak(*frame, peak, dwell, std::move(findings));
    verdict.peakRange = PeakRange{peak.low, peak.high, true};
    return verdict;
}

} // namespace holdfast::analytics
