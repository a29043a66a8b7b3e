#include "kiosk/wording/risk_sentences.hpp"

#include "kiosk/wording/deciding_sentences.hpp"

#include <algorithm>
#include <cmath>

namespace holdfast::kiosk::wording {
namespace {

using analytics::statistics::LotModelCaveat;
using shop::trending::CureCause;
using shop::trending::Evidence;
using shop::trending::EvidenceKind;
using shop::trending::FactorKind;
using shop::trending::FactorLevel;
using shop::trending::NoFigure;
using shop::trending::Strength;
using shop::trending::Suspect;

std::string riskText(const char* key, const Speech& speech, const Arguments& arguments = {}) {
    return speech.text(std::string{"holds.risk."} + key, arguments);
}

std::string wholeCount(double value) {
    return std::to_string(static_cast<std::int64_t>(std::llround(value)));
}

/// Of a hundred, never rounded to a certainty.
std::string ofHundred(double share) {
    const double percent = 100.0 * std::clamp(share, 0.0, 1.0);
    if (percent > 0.0 && percent < 0.5) {
        return "<1";
    }
    if (percent < 100.0 && percent >= 99.5) {
        return ">99";
    }
    return wholeCount(percent);
}

std::string marginOf(const Evidence& evidence, const Speech& speech) {
    return evidence.margin ? speech.figures.signedDifference(*evidence.margin) : std::string{};
}

const char* keyOf(const Evidence& evidence) {
    switch (evidence.kind) {
    case EvidenceKind::itsReadingsUnderCured:
        return evidence.margin ? "evidence.readings-under-margin" : "evidence.readings-under";
    case EvidenceKind::itsReadingsCured:
        return evidence.margin ? "evidence.readings-cured-margin" : "evidence.readings-cured";
    case EvidenceKind::itsReadingsUnproven:
        return "evidence.readings-unproven";
    case EvidenceKind::itsTestsFailed:
        return "evidence.tests-failed";
    case EvidenceKind::itsTestsPassed:
        return "evidence.tests-passed";
    case EvidenceKind::otherComplaints:
        return "evidence.complaints";
    case EvidenceKind::suspectShared:
        return "evidence.shared";
    case EvidenceKind::suspectAlsoGood:
        return "evidence.also-good";
    case EvidenceKind::bucketMislabelled:
        return "evidence.mislabelled";
    case EvidenceKind::instrumentFailedCheck:
        return "evidence.check-failed";
    case EvidenceKind::fewCameBack:
        return "evidence.few-back";
    case EvidenceKind::noEvidence:
        break;
    }
    return "evidence.none";
}

const char* keyOf(NoFigure why) {
    switch (why) {
    case NoFigure::noReadings:
        return "no.readings";
    case NoFigure::noLots:
        return "no.lots";
    case NoFigure::tooFewEpisodes:
        return "no.few-episodes";
    case NoFigure::tooFewFailures:
        return "no.few-failures";
    case NoFigure::tooFewSurvivals:
        return "no.few-survivals";
    case NoFigure::tooFewFailedLots:
        return "no.few-failed-lots";
    case NoFigure::tooFewHeldLots:
        return "no.few-held-lots";
    case NoFigure::tooFewWeeks:
        return "no.few-weeks";
    case NoFigure::tooFewPairs:
        return "no.few-pairs";
    case NoFigure::allEqual:
        return "no.all-equal";
    case NoFigure::onlyStrips:
        return "no.only-strips";
    case NoFigure::tooManyOpen:
        return "no.too-open";
    case NoFigure::nothingFailed:
        return "no.nothing-failed";
    case NoFigure::everythingFailed:
        return "no.everything-failed";
    case NoFigure::oneEpisode:
        return "no.one-episode";
    case NoFigure::nothingToCompare:
        return "no.nothing-to-compare";
    case NoFigure::noChange:
        return "no.no-change";
    case NoFigure::separated:
        return "no.separated";
    case NoFigure::notFitted:
        return "no.not-fitted";
    case NoFigure::notFinite:
        return "no.not-finite";
    case NoFigure::nothingShared:
        return "no.nothing-shared";
    case NoFigure::tooEarly:
        break;
    }
    return "no.too-early";
}

std::string spanText(const shop::trending::TimeSpan& span, int utcOffsetMinutes, const Speech& speech) {
    const auto from = dayOf(span.from, utcOffsetMinutes);
    const auto to = dayOf(span.to, utcOffsetMinutes);
    return riskText(from == to ? "since-day" : "since-span", speech, {{"from", from}, {"to", to}});
}

template <class Row>
std::string nameAt(const std::vector<Row>& rows, records::FactIndex at) {
    return at == records::kNoFact ? std::string{} : rows[static_cast<std::size_t>(at)].name;
}

/// The word behind a remark's colon, without the blanks around it; empty: none.
std::string remarkOf(const std::string& kept) {
    const auto colon = kept.find(':');
    const auto begin = colon == std::string::npos ? colon : kept.find_first_not_of(' ', colon + 1);
    return begin == std::string::npos ? std::string{} : kept.substr(begin);
}

} // namespace

std::string levelText(const FactorLevel& level, const Speech& speech) {
    const Arguments name{{"name", level.name.empty() ? level.key : level.name},
                         {"number", std::to_string(level.number)}};
    switch (level.kind) {
    case FactorKind::dryer:
        return riskText("level.dryer", speech, name);
    case FactorKind::bucket:
        return riskText(level.isMix ? "level.mix" : "level.bucket", speech, name);
    case FactorKind::family:
        return riskText("level.family", speech, name);
    case FactorKind::fabric:
        return riskText("level.fabric", speech, name);
    case FactorKind::clothLot:
        return riskText("level.cloth-lot", speech, name);
    case FactorKind::finish:
        return riskText("level.finish", speech, name);
    case FactorKind::position:
        return riskText("level.position", speech, {{"name", word(level.position, speech)}});
    case FactorKind::washLoad:
        return riskText("level.load", speech, name);
    case FactorKind::instrument:
        return riskText("level.instrument", speech, name);
    case FactorKind::shift:
        break;
    }
    const auto shift = riskText(level.shift == 0 ? "shift.0" : level.shift == 1 ? "shift.1" : "shift.2", speech);
    return riskText("level.shift", speech, {{"name", shift}});
}

std::string oursText(shop::trending::IsItOurs ours, const Speech& speech) {
    using shop::trending::IsItOurs;
    switch (ours) {
    case IsItOurs::likely:
        return riskText("ours.likely", speech);
    case IsItOurs::possible:
        return riskText("ours.possible", speech);
    case IsItOurs::unlikely:
        return riskText("ours.unlikely", speech);
    case IsItOurs::unknown:
        break;
    }
    return riskText("ours.unknown", speech);
}

std::string evidenceText(const Evidence& evidence, const Speech& speech) {
    std::vector<std::string> parts;
    const bool onlyMissed = evidence.kind == EvidenceKind::itsReadingsUnproven && evidence.count == 0;
    if (!onlyMissed) {
        parts.push_back(riskText(keyOf(evidence), speech,
                                 {{"count", std::to_string(evidence.count)},
                                  {"of", std::to_string(evidence.of)},
                                  {"margin", marginOf(evidence, speech)},
                                  {"level", evidence.level ? levelText(*evidence.level, speech) : std::string{}}}));
    }
    if (evidence.missed > 0 || onlyMissed) {
        parts.push_back(riskText("evidence.readings-missed", speech, {{"count", std::to_string(evidence.missed)}}));
    }
    return parts.size() == 2 ? parts[0] + "; " + parts[1] : parts[0];
}

std::string nowText(const shop::deciding::ThenAndNow& shown, const Speech& speech) {
    using shop::deciding::JudgedNow;
    const Arguments arguments{{"name", shown.revised}, {"bucket", std::to_string(shown.bucket)}};
    switch (shown.why) {
    case JudgedNow::instrument:
        return riskText("now.instrument", speech);
    case JudgedNow::revised:
        return riskText("now.revised", speech, arguments);
    case JudgedNow::mislabelled:
        return riskText("now.mislabelled", speech, arguments);
    case JudgedNow::cannotBeJudged:
        return riskText("now.cannot", speech, arguments);
    case JudgedNow::same:
        break;
    }
    return riskText("now.same", speech);
}

std::string badText(const analytics::statistics::BadPieces& bad, std::int64_t pieces, const Speech& speech) {
    const auto likely = static_cast<std::int64_t>(std::llround(bad.expected));
    const Arguments arguments{{"bad", std::to_string(std::clamp(likely, bad.lower, bad.upper))},
                              {"pieces", std::to_string(pieces)},
                              {"low", std::to_string(bad.lower)},
                              {"high", std::to_string(bad.upper)}};
    if (bad.lower == bad.upper) {
        return riskText(bad.upper == 0 ? "bad-sure-none" : "bad-sure", speech, arguments);
    }
    return riskText(bad.lower == 0 && likely == 0 ? "bad-none" : "bad", speech, arguments);
}

std::string caveatText(LotModelCaveat caveat, const Speech& speech) {
    switch (caveat) {
    case LotModelCaveat::NothingBad:
        return riskText("caveat.nothing-bad", speech);
    case LotModelCaveat::EverythingBad:
        return riskText("caveat.everything-bad", speech);
    case LotModelCaveat::NothingRepeated:
        return riskText("caveat.nothing-repeated", speech);
    case LotModelCaveat::LotsAlike:
        return riskText("caveat.lots-alike", speech);
    case LotModelCaveat::FewLots:
        return riskText("caveat.few-lots", speech);
    case LotModelCaveat::None:
        break;
    }
    return {};
}

std::string suspectText(const Suspect& suspect, const Speech& speech) {
    const char* key = suspect.strength == Strength::strong ? "strength.strong"
                      : suspect.strength == Strength::weak ? "strength.weak"
                                                           : "strength.by-chance";
    return riskText(key, speech, {{"level", levelText(suspect.level, speech)}});
}

std::vector<std::string> suspectFor(const Suspect& suspect, const Speech& speech) {
    const auto counted = [&](const char* key, std::int64_t failed, std::int64_t with) {
        return riskText(key, speech, {{"failed", std::to_string(failed)}, {"with", std::to_string(with)}});
    };
    std::vector<std::string> all;
    if (suspect.failedWith > 0) {
        all.push_back(counted("suspect-with", suspect.failedWith, suspect.with));
        all.push_back(counted("suspect-without", suspect.failedWithout, suspect.without));
    }
    if (suspect.episodes > 1) {
        all.push_back(riskText("suspect-episodes", speech, {{"count", std::to_string(suspect.episodes)}}));
    }
    return all;
}

std::vector<std::string> suspectAgainst(const Suspect& suspect, const Speech& speech) {
    std::vector<std::string> all;
    const auto good = suspect.with - suspect.failedWith;
    if (good > 0) {
        all.push_back(
            riskText("suspect-good", speech, {{"good", std::to_string(good)}, {"with", std::to_string(suspect.with)}}));
    }
    if (suspect.failedWithout > 0) {
        all.push_back(
            riskText("suspect-failed-without", speech,
                     {{"failed", std::to_string(suspect.failedWithout)}, {"with", std::to_string(suspect.without)}}));
    }
    if (suspect.episodes == 1) {
        all.push_back(riskText("suspect-episodes", speech, {{"count", "1"}}));
    }
    if (!suspect.sameAs.empty()) {
        std::string names;
        for (const auto& twin : suspect.sameAs) {
            names += (names.empty() ? "" : ", ") + levelText(twin, speech);
        }
        all.push_back(riskText("suspect-twins", speech, {{"names", names}}));
    }
    if (suspect.trial) {
        all.push_back(riskText("suspect-trial", speech, {{"count", std::to_string(suspect.trial->perArm)}}));
    }
    return all;
}

std::string chanceText(double p, const Speech& speech) {
    constexpr double kRare = 0.001;
    constexpr double kOften = 0.05;
    if (!(p >= kRare)) {
        return riskText("by-chance-rarely", speech);
    }
    if (p > kOften) {
        return riskText("by-chance-often", speech, {{"percent", ofHundred(p)}});
    }
    return riskText("by-chance", speech, {{"count", wholeCount(1.0 / p)}});
}

std::string sinceText(const shop::trending::SinceWhen& since, int utcOffsetMinutes, const Speech& speech) {
    std::string spans;
    for (const auto& span : since.possible) {
        const auto one = spanText(span, utcOffsetMinutes, speech);
        spans = spans.empty() ? one : riskText("since-or", speech, {{"one", spans}, {"other", one}});
    }
    return riskText("since", speech, {{"spans", spans}}) + " " +
           riskText("since-rose", speech, {{"before", ofHundred(since.before)}, {"after", ofHundred(since.after)}});
}

std::string eventText(const records::TrendFacts& facts, const records::TrendEvent& event, const Speech& speech) {
    using Kind = records::TrendEventKind;
    const auto bucket = event.bucket == records::kNoFact
                            ? std::string{}
                            : std::to_string(facts.buckets[static_cast<std::size_t>(event.bucket)].number);
    const Arguments arguments{
        {"dryer", nameAt(facts.dryers, event.dryer)},
        {"instrument", nameAt(facts.instruments, event.instrument)},
        {"bucket", bucket},
        {"name", event.name},
        {"revision", std::to_string(event.revision.value_or(1))},
        {"belt", event.beltMetresPerMinute ? numberText(*event.beltMetresPerMinute, 2) : std::string{}},
        {"setPoint", event.setPoint ? speech.figures.temperature(*event.setPoint) : std::string{}}};
    switch (event.kind) {
    case Kind::beltSpeed:
        return riskText(event.beltMetresPerMinute ? "event.belt" : "event.belt-unknown", speech, arguments);
    case Kind::setPoint:
        return riskText(event.setPoint ? "event.set-point" : "event.set-point-unknown", speech, arguments);
    case Kind::newDryer:
        return riskText("event.new-dryer", speech, arguments);
    case Kind::familyRevised:
        return riskText("event.family", speech, arguments);
    case Kind::fabricRevised:
        return riskText("event.fabric", speech, arguments);
    case Kind::bucketOpened:
        return riskText("event.bucket", speech, arguments);
    case Kind::certificate:
        return riskText("event.certificate", speech, arguments);
    case Kind::checkPassed:
        return riskText("event.check-passed", speech, arguments);
    case Kind::checkFailed:
        return riskText("event.check-failed", speech, arguments);
    case Kind::problem:
        break;
    }
    return riskText("event.problem", speech, arguments);
}

std::string fixText(const shop::trending::FixVerdict& verdict, int utcOffsetMinutes, const Speech& speech) {
    if (verdict.worked) {
        return riskText("fix-worked", speech);
    }
    if (verdict.gotWorse) {
        return riskText("fix-worse", speech);
    }
    if (verdict.tooEarly) {
        return verdict.askAgain
                   ? riskText("fix-too-early", speech, {{"day", dayOf(*verdict.askAgain, utcOffsetMinutes)}})
                   : riskText("fix-never", speech);
    }
    return riskText("fix-not-shown", speech);
}

std::string whyText(const shop::trending::Refusal& refusal, const Speech& speech) {
    return riskText(keyOf(refusal.why), speech,
                    {{"have", std::to_string(refusal.have)}, {"need", std::to_string(refusal.need)}});
}

std::string nameOf(CureCause cause) {
    switch (cause) {
    case CureCause::underCured:
        return "under-cured";
    case CureCause::dryerLosingHeat:
        return "dryer-losing-heat";
    case CureCause::beltTooFast:
        return "belt-too-fast";
    case CureCause::mislabelledInk:
        return "mislabelled-ink";
    case CureCause::badMix:
        return "bad-mix";
    case CureCause::instrumentWrong:
        return "instrument-wrong";
    case CureCause::dampCloth:
        return "damp-cloth";
    case CureCause::clothFinish:
        return "cloth-finish";
    case CureCause::dyeBleed:
        return "dye-bleed";
    case CureCause::overheated:
        return "overheated";
    case CureCause::washTooHarsh:
        return "wash-too-harsh";
    case CureCause::falseAlarm:
        return "false-alarm";
    case CureCause::other:
        break;
    }
    return "other";
}

std::string word(CureCause cause, const Speech& speech) {
    return riskText(("cause." + nameOf(cause)).c_str(), speech);
}

std::string decidesText(CureCause cause, const Speech& speech) {
    return riskText(("decides." + nameOf(cause)).c_str(), speech);
}

std::string causeText(const std::string& kept, CureCause cause, const Speech& speech) {
    if (cause == CureCause::other) {
        return kept;
    }
    const auto remark = remarkOf(kept);
    return remark.empty() ? word(cause, speech) : word(cause, speech) + ": " + remark;
}

std::string sentence(shop::deciding::RiskHoldFault fault, const Speech& speech) {
    using shop::deciding::RiskHoldFault;
    switch (fault) {
    case RiskHoldFault::noPrintFailure:
        return riskText("fault.no-print-failure", speech);
    case RiskHoldFault::nothingLeft:
        return riskText("fault.nothing-left", speech);
    case RiskHoldFault::needsTheRight:
        break;
    }
    return riskText("fault.needs-the-right", speech);
}

} // namespace holdfast::kiosk::wording
