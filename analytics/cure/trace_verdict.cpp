#include "analytics/cure/findings.hpp"
#include "analytics/cure/layer_verdict.hpp"
#include "analytics/cure/pass_evidence.hpp"

#include <algorithm>

namespace holdfast::analytics {
using namespace judging;

namespace {

/// One pass on its way to a verdict.
class PassJudge final {
public:
    PassJudge(const Frame& frame, const Pass& pass, const ReadingContext& context)
        : m_frame{frame}, m_pass{pass}, m_context{context}, m_shelf{pass}, m_evidence{
                                                                               m_shelf.at(lowestGate(frame.window))} {
        m_verdict.layers = blankLayers(frame);
    }

    [[nodiscard]] Verdict judge() {
        addStandingHindrances(m_frame, m_findings);
        if (m_pass.tooCoarse) {
            return tooCoarse();
        }
        if (!m_pass.everAbove80) {
            return withoutPass();
        }
        addTraceHindrances();
        judgeLayers();
        judgeCeilings();
        if (m_context.probeLifted) {
            liftProbe();
        }
        return concluded();
    }

private:
    /// The lowest L − g of the layers: a break that spoils the trace for any of them spoils it here.
    [[nodiscard]] static Temperature lowestGate(const RunWindow& window) {
        Temperature gate = window.layers.front().cure.limit - window.layers.front().cure.guard;
        for (const auto& layer : window.layers) {
            gate = std::min(gate, layer.cure.limit - layer.cure.guard);
        }
        return gate;
    }

    [[nodiscard]] auto guardAt() const {
        return [this](Temperature limit) { return m_frame.calibration->guardAt(limit, m_frame.guard); };
    }

    Verdict tooCoarse() {
        m_verdict.couldProve = false;
        Reason reason = because(ReasonCode::tooFewSamplesPerSecond);
        reason.duration = m_pass.medianInterval;
        m_findings.hindered.insert(m_findings.hindered.begin(), reason);
        conclude(m_frame, std::move(m_findings), m_verdict);
        m_verdict.curedButForMargin = false;
        return std::move(m_verdict);
    }

    /// No pass seen: refused, unless a print is known to have gone through and the trace shows every layer cold.
    Verdict withoutPass() {
        Reason reason = because(ReasonCode::noPassSeen);
        reason.value = m_evidence.raw() ? std::optional{m_evidence.raw()->t} : std::nullopt;
        const bool broken = m_evidence.spoiled().by != Join::line || m_pass.startsHot || m_pass.unitInDoubt;
        if (m_context.printKnownToHavePassed && !m_context.probeLifted && !broken && m_evidence.raw()) {
            judgeColdPass();
            if (!m_findings.tooCool.empty()) {
                m_findings.notes.push_back(reason);
                conclude(m_frame, std::move(m_findings), m_verdict);
                return std::move(m_verdict);
            }
        }
        Verdict verdict = refused(reason);
        if (m_pass.startsHot) {
            addStartsHot(verdict.reasons);
            verdict.remedies = remediesFor(verdict.reasons);
        }
        verdict.raw = m_evidence.raw();
        verdict.layers = std::move(m_verdict.layers);
        return verdict;
    }

    void judgeColdPass() {
        const auto hidden = m_evidence.hottestHidden();
        const auto hottest = hidden ? std::max(hidden->top, m_evidence.notAbove()) : m_evidence.notAbove();
        for (std::size_t i = 0; i < m_verdict.layers.size(); ++i) {
            const auto& requirement = m_frame.window.layers[i];
            for (const auto& condition : failingConditions(m_frame.plan->layers[i], requirement, guardAt())) {
                const auto& limit = condition.limit;
                if (limit.guard.isFinite() && atMost(hottest, limit.limit - limit.guard)) {
                    addOnce(m_findings.tooCool,
                            because(ReasonCode::belowCure, requirement.position, m_evidence.raw()->t, limit));
                    m_verdict.layers[i].word = Word::underCured;
                }
            }
        }
        m_verdict.raw = m_evidence.raw();
        m_verdict.sustained = m_evidence.sustained();
    }

    void addStartsHot(std::vector<Reason>& reasons) const {
        Reason reason = because(ReasonCode::startsHot);
        reason.value = m_pass.samples.empty() ? std::nullopt : std::optional{m_pass.samples.front().t};
        addOnce(reasons, reason);
    }

