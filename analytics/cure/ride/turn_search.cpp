#include "analytics/cure/ride/turn_search.hpp"

#include <algorithm>

namespace holdfast::analytics {
namespace {

constexpr int kHalvings = 30;
constexpr int kApproaches = 8;

} // namespace

TurnSearch::TurnSearch(const TurnRequest& request, const RunWindow& window, const TurnRules& rules)
    : m_request{request}, m_window{window}, m_rules{rules}, m_plans{request.plans}, m_ride{request.fit} {
    for (auto& plan : m_plans) {
        for (auto& layer : plan.layers) {
            layer.bucketTrouble.reset();
        }
    }
}

std::vector<Verdict> TurnSearch::verdicts(const Heating& heating) const {
    const auto trace = m_ride.trace(heating, m_request.calibration);
    std::vector<Verdict> verdicts;
    for (const auto& plan : m_plans) {
        verdicts.push_back(judgeRecording(plan, trace, m_request.calibration, m_request.guard).front());
    }
    return verdicts;
}

Verdict TurnSearch::judged(const Heating& heating) const {
    return joinReadings(verdicts(heating));
}

std::optional<Temperature> TurnSearch::highest() const noexcept {
    std::optional<Temperature> highest;
    if (m_window.upperHard) {
        highest = m_window.upperHard->limit - m_window.upperHard->guard;
    }
    if (m_window.upperBleed && !m_window.bleedNotProvable) {
        const auto bleed = m_window.upperBleed->limit - m_window.upperBleed->guard;
        highest = highest ? std::min(*highest, bleed) : bleed;
    }
    return highest;
}

bool TurnSearch::byTimeOrDose() const noexcept {
    return std::any_of(m_window.layers.begin(), m_window.layers.end(),
                       [](const LayerRequirement& layer) { return layer.hold.count() > 0.0 || layer.pairs; });
}

/// Whether every layer's margin is so many guards.
bool TurnSearch::margins(const Heating& heating, double guards) const {
    for (const auto& verdict : verdicts(heating)) {
        for (const auto& layer : verdict.layers) {
            if (!layer.margin || !layer.margin->low || !atLeast(*layer.margin->low, guards * layer.limit.guard)) {
                return false;
            }
        }
    }
    return true;
}

/// The least raw peak whose margins are so many guards: more heat is never less margin.
std::optional<Temperature> TurnSearch::least(const Knob& knob, Temperature reach, double guards) const {
    const auto reached = [&](Temperature rawPeak) {
        const auto heating = knob(rawPeak);
        return heating && margins(*heating, guards);
    };
    if (!reached(reach)) {
        return std::nullopt;
    }
    auto low = std::min(reach, m_window.lower);
    for (const auto& layer : m_window.layers) {
        low = std::min(low, layer.cure.limit);
    }
    auto high = reach;
    for (int i = 0; i < kHalvings; ++i) {
        const auto middle = low + (high - low) / 2.0;
        (reached(middle) ? high : low) = middle;
    }
    return high;
}

/// The raw peak, at most `top`, whose sustained peak is the aim; the distance between them changes little with it.
Temperature TurnSearch::rawPeakForAim(const Knob& knob, Temperature top) const {
    const auto aim = *m_window.aim;
    auto peak = aim + (m_request.fit.raw - m_request.fit.sustained);
    for (int i = 0; i < kApproaches; ++i) {
        const auto heating = knob(std::min(peak, top));
        if (!heating) {
            break;
        }
        peak = aim + (m_ride.rawPeak(*heating) - m_ride.sustainedPeak(*heating));
    }
    return std::min(peak, top);
}

std::optional<Temperature> TurnSearch::target(const Knob& knob, Temperature reach) const {
    const auto ceiling = highest();
    const auto top = ceiling ? std::min(*ceiling, reach) : reach;
    std::optional<Temperature> target;
    if (!byTimeOrDose()) {
        target = rawPeakForAim(knob, top);
    } else if (const auto cures = least(knob, top, 1.0)) {
        const auto wide = least(knob, top, m_rules.aimInGuards);
        target = wide ? *wide : top;
        if (ceiling) {
            target = std::min(*target, *cures + (top - *cures) / 2.0);
        }
    }
    const auto heating = target ? knob(*target) : std::nullopt;
    return heating && judged(*heating).word == Word::cured ? target : std::nullopt;
}

} // namespace holdfast::analytics
