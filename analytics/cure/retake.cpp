#include "analytics/cure/findings.hpp"

#include <algorithm>

namespace holdfast::analytics {
namespace {

using namespace judging;

/// The retake spends a fifth of the risk: a film at exactly L passes one reading in 5 %, the better of two in 10 %,
/// this in 5.4 %.
constexpr double kShareOfRisk = 5.0;

bool hasMargin(const Verdict& verdict) noexcept {
    return verdict.margin && std::all_of(verdict.layers.begin(), verdict.layers.end(), [](const LayerVerdict& layer) {
               return layer.margin && (layer.margin->low || layer.margin->high);
           });
}

std::optional<TemperatureDifference> mean(const std::optional<TemperatureDifference>& a,
                                          const std::optional<TemperatureDifference>& b) noexcept {
    return a && b ? std::optional{(*a + *b) / 2.0} : std::nullopt;
}

MarginRange meanOf(const MarginRange& a, const MarginRange& b) noexcept {
    return {mean(a.low, b.low), mean(a.high, b.high)};
}

/// What the mean margin must reach at a limit. A strip's margin has z·u_p taken off already, so that much is given
/// back.
TemperatureDifference neededAt(Temperature limit, const Calibration& calibration, const GuardSetting& guard) {
    const GuardSetting stricter{Probability::fromFraction(guard.risk.fraction() / kShareOfRisk)};
    const auto u = calibration.uncertaintyAt(limit);
    const auto needed = stricter.z() * u.ofMean(2);
    const bool strip = calibration.instrument().kind == InstrumentKind::strip;
    return strip ? needed - guard.z() * u.ofMean() : needed;
}

/// Both readings on their mean margin, layer by layer.
class MeanJudge final {
public:
    MeanJudge(const Frame& frame, const Verdict& first, const Verdict& second)
        : m_frame{frame}, m_first{first}, m_second{second}, m_joined{joinReadings({first, second})} {}

    [[nodiscard]] Verdict judge() {
        m_joined.word = Word::notProven;
        m_joined.layers = m_second.layers;
        m_joined.conformance.reset();
        bool passed = m_first.curedButForMargin && m_second.curedButForMargin;
        for (std::size_t i = 0; i < m_joined.layers.size(); ++i) {
            passed = judgeLayer(i) && passed;
        }
        m_joined.curedButForMargin = m_first.curedButForMargin && m_second.curedButForMargin;
        finish(passed);
        return std::move(m_joined);
    }

private:
    bool judgeLayer(std::size_t i) {
        auto& layer = m_joined.layers[i];
        layer.margin = meanOf(*m_first.layers[i].margin, *m_second.layers[i].margin);
        layer.limit.guard = neededAt(guardedAt(m_frame.window.layers[i]), *m_frame.calibration, m_frame.guard);
        const bool passed =
            layer.margin->low && layer.limit.guard.isFinite() && atLeast(*layer.margin->low, layer.limit.guard);
        layer.word = passed ? Word::cured : Word::notProven;
        const auto slack = [](const LayerVerdict& l) { return *l.margin->low - l.limit.guard; };
        if (layer.margin->low && (!m_decisive || slack(layer) < slack(*m_decisive))) {
            m_decisive = &layer;
        }
        return passed;
    }

    void finish(bool passed) {
        if (m_decisive) {
            m_joined.margin = m_decisive->margin;
            m_joined.guard = m_decisive->limit.guard;
        }
        if (m_first.upperMargin && m_second.upperMargin) {
            m_joined.upperMargin = std::min(*m_first.upperMargin, *m_second.upperMargin);
        }
        Reason reason = because(passed ? ReasonCode::retakePassed : ReasonCode::retakeUsedUp);
        if (passed) {
            m_joined.word = Word::cured;
            m_joined.remedies.clear();
            if (m_joined.bleedWatchDue) {
                m_joined.remedies.push_back(Remedy::watchForBleed);
            }
        }
        if (m_decisive) {
            reason.layer = m_decisive->position;
            reason.difference = m_decisive->margin->low;
            reason.guard = m_decisive->limit.guard;
        }
        m_joined.reasons.insert(m_joined.reasons.begin(), reason);
    }

    const Frame& m_frame;
    const Verdict& m_first;
    const Verdict& m_second;
    Verdict m_joined;
    const LayerVerdict* m_decisive = nullptr;
};

} // namespace

Verdict judgeRetake(const RunPlan& plan, const Verdict& first, const Verdict& second, const Calibration& calibration,
                    const GuardSetting& guard) {
    const auto frame = frameOf(plan, calibration, guard);
    const bool mayRetake = frame && first.word == Word::notProven && first.couldProve;
    const bool secondShows = second.word == Word::underCured || second.word == Word::overheated;
    if (!mayRetake || secondShows) {
        return joinReadings({first, second});
    }
    const std::size_t layers = frame->window.layers.size();
    if (second.layers.size() != layers || !hasMargin(second)) {
        return first; // the retake is not used up
    }
    if (first.layers.size() != layers || !hasMargin(first)) {
        return second; // there was nothing to retake: the second stands alone
    }
    return MeanJudge{*frame, first, second}.judge();
}

} // namespace holdfast::analytics
