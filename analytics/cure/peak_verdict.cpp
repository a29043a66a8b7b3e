#include "analytics/cure/peak_verdict.hpp"

#include "analytics/cure/dose.hpp"

#include <algorithm>

namespace holdfast::analytics::judging {
namespace {

class PeakJudge final {
public:
    PeakJudge(const Frame& frame, const PeakShown& peak, std::optional<Duration> dwell, Findings findings)
        : m_frame{frame}, m_peak{peak}, m_dwell{dwell}, m_findings{std::move(findings)} {
        m_verdict.layers = blankLayers(frame);
    }

    [[nodiscard]] Verdict judge() {
        addStandingHindrances(m_frame, m_findings);
        for (std::size_t i = 0; i < m_verdict.layers.size(); ++i) {
            judgeLayer(i);
        }
        const auto& window = m_frame.window;
        if (window.upperHard && !isOver(*window.upperHard, ReasonCode::aboveHardCeiling)) {
            addIfNotBelow(*window.upperHard, ReasonCode::hardCeilingNotRuledOut, m_findings.hindered);
        }
        if (window.upperBleed && isOver(*window.upperBleed, ReasonCode::aboveBleedCeiling)) {
            m_verdict.bleedWatchDue = true;
        } else if (window.upperBleed) {
            m_verdict.bleedNotRuledOut =
                addIfNotBelow(*window.upperBleed, ReasonCode::bleedNotRuledOut, m_findings.notes);
        }
        conclude(m_frame, std::move(m_findings), m_verdict);
        return std::move(m_verdict);
    }

private:
    [[nodiscard]] std::optional<Temperature> surelyAtLeast(TemperatureDifference guard) const {
        return m_peak.low && guard.isFinite() ? std::optional{*m_peak.low - taken(guard)} : std::nullopt;
    }
    [[nodiscard]] std::optional<Temperature> surelyAtMost(TemperatureDifference guard) const {
        return m_peak.high && guard.isFinite() ? std::optional{*m_peak.high + taken(guard)} : std::nullopt;
    }
    [[nodiscard]] TemperatureDifference taken(TemperatureDifference guard) const noexcept {
        return m_peak.guarded ? TemperatureDifference{} : guard;
    }
    /// A limit as a reason names it: what has been taken off the peak already is not asked for again.
    [[nodiscard]] GuardedLimit said(const GuardedLimit& limit) const noexcept {
        return {limit.limit, taken(limit.guard)};
    }
    /// The peak to name in a sentence.
    [[nodiscard]] Temperature named() const noexcept {
        return m_peak.low ? *m_peak.low : m_peak.high.value_or(Temperature::fromCelsius(0));
    }

    void judgeLayer(std::size_t i) {
        const auto& layer = m_frame.plan->layers[i];
        const auto& requirement = m_frame.window.layers[i];
        auto& verdict = m_verdict.layers[i];
        const bool asksTime = requirement.pairs || requirement.hold > Duration{0};
        setMargin(requirement, verdict);
        if (m_peak.showsTooCool && fails(layer, requirement)) {
            verdict.word = Word::underCured;
            return;
        }
        if (asksTime) {
            addNeedsTrace(requirement);
            return;
        }
        const auto low = surelyAtLeast(requirement.cure.guard);
        if (m_peak.provesCure && low && atLeast(*low, requirement.cure.limit)) {
            verdict.word = Word::cured;
            m_findings.met.push_back(
                because(ReasonCode::reachedCure, requirement.position, *m_peak.low, said(requirement.cure)));
        } else if (m_peak.provesCure && !m_peak.guarded) {
            const bool over = atLeast(named(), requirement.cure.limit);
            m_findings.open.push_back(because(over ? ReasonCode::overCureWithinGuard : ReasonCode::underCureWithinGuard,
                                              requirement.position, named(), requirement.cure));
        } else if (m_peak.provesCure) {
            Reason reason = because(ReasonCode::stripInterval);
            reason.value = m_peak.low;
            reason.limit = m_peak.high;
            addOnce(m_findings.open, reason);
        }
    }

