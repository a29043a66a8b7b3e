// What is said about checks in a bath.
#include "kiosk/wording/instrument_sentences.hpp"

#include <algorithm>
#include <cmath>

namespace holdfast::kiosk::wording {

namespace {

const char* nameOf(analytics::BathCaution caution) {
    switch (caution) {
    case analytics::BathCaution::boilingWater:
        return "boiling-water";
    case analytics::BathCaution::steam:
        return "steam";
    case analytics::BathCaution::kettleNearWater:
        return "kettle-near-water";
    case analytics::BathCaution::instrumentCaseOutOfSteam:
        return "instrument-case-out-of-steam";
    case analytics::BathCaution::followMakerOfProbe:
        return "follow-maker-of-probe";
    }
    return "";
}

const char* nameOf(analytics::BathHint hint) {
    switch (hint) {
    case analytics::BathHint::crushIceFine:
        return "crush-ice-fine";
    case analytics::BathHint::fillWithLittleWater:
        return "fill-with-little-water";
    case analytics::BathHint::packAndDrain:
        return "pack-and-drain";
    case analytics::BathHint::waitForSlush:
        return "wait-for-slush";
    case analytics::BathHint::rollingBoil:
        return "rolling-boil";
    case analytics::BathHint::openVessel:
        return "open-vessel";
    case analytics::BathHint::cleanWater:
        return "clean-water";
    case analytics::BathHint::immerseDeep:
        return "immerse-deep";
    case analytics::BathHint::keepOffWallAndBottom:
        return "keep-off-wall-and-bottom";
    }
    return "";
}

const char* nameOf(analytics::PressureFault fault) {
    switch (fault) {
    case analytics::PressureFault::notFinite:
        return "not-finite";
    case analytics::PressureFault::stationTooLow:
        return "station-too-low";
    case analytics::PressureFault::stationTooHigh:
        return "station-too-high";
    case analytics::PressureFault::seaLevelTooLow:
        return "sea-level-too-low";
    case analytics::PressureFault::seaLevelTooHigh:
        return "sea-level-too-high";
    case analytics::PressureFault::altitudeTooLow:
        return "altitude-too-low";
    case analytics::PressureFault::altitudeTooHigh:
        return "altitude-too-high";
    case analytics::PressureFault::settingsInvalid:
        return "settings-invalid";
    }
    return "";
}

const char* nameOf(analytics::CheckFault fault) {
    switch (fault) {
    case analytics::CheckFault::notForBath:
        return "not-for-bath";
    case analytics::CheckFault::notFinite:
        return "not-finite";
    case analytics::CheckFault::noLimit:
        return "no-limit";
    case analytics::CheckFault::intervalInvalid:
        return "interval-invalid";
    }
    return "";
}

const char* nameOf(analytics::TimeoutReason reason) {
    switch (reason) {
    case analytics::TimeoutReason::noSamples:
        return "no-samples";
    case analytics::TimeoutReason::neverNear:
        return "never-near";
    case analytics::TimeoutReason::neverSteady:
        return "never-steady";
    }
    return "";
}

const char* nameOf(analytics::CheckTerm term) {
    switch (term) {
    case analytics::CheckTerm::bath:
        return "bath";
    case analytics::CheckTerm::barometer:
        return "barometer";
    case analytics::CheckTerm::report:
        return "report";
    case analytics::CheckTerm::weather:
        return "weather";
    case analytics::CheckTerm::altitude:
        return "altitude";
    case analytics::CheckTerm::reduction:
        return "reduction";
    case analytics::CheckTerm::resolution:
        return "resolution";
    case analytics::CheckTerm::stability:
        return "stability";
    }
    return "";
}

const char* nameOf(analytics::CheckLimitKind kind) {
    switch (kind) {
    case analytics::CheckLimitKind::classTolerance:
        return "class";
    case analytics::CheckLimitKind::statedTolerance:
        return "stated";
    case analytics::CheckLimitKind::certificate:
        return "certificate";
    }
    return "";
}

const char* nameOf(analytics::CheckOutcome outcome) {
    switch (outcome) {
    case analytics::CheckOutcome::passed:
        return "passed";
    case analytics::CheckOutcome::failed:
        return "failed";
    case analytics::CheckOutcome::notDecided:
        return "not-decided";
    }
    return "";
}

template <class E>
std::string said(const char* prefix, E value, const Speech& speech) {
    return speech.text(std::string{prefix} + nameOf(value));
}

} // namespace

std::string sentence(analytics::BathCaution caution, const Speech& speech) {
    return said("instruments.caution.", caution, speech);
}

std::string sentence(analytics::BathHint hint, const Speech& speech) {
    return said("instruments.hint.", hint, speech);
}

std::string sentence(analytics::PressureFault fault, const Speech& speech) {
    return said("instruments.check.air-fault.", fault, speech);
}

std::string sentence(analytics::CheckFault fault, const Speech& speech) {
    return said("instruments.check.fault.", fault, speech);
}

std::string sentence(const analytics::BathTimedOut& timedOut, analytics::Temperature bath, const Speech& speech) {
    return speech.text(std::string{"instruments.check.timeout."} + nameOf(timedOut.reason),
                       {{"at", speech.figures.temperature(bath)}});
}

std::string sentence(const analytics::BathSettling& settling, const analytics::StabilityRules& rules,
                     const Speech& speech) {
    return speech.text("instruments.check.settling",
                       {{"seen", durationText(analytics::Duration{std::floor(settling.seen.count())})},
                        {"window", durationText(rules.window)}});
}

std::string word(analytics::CheckTerm term, const Speech& speech) {
    return said("instruments.check.term.", term, speech);
}

std::string word(analytics::CheckLimitKind kind, const Speech& speech) {
    return said("instruments.check.limit.", kind, speech);
}

Figures figuresOf(const analytics::CheckResult& result, const Figures& base) {
    auto figures = base;
    figures.decimals = std::max(1, base.decimals);
    const auto size = result.error.magnitude();
    return figures.tellingApart(size, result.limit.limit - result.guard)
        .tellingApart(size, result.limit.limit + result.guard);
}

std::string sentence(const analytics::CheckResult& result, const Speech& speech) {
    const auto figures = figuresOf(result, speech.figures);
    return speech.text(std::string{"instruments.check."} + nameOf(result.outcome),
                       {{"error", figures.signedDifference(result.error)},
                        {"u", figures.difference(result.u)},
                        {"limit", figures.difference(result.limit.limit)}});
}

std::vector<std::string> consequences(const analytics::CheckResult& result, const Speech& speech) {
    const auto figures = figuresOf(result, speech.figures);
    switch (result.outcome) {
    case analytics::CheckOutcome::passed:
        return {speech.text("instruments.check.passed-does", {{"due", dateText(result.due)}})};
    case analytics::CheckOutcome::failed:
        return {speech.text("instruments.check.failed-does"), speech.text("instruments.check.failed-lots")};
    case analytics::CheckOutcome::notDecided:
        break;
    }
    std::vector<std::string> list;
    if (!result.canPass) {
        list.push_back(
            speech.text("instruments.check.cannot-pass", {{"guard", figures.difference(result.guard)},
                                                          {"limit", figures.difference(result.limit.limit)}}));
    }
    list.push_back(speech.text("instruments.check.not-decided-does"));
    return list;
}

} // namespace holdfast::kiosk::wording
