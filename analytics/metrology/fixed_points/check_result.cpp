#include "analytics/metrology/fixed_points/check_result.hpp"

#include "analytics/metrology/correction.hpp"
#include "analytics/metrology/tolerance.hpp"

#include <algorithm>

namespace holdfast::analytics {
namespace {

constexpr double kCoverage = 2.0;
constexpr std::chrono::days kLongestInterval{3653};

bool isForBath(const Instrument& instrument) noexcept {
    return instrument.kind == InstrumentKind::probe || instrument.kind == InstrumentKind::spot;
}

bool isSound(const CheckRequest& request) noexcept {
    const auto& reading = request.reading;
    const bool finite = request.reference.at.isFinite() && reading.mean.isFinite() && reading.u.isFinite() &&
                        combined(request.reference.lines).isFinite();
    return finite && reading.u >= TemperatureDifference{};
}

} // namespace

std::optional<CheckLimit> checkLimitAt(const Calibration& calibration, Temperature reference) noexcept {
    const auto& instrument = calibration.instrument();
    const auto tolerance = calibration.toleranceAt(reference);
    std::optional<CheckLimit> limit;
    if (tolerance && tolerance->isFinite()) {
        const bool ofClass = instrument.type && instrument.toleranceClass &&
                             classTolerance(*instrument.type, *instrument.toleranceClass, reference);
        limit = CheckLimit{*tolerance, ofClass ? CheckLimitKind::classTolerance : CheckLimitKind::statedTolerance};
    }
    const auto& certificate = calibration.certificateInDate();
    if (certificate && hasPointNear(*certificate, reference)) {
        const auto claimed = calibration.uncertaintyAt(reference).common * kCoverage;
        if (claimed.isFinite() && (!limit || claimed < limit->limit)) {
            limit = CheckLimit{claimed, CheckLimitKind::certificate};
        }
    }
    return limit;
}

CheckOutcome decideCheck(TemperatureDifference error, TemperatureDifference limit,
                         TemperatureDifference guard) noexcept {
    if (!error.isFinite() || !limit.isFinite() || !guard.isFinite()) {
        return CheckOutcome::notDecided;
    }
    if (atMost(error.magnitude(), limit - guard)) {
        return CheckOutcome::passed;
    }
    return atLeast(error.magnitude(), limit + guard) ? CheckOutcome::failed : CheckOutcome::notDecided;
}

tl::expected<CheckResult, CheckFault> judgeCheck(const Calibration& calibration, const CheckRequest& request) {
    const auto& instrument = calibration.instrument();
    if (!isForBath(instrument) || request.kind == CheckKind::comparison) {
        return tl::unexpected{CheckFault::notForBath};
    }
    if (!isSound(request) || !instrument.resolution.isFinite()) {
        return tl::unexpected{CheckFault::notFinite};
    }
    if (request.interval < std::chrono::days{1} || request.interval > kLongestInterval) {
        return tl::unexpected{CheckFault::intervalInvalid};
    }
    const auto limit = checkLimitAt(calibration, request.reference.at);
    if (!limit) {
        return tl::unexpected{CheckFault::noLimit};
    }
    CheckResult result;
    result.kind = request.kind;
    result.indicated = request.reading.mean;
    result.correction = calibration.correctionAt(request.reading.mean);
    result.reference = request.reference.at;
    result.error = result.indicated + result.correction - result.reference;
    result.limit = *limit;
    result.lines = request.reference.lines;
    result.lines.push_back({CheckTerm::resolution, instrument.resolution / std::sqrt(12.0)});
    result.lines.push_back({CheckTerm::stability, request.reading.u});
    result.u = combined(result.lines);
    result.guard = result.u * request.setting.z();
    result.canPass = atMost(result.guard, limit->limit);
    result.outcome = decideCheck(result.error, limit->limit, result.guard);
    result.date = calibration.today();
    result.due = result.outcome == CheckOutcome::passed ? result.date + request.interval : result.date;
    return result;
}

std::optional<Check> toCheck(const CheckResult& result) noexcept {
    if (result.outcome == CheckOutcome::notDecided) {
        return std::nullopt;
    }
    return Check{result.kind, result.outcome == CheckOutcome::passed, result.date, result.due};
}

} // namespace holdfast::analytics
