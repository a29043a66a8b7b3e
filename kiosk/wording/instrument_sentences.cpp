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

/// Only while it has a ground.
std::string answer(const instruments::Standing& standing, const Speech& speech) {
    const bool strip = standing.ground == instruments::Ground::stripInDate;
    const std::string ground = nameOf(standing.ground);
    const Arguments until{{"date", dateOrNothing(standing.until)}};
    if (!standing.provesSomething()) {
        return speech.text("instruments.proves-only." + ground, until);
    }
    return strip && !standing.until ? speech.text("instruments.proves.strip-undated")
                                    : speech.text("instruments.proves." + ground, until);
}

std::string surest(const instruments::ProofAt& proof, const Speech& speech) {
    const bool heldMaximum = proof.shortfall > analytics::TemperatureDifference{};
    return speech.text(heldMaximum ? "instruments.surest.spot" : "instruments.surest",
                       {{"limit", speech.figures.temperature(proof.limit)},
                        {"guard", speech.figures.difference(proof.guard)},
                        {"above", speech.figures.difference(proof.shortfall)},
                        {"least", speech.figures.temperature(proof.least())}});
}

void addProofs(std::vector<std::string>& list, const instruments::Standing& standing, const Speech& speech) {
    for (const auto& proof : standing.proofs) {
        if (proof.fault) {
            list.push_back(speech.text(std::string{"instruments.proof-fault."} + nameOf(*proof.fault),
                                       {{"limit", speech.figures.temperature(proof.limit)}}));
        } else if (proof.guard.isFinite() && standing.ground != instruments::Ground::stripInDate) {
            list.push_back(surest(proof, speech));
        }
    }
    if (standing.timedInks != instruments::TimedInks::none) {
        list.push_back(speech.text("instruments.timed-inks"));
    }
}

/// A surface gun: what it can show, never what it proves. A bath cannot check it.
std::vector<std::string> gunSentences(const instruments::Standing& standing, const Speech& speech) {
    const bool grounded = standing.ground != instruments::Ground::none;
    const Arguments until{{"date", dateOrNothing(standing.until)}};
    std::vector<std::string> list{speech.text("instruments.proves-not.gun")};
    list.push_back(speech.text(
        std::string{"instruments.gun."} + (grounded ? nameOf(standing.ground) : nameOf(standing.lack)), until));
    for (const auto& proof : standing.proofs) {
        list.push_back(speech.text(proof.guard.isFinite() ? "instruments.gun.too-cool" : "instruments.gun.no-tolerance",
                                   {{"limit", speech.figures.temperature(proof.limit)},
                                    {"guard", speech.figures.difference(proof.guard)},
                                    {"most", speech.figures.temperature(proof.mostTooCool())}}));
    }
    if (!grounded) {
        list.push_back(speech.text("instruments.way-out.gun"));
    }
    return list;
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
                             {"most", fault.cause == instruments::FormCause::tooManySteps
                                          ? std::to_string(instruments::kMostSteps)
                                          : std::to_string(instruments::kMostInPack)}});
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
    if (standing.kind == analytics::InstrumentKind::gun) {
        return gunSentences(standing, speech);
    }
    std::vector<std::string> list;
    if (standing.ground == instruments::Ground::none) {
        addLack(list, standing, name, speech);
        return list;
    }
    list.push_back(answer(standing, speech));
    addProofs(list, standing, speech);
    if (standing.until && standing.provesSomething()) {
        const bool strip = standing.ground == instruments::Ground::stripInDate;
        list.push_back(speech.text(strip ? "instruments.effect.strip-until" : "instruments.effect.until",
                                   {{"date", dateText(*standing.until)}}));
    }
    return list;
}

} // namespace holdfast::kiosk::wording
