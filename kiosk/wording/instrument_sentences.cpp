#include "kiosk/wording/instrument_sentences.hpp"

#include <algorithm>
#include <cmath>
#include <cstdio>

namespace holdfast::kiosk::wording {

namespace instruments = shop::instruments;

namespace {

const char* nameOf(instruments::FormCause cause) {
    using Cause = instruments::FormCause;
    switch (cause) {
    case Cause::valueMissing:
        return "value-missing";
    case Cause::notANumber:
        return "not-a-number";
    case Cause::dateMissing:
        return "date-missing";
    case Cause::notADate:
        return "not-a-date";
    case Cause::dateAhead:
        return "date-ahead";
    case Cause::textTooLong:
        return "text-too-long";
    case Cause::controlSign:
        return "control-sign";
    case Cause::nameMissing:
        return "name-missing";
    case Cause::nameTaken:
        return "name-taken";
    case Cause::classWithoutType:
        return "class-without-type";
    case Cause::classNotDefined:
        return "class-not-defined";
    case Cause::toleranceInvalid:
        return "tolerance-invalid";
    case Cause::resolutionInvalid:
        return "resolution-invalid";
    case Cause::placementInvalid:
        return "placement-invalid";
    case Cause::rangeIncomplete:
        return "range-incomplete";
    case Cause::rangeReversed:
        return "range-reversed";
    case Cause::stepsMissing:
        return "steps-missing";
    case Cause::stepsOutOfOrder:
        return "steps-out-of-order";
    case Cause::stepNotANumber:
        return "step-not-a-number";
    case Cause::tooManySteps:
        return "too-many-steps";
    case Cause::countInvalid:
        return "count-invalid";
    case Cause::catalogueUnknown:
        return "catalogue-unknown";
    case Cause::addressUnreadable:
        return "address-unreadable";
    case Cause::addressWithoutCatalogue:
        return "address-without-catalogue";
    case Cause::addressTaken:
        return "address-taken";
    case Cause::coverageFactorInvalid:
        return "coverage-factor-invalid";
    case Cause::noPoint:
        return "no-point";
    case Cause::pointOutOfOrder:
        return "point-out-of-order";
    case Cause::pointTwice:
        return "point-twice";
    case Cause::uncertaintyInvalid:
        return "uncertainty-invalid";
    case Cause::dueBeforeDate:
        return "due-before-date";
    case Cause::pressureInvalid:
        return "pressure-invalid";
    }
    return "";
}

const char* nameOf(instruments::Ground ground) {
    using Ground = instruments::Ground;
    return ground == Ground::certificate ? "certificate" : ground == Ground::check ? "check" : "strip";
}

const char* nameOf(instruments::Lack lack) {
    switch (lack) {
    case instruments::Lack::none:
    case instruments::Lack::nothingYet:
        return "nothing-yet";
    case instruments::Lack::expired:
        return "expired";
    case instruments::Lack::checkFailed:
        return "check-failed";
    case instruments::Lack::stripExpired:
        return "strip-expired";
    }
    return "";
}

const char* nameOf(analytics::CalibrationFault fault) {
    switch (fault) {
    case analytics::CalibrationFault::noCertificateOrCheckInDate:
        return "no-certificate-or-check";
    case analytics::CalibrationFault::correctionBeyondClassFarFromLimit:
        return "correction-beyond-class";
    case analytics::CalibrationFault::stripExpired:
        return "strip-expired";
    case analytics::CalibrationFault::noTolerance:
        return "no-tolerance";
    }
    return "";
}

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

std::string dateOrNothing(const std::optional<analytics::Date>& date) {
    return date ? dateText(*date) : std::string{};
}

void addLack(std::vector<std::string>& list, const instruments::Standing& standing, const std::string& name,
             const Speech& speech) {
    const bool strip = standing.lack == instruments::Lack::stripExpired;
    list.push_back(speech.text(std::string{"instruments.proves-not."} + nameOf(standing.lack),
                               {{"date", dateOrNothing(standing.until)}}));
    list.push_back(speech.text(strip ? "instruments.effect.strip" : "instruments.effect.lack", {{"name", name}}));
    const bool failed = standing.lack == instruments::Lack::checkFailed;
    list.push_back(speech.text(strip    ? "instruments.way-out.strip"
                               : failed ? "instruments.way-out.check-failed"
                                        : "instruments.way-out.lack"));
}

void addProofs(std::vector<std::string>& list, const instruments::Standing& standing, const Speech& speech) {
    for (const auto& proof : standing.proofs) {
        if (proof.fault) {
            list.push_back(speech.text(std::string{"instruments.proof-fault."} + nameOf(*proof.fault),
                                       {{"limit", speech.figures.temperature(proof.limit)}}));
        } else if (proof.guard.isFinite() && standing.ground != instruments::Ground::stripInDate) {
            list.push_back(
                speech.text("instruments.surest", {{"limit", speech.figures.temperature(proof.limit)},
                                                   {"guard", speech.figures.difference(proof.guard)},
                                                   {"least", speech.figures.temperature(proof.limit + proof.guard)}}));
        }
    }
}

} // namespace

std::string dateText(analytics::Date date) {
    const std::chrono::year_month_day day{date};
    char buffer[32];
    std::snprintf(buffer, sizeof buffer, "%04d-%02u-%02u", static_cast<int>(day.year()),
                  static_cast<unsigned>(day.month()), static_cast<unsigned>(day.day()));
    return buffer;
}

std::string sentence(const instruments::FormFault& fault, const Speech& speech) {
    std::string key = std::string{"instruments.fault."} + nameOf(fault.cause);
    if (fault.cause == instruments::FormCause::valueMissing && fault.item) {
        key += ".point";
    }
    return speech.text(key, {{"text", fault.text},
                             {"item", fault.item ? std::to_string(*fault.item) : std::string{}},
                             {"most", std::to_string(instruments::kMostInPack)}});
}

std::string shortText(const instruments::Standing& standing, const Speech& speech) {
    if (standing.ground == instruments::Ground::none) {
        return speech.text(std::string{"instruments.row-lack."} + nameOf(standing.lack),
                           {{"date", dateOrNothing(standing.until)}});
    }
    if (!standing.until) {
        return speech.text("instruments.row-strip-undated");
    }
    return speech.text(std::string{"instruments.row-until."} + nameOf(standing.ground),
                       {{"date", dateText(*standing.until)}});
}

std::vector<std::string> standingSentences(const instruments::Standing& standing, const std::string& name,
                                           const Speech& speech) {
    std::vector<std::string> list;
    if (standing.ground == instruments::Ground::none) {
        addLack(list, standing, name, speech);
        return list;
    }
    const auto& proofs = standing.proofs;
    const bool nowhere = !proofs.empty() && std::all_of(proofs.begin(), proofs.end(),
                                                        [](const auto& proof) { return proof.fault.has_value(); });
    const bool strip = standing.ground == instruments::Ground::stripInDate;
    const std::string ground = nameOf(standing.ground);
    const auto until = dateOrNothing(standing.until);
    if (nowhere && !strip) {
        list.push_back(speech.text("instruments.proves-only." + ground, {{"date", until}}));
    } else if (strip && !standing.until) {
        list.push_back(speech.text("instruments.proves.strip-undated"));
    } else {
        list.push_back(speech.text("instruments.proves." + ground, {{"date", until}}));
    }
    addProofs(list, standing, speech);
    if (standing.until) {
        list.push_back(
            speech.text(strip ? "instruments.effect.strip-until" : "instruments.effect.until", {{"date", until}}));
    }
    return list;
}

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
