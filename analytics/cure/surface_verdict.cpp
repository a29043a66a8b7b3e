#include "analytics/cure/peak_verdict.hpp"

namespace holdfast::analytics {

using namespace judging;

Verdict judgeSurface(const RunPlan& plan, const SurfaceReading& reading, const Calibration& gun,
                     const GuardSetting& guard, std::optional<Duration> dwell) {
    const auto frame = frameOf(plan, gun, guard);
    if (!frame) {
        return refused(because(ReasonCode::emptyLayerList));
    }
    if (isImpossible(reading.surface, gun.instrument())) {
        Reason reason = because(ReasonCode::impossibleTemperature);
        reason.value = reading.surface;
        return refused(std::move(reason));
    }
    const auto surface = gun.corrected(reading.surface);
    PeakShown peak;
    peak.low = surface;
    peak.high = surface;
    peak.provesCure = false;
    peak.showsTooCool = reading.place == ShotPlace::inTunnelHottest;
    peak.rulesOut = false;
    peak.tooCool = ReasonCode::surfaceCold;
    peak.tooHot = ReasonCode::surfaceHot;
    Findings findings;
    findings.hindered.push_back(because(ReasonCode::surfaceOnly));
    if (!peak.showsTooCool && surface < frame->window.lower) {
        findings.hindered.push_back(because(ReasonCode::outfeedShotProvesNothing));
    }
    auto verdict = judgePeak(*frame, peak, dwell, std::move(findings));
    verdict.couldProve = false;
    return verdict;
}

} // namespace holdfast::analytics