    void addTraceHindrances() {
        auto& hindered = m_findings.hindered;
        if (m_pass.startsHot) {
            addStartsHot(hindered);
        }
        if (m_pass.unitInDoubt) {
            addUnitInDoubt(hindered);
        }
        addBreak();
        if (m_pass.cutOff) {
            hindered.push_back(because(ReasonCode::cutOff));
        }
        if (m_pass.stoppedByHand) {
            hindered.push_back(because(ReasonCode::stoppedByHand));
        }
        if (!m_evidence.fallen() && m_evidence.spoiled().by == Join::line) {
            hindered.push_back(because(ReasonCode::notFallenBeforeEnd));
        }
        if (m_pass.secondOrLater) {
            m_findings.notes.push_back(because(ReasonCode::secondPass));
        }
    }

    void addUnitInDoubt(std::vector<Reason>& reasons) const {
        Reason reason = because(ReasonCode::unitInDoubt);
        if (!m_pass.samples.empty()) {
            const auto t = m_pass.samples.front().indicated;
            reason.value = t;
            reason.other = Temperature::fromCelsius(t.fahrenheit());
        }
        reasons.push_back(reason);
    }

    /// Never cured: what lies before a clock fault may show the lower limit reached or overheated (decisions 3.6), but
    /// how long the film was hot across the fault, and so "not hotter", cannot be known.
    void addBreak() {
        const auto& spoiled = m_evidence.spoiled();
        if (spoiled.by == Join::line) {
            return;
        }
        Reason reason = because(spoiled.by == Join::clockFault   ? ReasonCode::clockFault
                                : spoiled.by == Join::unitSwitch ? ReasonCode::unitSwitched
                                                                 : ReasonCode::jump);
        reason.at = spoiled.at;
        const auto& samples = m_pass.samples;
        const auto before = std::find_if(samples.begin(), samples.end(),
                                         [&](const CleanSample& sample) { return sample.at == spoiled.at; });
        if (spoiled.by == Join::jump && before != samples.end() && before + 1 != samples.end()) {
            reason.value = before->t;
            reason.other = (before + 1)->t;
        }
        m_findings.hindered.push_back(reason);
    }

    void judgeLayers() {
        for (std::size_t i = 0; i < m_verdict.layers.size(); ++i) {
            auto finding = judgeLower(m_frame.plan->layers[i], m_frame.window.layers[i], m_shelf, guardAt());
            auto& layer = m_verdict.layers[i];
            layer.word = finding.failed ? Word::underCured : finding.reached ? Word::cured : Word::notProven;
            layer.margin = finding.margin;
            move(finding.tooCool, m_findings.tooCool);
            move(finding.hindered, m_findings.hindered);
            move(finding.open, m_findings.open);
            move(finding.met, m_findings.met);
            judgeOwnCeiling(i);
        }
    }

    static void move(std::vector<Reason>& from, std::vector<Reason>& to) {
        to.insert(to.end(), std::make_move_iterator(from.begin()), std::make_move_iterator(from.end()));
    }

    /// The word of a layer whose own ink was overheated.
    void judgeOwnCeiling(std::size_t i) {
        const auto& ceiling = m_frame.plan->layers[i].ink.requirement.ceiling;
        auto& layer = m_verdict.layers[i];
        if (ceiling && layer.word != Word::underCured && m_evidence.sustained() &&
            atLeast(m_evidence.sustained()->t, *ceiling + guardAt()(*ceiling))) {
            layer.word = Word::overheated;
        }
    }

    void judgeCeilings() {
        m_verdict.sustained = m_evidence.sustained();
        m_verdict.raw = &m_evidence.pass() == &m_pass ? m_evidence.raw() : rawPeak(m_pass);
        if (!m_verdict.raw) {
            return;
        }
        const auto& window = m_frame.window;
        if (window.upper) {
            m_verdict.upperMargin = *window.upper - m_verdict.raw->t;
        }
        if (window.upperHard && !isOver(*window.upperHard, ReasonCode::aboveHardCeiling)) {
            addIfNotBelow(*window.upperHard, ReasonCode::hardCeilingNotRuledOut, m_findings.hindered);
        }
        if (window.upperBleed && isOver(*window.upperBleed, ReasonCode::aboveBleedCeiling)) {
            m_verdict.bleedWatchDue = true;
        } else if (window.upperBleed) {
            m_verdict.bleedNotRuledOut =
                addIfNotBelow(*window.upperBleed, ReasonCode::bleedNotRuledOut, m_findings.notes);
        }
    }

