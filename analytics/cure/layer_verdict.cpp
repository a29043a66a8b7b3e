#include "analytics/cure/layer_verdict.hpp"

#include "analytics/cure/dose.hpp"
#include "analytics/cure/findings.hpp"
#include "analytics/cure/hold_level.hpp"

#include <algorithm>

namespace holdfast::analytics::judging {
namespace {

Temperature lowered(const GuardedLimit& limit) noexcept {
    return limit.limit - limit.guard;
}

Temperature raised(const GuardedLimit& limit) noexcept {
    return limit.limit + limit.guard;
}

/// At or below this nothing more counts as heat: the trace may be judged.
Temperature coldEnough(const Condition& condition) noexcept {
    return condition.pairs ? condition.gelLow - condition.limit.guard : lowered(condition.limit);
}

/// The pass with every gap that may have been at or above `level` filled in at its hidden top.
Pass withHiddenHeat(const PassEvidence& evidence, Temperature level) {
    const Pass& pass = evidence.pass();
    Pass filled;
    const auto fill = [&](const HiddenTop& gap) {
        for (const auto at : {gap.from, gap.to}) {
            filled.samples.push_back({at, gap.top, gap.top});
            filled.joins.push_back(Join::line);
        }
    };
    const auto hot = [&](Duration from) {
        return std::find_if(evidence.hidden().begin(), evidence.hidden().end(),
                            [&](const HiddenTop& gap) { return gap.from == from && atLeast(gap.top, level); });
    };
    if (!evidence.hidden().empty() && evidence.hidden().front().from < pass.samples.front().at &&
        atLeast(evidence.hidden().front().top, level)) {
        fill(evidence.hidden().front());
    }
    for (std::size_t i = 0; i < pass.samples.size(); ++i) {
        filled.samples.push_back(pass.samples[i]);
        if (i == pass.joins.size()) {
            break;
        }
        filled.joins.push_back(pass.joins[i]);
        const auto gap = pass.joins[i] == Join::gap ? hot(pass.samples[i].at) : evidence.hidden().end();
        if (gap != evidence.hidden().end()) {
            filled.joins.back() = Join::line;
            fill(*gap);
        }
    }
    return filled;
}

/// Time that may have been at or above L − g, gaps that may have been so hot counted whole.
Duration possibleHeat(const PassEvidence& evidence, const Condition& condition) {
    const auto level = lowered(condition.limit);
    const bool hides = std::any_of(evidence.hidden().begin(), evidence.hidden().end(),
                                   [&](const HiddenTop& gap) { return atLeast(gap.top, level); });
    const auto heat = [&](const Pass& pass) {
        return condition.unbroken ? longestSpellBridgingDips(pass, level, condition.limit.guard, true)
                                  : timeAtOrAbove(pass, level).total;
    };
    return hides ? heat(withHiddenHeat(evidence, level)) : heat(evidence.pass());
}

bool wasNeverHotter(const PassEvidence& evidence, Temperature level) noexcept {
    const auto hidden = evidence.hottestHidden();
    return atMost(evidence.notAbove(), level) && (!hidden || atMost(hidden->top, level));
}

/// What a complete trace gives of the thing asked: a time or a dose; absent with hold 0.
struct Shortfall final {
    bool failed = false;
    std::optional<Duration> got;
};

Shortfall shortfallOf(const Condition& condition, EvidenceShelf& shelf) {
    if (!condition.limit.guard.isFinite()) {
        return {};
    }
    const auto& evidence = shelf.at(coldEnough(condition));
    if (!evidence.complete()) {
        return {};
    }
    const bool cold = atMost(evidence.pass().samples.back().t, coldEnough(condition));
    if (condition.pairs) {
        const EqualCureLaw law{*condition.pairs};
        const auto dose = law.generousDose(evidence.pass(), evidence.hidden(), condition.limit.guard, condition.gelLow);
        return {cold && !atLeast(dose, law.needed()), dose};
    }
    if (condition.hold > Duration{0}) {
        const auto heat = possibleHeat(evidence, condition);
        return {cold && !atLeast(heat, condition.hold), heat};
    }
    return {wasNeverHotter(evidence, lowered(condition.limit)), std::nullopt};
}

/// The most by which the trace could be lowered and still meet the condition; one point, or only "at most" when the
/// trace is too short to meet it at any temperature.
std::optional<MarginRange> marginOf(const Condition& condition, const PassEvidence& evidence, bool reached) {
    const auto limit = condition.limit.limit;
    const auto point = [](TemperatureDifference d) { return MarginRange{d, d}; };
    std::optional<TemperatureDifference> margin;
    auto atMostFrom = limit;
    if (condition.pairs) {
        atMostFrom = condition.pairs->hotter.temperature;
        margin = EqualCureLaw{*condition.pairs}.margin(evidence.pass(), condition.limit.guard, reached);
    } else if (condition.hold > Duration{0}) {
        const KnownLevel known{raised(condition.limit), reached};
        const auto level = condition.unbroken
                               ? highestLevelKeptUnbroken(evidence.pass(), condition.hold, condition.limit.guard, known)
                               : highestLevelKept(evidence.pass(), condition.hold, known);
        margin = level ? std::optional{*level - limit} : std::nullopt;
    } else {
        return evidence.sustained() ? std::optional{point(evidence.sustained()->t - limit)} : std::nullopt;
    }
    if (margin) {
        return point(*margin);
    }
    const auto& samples = evidence.pass().samples;
    const auto coldest =
        std::min_element(samples.begin(), samples.end(), [](const auto& a, const auto& b) { return a.t < b.t; });
    return MarginRange{std::nullopt, coldest->t - atMostFrom};
}

Reason timed(ReasonCode code, int position, const Condition& condition, Duration got) {
    Reason reason = because(code, position);
    reason.limit = condition.limit.limit;
    reason.guard = condition.limit.guard;
    reason.duration = got;
    reason.needed = condition.pairs ? condition.pairs->hotter.time : condition.hold;
    return reason;
}

/// What a trace surely gave of the thing asked: time at or above L + g, or the cautious dose; 0 with hold 0.
struct Sure final {
    bool reached = false;
    Duration got{0};
};

Sure sureOf(const Condition& condition, const PassEvidence& evidence) {
    const Pass& pass = evidence.pass();
    const auto guard = condition.limit.guard;
    if (!guard.isFinite() || pass.startsHot || pass.unitInDoubt) {
        return {};
    }
    if (condition.pairs) {
        const EqualCureLaw law{*condition.pairs};
        const auto dose = law.cautiousDose(pass, guard);
        return {atLeast(dose, law.needed()), dose};
    }
    const auto level = raised(condition.limit);
    if (condition.hold > Duration{0}) {
        const auto held =
            condition.unbroken ? longestSpellBridgingDips(pass, level, guard, false) : timeAtOrAbove(pass, level).total;
        return {atLeast(held, condition.hold), held};
    }
    return {evidence.sustained() && atLeast(evidence.sustained()->t, level), Duration{0}};
}

bool isShortByLessThanOneInterval(const Condition& condition, Duration got, const Pass& pass) {
    const auto lacking = condition.hold - got;
    return !condition.pairs && lacking > Duration{0} && lacking < pass.medianInterval;
}

Reason whyTooCool(const Layer& layer, int position, const Condition& condition, const PassEvidence& evidence,
                  const Shortfall& shortfall) {
    if (layer.ink.isMix()) {
        Reason reason = because(ReasonCode::mixPartTooCool, position, evidence.raw()->t, condition.limit);
        reason.subject = condition.name;
        return reason;
    }
    if (!shortfall.got) {
        return because(ReasonCode::belowCure, position, evidence.raw()->t, condition.limit);
    }
    return timed(condition.pairs ? ReasonCode::doseTooSmall : ReasonCode::holdTooShort, position, condition,
                 *shortfall.got);
}

Reason whyReached(int position, const Condition& condition, const PassEvidence& evidence, Duration got) {
    if (condition.pairs || condition.hold > Duration{0}) {
        return timed(condition.pairs ? ReasonCode::reachedDose : ReasonCode::reachedHold, position, condition, got);
    }
    return because(ReasonCode::reachedCure, position, evidence.sustained()->t, condition.limit);
}

/// Neither reached nor failed, by a trace that could have told: what lacks.
void addWhyOpen(LowerFinding& finding, int position, const Condition& whole, const PassEvidence& evidence, Duration got,
                bool failsAsWhole) {
    const auto peak = evidence.sustained() ? evidence.sustained()->t : evidence.raw()->t;
    if (failsAsWhole) {
        finding.open.push_back(because(ReasonCode::mixBetweenPartAndWhole, position, peak, whole.limit));
    } else if (whole.pairs) {
        finding.open.push_back(timed(ReasonCode::doseWithinGuard, position, whole, got));
    } else if (whole.hold > Duration{0}) {
        finding.open.push_back(timed(ReasonCode::holdWithinGuard, position, whole, got));
        if (isShortByLessThanOneInterval(whole, got, evidence.pass())) {
            finding.open.push_back(timed(ReasonCode::holdShortByOneInterval, position, whole, got));
        }
    } else {
        const bool over = atLeast(peak, whole.limit.limit);
        finding.open.push_back(because(over ? ReasonCode::overCureWithinGuard : ReasonCode::underCureWithinGuard,
                                       position, peak, whole.limit));
    }
    const bool timedCondition = whole.pairs || whole.hold > Duration{0};
    if (timedCondition && !atMost(evidence.pass().samples.back().t, coldEnough(whole))) {
        finding.hindered.push_back(because(ReasonCode::cutOff, position, evidence.pass().samples.back().t,
                                           GuardedLimit{coldEnough(whole), whole.limit.guard}));
    }
    const auto hidden = evidence.hottestHidden();
    if (hidden && atLeast(hidden->top, coldEnough(whole))) {
        Reason reason = because(ReasonCode::gapHidesTop, position, hidden->top, whole.limit);
        reason.at = hidden->from;
        reason.duration = hidden->to - hidden->from;
        finding.open.push_back(reason);
    }
}

} // namespace

Condition conditionOf(const Layer& layer, const LayerRequirement& requirement) {
    const auto& family = layer.ink.requirement;
    return {family.name, requirement.cure, requirement.hold, family.unbroken, requirement.pairs, family.gelLow()};
}

std::vector<Condition> failingConditions(const Layer& layer, const LayerRequirement& requirement,
                                         const std::function<TemperatureDifference(Temperature)>& guard) {
    if (!layer.ink.isMix()) {
        return {conditionOf(layer, requirement)};
    }
    std::vector<Condition> conditions;
    for (const auto& part : layer.ink.parts) {
        const auto limit = part.pairs ? part.pairs->cooler.temperature : part.cure;
        const auto guardedLimit = part.pairs ? part.pairs->hotter.temperature : part.cure;
        conditions.push_back(
            {part.name, {limit, guard(guardedLimit)}, part.hold, part.unbroken, part.pairs, part.gelLow()});
    }
    return conditions;
}

LowerFinding judgeLower(const Layer& layer, const LayerRequirement& requirement, EvidenceShelf& shelf,
                        const std::function<TemperatureDifference(Temperature)>& guard) {
    LowerFinding finding;
    const auto whole = conditionOf(layer, requirement);
    const auto& evidence = shelf.at(lowered(whole.limit));
    if (evidence.empty()) {
        return finding;
    }
    const auto sure = sureOf(whole, evidence);
    finding.reached = sure.reached;
    if (evidence.complete() || (sure.reached && evidence.fallen())) {
        finding.margin = marginOf(whole, evidence, sure.reached);
    }
    if (sure.reached) {
        finding.met.push_back(whyReached(requirement.position, whole, evidence, sure.got));
        return finding;
    }
    for (const auto& condition : failingConditions(layer, requirement, guard)) {
        const auto shortfall = shortfallOf(condition, shelf);
        if (shortfall.failed) {
            finding.failed = true;
            finding.tooCool.push_back(
                whyTooCool(layer, requirement.position, condition, shelf.at(coldEnough(condition)), shortfall));
        }
    }
    if (!finding.failed && evidence.complete()) {
        const bool failsAsWhole = layer.ink.isMix() && shortfallOf(whole, shelf).failed;
        addWhyOpen(finding, requirement.position, whole, evidence, sure.got, failsAsWhole);
    }
    return finding;
}

} // namespace holdfast::analytics::judging