    void setMargin(const LayerRequirement& requirement, LayerVerdict& verdict) const {
        const auto over = [&](std::optional<Temperature> t) {
            return t ? std::optional{*t - requirement.cure.limit} : std::nullopt;
        };
        if (!m_peak.provesCure || requirement.pairs) {
            return;
        }
        MarginRange margin;
        if (requirement.hold > Duration{0}) {
            margin.high = over(m_peak.high); // the level kept for the hold lies at or below the peak
        } else {
            margin = {over(m_peak.low), over(m_peak.guarded ? m_peak.high : m_peak.low)};
        }
        if (margin.low || margin.high) {
            verdict.margin = margin;
        }
    }

    bool fails(const Layer& layer, const LayerRequirement& requirement) {
        const auto guard = [&](Temperature limit) { return m_frame.calibration->guardAt(limit, m_frame.guard); };
        bool any = false;
        for (const auto& condition : failingConditions(layer, requirement, guard)) {
            const auto highest = surelyAtMost(condition.limit.guard);
            if (!highest || !failsAtBest(condition, *highest, m_dwell)) {
                continue;
            }
            any = true;
            Reason reason = because(layer.ink.isMix() ? ReasonCode::mixPartTooCool : m_peak.tooCool,
                                    requirement.position, *m_peak.high, said(condition.limit));
            reason.subject = layer.ink.isMix() ? condition.name : std::string{};
            m_findings.tooCool.push_back(reason);
        }
        return any;
    }

    void addNeedsTrace(const LayerRequirement& requirement) {
        Reason reason =
            because(requirement.pairs ? ReasonCode::doseNeedsTrace : ReasonCode::holdNeedsTrace, requirement.position);
        reason.needed = requirement.pairs ? requirement.pairs->hotter.time : requirement.hold;
        addOnce(m_findings.hindered, reason);
    }

    bool isOver(const GuardedLimit& ceiling, ReasonCode code) {
        const auto low = surelyAtLeast(ceiling.guard);
        if (!low || !atLeast(*low, ceiling.limit)) {
            return false;
        }
        m_findings.tooHot.push_back(overCeiling(m_frame, m_peak.tooHot.value_or(code), *m_peak.low, said(ceiling)));
        return true;
    }

    bool addIfNotBelow(const GuardedLimit& ceiling, ReasonCode code, std::vector<Reason>& reasons) const {
        const auto high = surelyAtMost(ceiling.guard);
        if (!m_peak.rulesOut || (high && atMost(*high, ceiling.limit))) {
            return false;
        }
        reasons.push_back(because(code, m_peak.high.value_or(named()), said(ceiling)));
        return true;
    }

    const Frame& m_frame;
    const PeakShown& m_peak;
    std::optional<Duration> m_dwell;
    Findings m_findings;
    Verdict m_verdict;
};

} // namespace

Verdict judgePeak(const Frame& frame, const PeakShown& peak, std::optional<Duration> dwell, Findings findings) {
    return PeakJudge{frame, peak, dwell, std::move(findings)}.judge();
}

bool failsAtBest(const Condition& condition, Temperature highest, std::optional<Duration> dwell) noexcept {
    if (!condition.pairs) {
        return atMost(highest, condition.limit.limit);
    }
    if (atMost(highest, condition.gelLow)) {
        return true;
    }
    const EqualCureLaw law{*condition.pairs};
    return dwell && !atLeast(law.rateAt(highest) * *dwell, law.needed());
}

bool isImpossible(Temperature indicated, const Instrument& instrument) noexcept {
    if (!indicated.isFinite() || indicated.kelvin() < 0.0) {
        return true;
    }
    return instrument.range && (indicated < instrument.range->low || indicated > instrument.range->high);
}

} // namespace holdfast::analytics::judging