    bool isOver(const GuardedLimit& ceiling, ReasonCode code) {
        const auto& peak = m_evidence.sustained();
        if (!peak || !atLeast(peak->t, ceiling.limit + ceiling.guard)) {
            return false;
        }
        m_findings.tooHot.push_back(overCeiling(m_frame, code, peak->t, ceiling));
        return true;
    }

    /// Whether the trace, its gaps included, is not shown to have stayed at or below H − g; then says so in `reasons`.
    bool addIfNotBelow(const GuardedLimit& ceiling, ReasonCode code, std::vector<Reason>& reasons) const {
        const auto highest = ceiling.limit - ceiling.guard;
        // What lies behind a clock fault proves nothing, but it was seen.
        const auto notAbove = m_evidence.empty() ? m_verdict.raw->t : std::max(m_evidence.notAbove(), m_verdict.raw->t);
        const bool peakTooNear = !atMost(notAbove, highest);
        if (peakTooNear) {
            reasons.push_back(because(code, notAbove, ceiling));
        }
        const auto hidden = m_evidence.hottestHidden();
        const bool gapTooNear = hidden && !atMost(hidden->top, highest);
        if (gapTooNear) {
            Reason reason = because(ReasonCode::gapHidesTop, hidden->top, ceiling);
            reason.at = hidden->from;
            reason.duration = hidden->to - hidden->from;
            if (!peakTooNear && code == ReasonCode::bleedNotRuledOut) {
                reasons.push_back(because(code, hidden->top, ceiling));
            }
            addOnce(reasons, reason);
        }
        return peakTooNear || gapTooNear;
    }

    void liftProbe() {
        m_findings.hindered.insert(m_findings.hindered.begin(), because(ReasonCode::probeLifted));
        m_findings.tooCool.clear();
        m_findings.met.clear();
        for (auto& layer : m_verdict.layers) {
            layer.margin.reset();
            if (layer.word != Word::overheated) {
                layer.word = Word::notProven;
            }
        }
    }

    Verdict concluded() {
        conclude(m_frame, std::move(m_findings), m_verdict);
        if (m_verdict.raw && !m_context.probeLifted) {
            m_verdict.conformance = conformanceOf(m_frame, m_verdict, m_verdict.raw->t);
            m_verdict.peakRange = peakRange();
        }
        return std::move(m_verdict);
    }

    /// P − 2u to raw peak + 2u.
    [[nodiscard]] PeakRange peakRange() const {
        const auto low = m_verdict.sustained.value_or(*m_verdict.raw).t;
        const auto twice = 2.0 * m_frame.calibration->uncertaintyAt(low).ofMean();
        return {low - twice, m_verdict.raw->t + twice, false};
    }

    const Frame& m_frame;
    const Pass& m_pass;
    const ReadingContext& m_context;
    EvidenceShelf m_shelf;
    const PassEvidence& m_evidence;
    Findings m_findings;
    Verdict m_verdict;
};

} // namespace

std::vector<Verdict> judgeRecording(const RunPlan& plan, const RawTrace& trace, const Calibration& calibration,
                                    const GuardSetting& guard, const ReadingContext& context) {
    const auto frame = frameOf(plan, calibration, guard);
    if (!frame) {
        return {refused(because(ReasonCode::emptyLayerList))};
    }
    const auto cleaned = cleanRecording(trace, &calibration);
    int dropped = -cleaned.dropped[static_cast<std::size_t>(DropWhy::tail)]; // cooled down: nothing wrong with it
    for (const int count : cleaned.dropped) {
        dropped += count;
    }
    std::vector<Verdict> verdicts;
    for (const auto& pass : cleaned.passes) {
        verdicts.push_back(PassJudge{*frame, pass, context}.judge());
        if (dropped > 0) {
            Reason reason = because(ReasonCode::samplesDropped);
            reason.count = dropped;
            verdicts.back().reasons.push_back(reason);
        }
    }
    return verdicts;
}

} // namespace holdfast::analytics
