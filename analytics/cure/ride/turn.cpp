#include "analytics/cure/ride/turn.hpp"

#include "analytics/cure/ride/turn_search.hpp"

#include <algorithm>
#include <cmath>

namespace holdfast::analytics {
namespace {

constexpr double kSameFactor = 1e-6;
constexpr TemperatureDifference kSameTemperature = TemperatureDifference::fromCelsius(1e-6);

bool positive(const std::optional<double>& value) noexcept {
    return !value || (std::isfinite(*value) && *value > 0.0);
}

bool finite(const std::optional<Temperature>& value) noexcept {
    return !value || value->isFinite();
}

bool usable(const RiseFit& fit) noexcept {
    const auto sound = [](Duration time) { return std::isfinite(time.count()) && time.count() > 0.0; };
    return sound(fit.curve.tau) && sound(fit.inTunnel) && sound(fit.shortest.tau) && sound(fit.longest.tau) &&
           fit.curve.air.isFinite() && fit.raw.isFinite() && fit.sustained.isFinite() && fit.entry.isFinite() &&
           fit.raw > fit.entry && fit.curve.air > fit.entry;
}

bool usable(const DryerSettings& dryer) noexcept {
    return positive(dryer.heatedLengthMetres) && positive(dryer.beltMetresPerMinute) &&
           positive(dryer.slowestMetresPerMinute) && positive(dryer.fastestMetresPerMinute) && finite(dryer.setPoint) &&
           finite(dryer.highestSetPoint);
}

/// The belt's window, or why nothing can be turned towards it.
tl::expected<RunWindow, NoTurn> windowOfBelt(const TurnRequest& request) {
    std::vector<RunWindow> windows;
    for (const auto& plan : request.plans) {
        auto window = windowOf(plan, &request.calibration, request.guard);
        if (!window) {
            return tl::unexpected{NoTurn::badInput};
        }
        windows.push_back(std::move(*window));
    }
    auto belt = windows.size() == 1 ? std::optional{windows.front()} : intersectionOf(windows);
    if (!belt) {
        return tl::unexpected{NoTurn::badInput};
    }
    if (belt->state == WindowState::closed) {
        return tl::unexpected{NoTurn::windowClosed};
    }
    if (belt->state == WindowState::notProvable || !belt->aim) {
        return tl::unexpected{NoTurn::notProvable};
    }
    return std::move(*belt);
}

/// The two knobs, one at a time.
class Turner final {
public:
    Turner(const TurnRequest& request, const RunWindow& window, const TurnRules& rules)
        : m_request{request}, m_window{window}, m_rules{rules}, m_search{request, window, rules} {}

    [[nodiscard]] tl::expected<TurnProposal, NoTurn> turn() const {
        const auto belt = beltTarget();
        const bool fallsShort = belt && belt->atSlowest && !reachesAim(atFactor(belt->factor));
        // At its slowest the belt may cure and yet fall short of the aim: then the air is asked first.
        if (belt && !fallsShort) {
            return byBelt(belt->factor);
        }
        if (const auto change = setPointChange(m_request.fit.inTunnel)) {
            return bySetPoint(*change);
        }
        return belt ? byBelt(belt->factor) : firstOfBoth();
    }

private:
    [[nodiscard]] const PredictedRide& ride() const noexcept { return m_search.ride(); }

    /// Speeds the belt may be asked for, over the speed as ridden.
    [[nodiscard]] double slowestFactor() const noexcept {
        const auto& dryer = m_request.dryer;
        const double most = 1.0 / m_rules.mostBeltFactor;
        return dryer.beltMetresPerMinute && dryer.slowestMetresPerMinute
                   ? std::max(most, *dryer.slowestMetresPerMinute / *dryer.beltMetresPerMinute)
                   : most;
    }
    [[nodiscard]] double fastestFactor() const noexcept {
        const auto& dryer = m_request.dryer;
        const double most = m_rules.mostBeltFactor;
        return dryer.beltMetresPerMinute && dryer.fastestMetresPerMinute
                   ? std::min(most, *dryer.fastestMetresPerMinute / *dryer.beltMetresPerMinute)
                   : most;
    }

    struct BeltTarget final {
        double factor = 1.0;
        bool atSlowest = false;
    };

    [[nodiscard]] std::optional<BeltTarget> beltTarget() const {
        const auto knob = [this](Temperature peak) -> std::optional<Heating> {
            const auto time = ride().timeFor(peak);
            return time ? std::optional{Heating{*time, {}}} : std::nullopt;
        };
        const auto target = m_search.target(knob, ride().rawPeak(atFactor(slowestFactor())));
        if (!target) {
            return std::nullopt;
        }
        const double factor = m_request.fit.inTunnel / knob(*target)->inTunnel;
        const bool within =
            factor >= slowestFactor() * (1.0 - kSameFactor) && factor <= fastestFactor() * (1.0 + kSameFactor);
        return within ? std::optional{BeltTarget{factor, factor <= slowestFactor() * (1.0 + kSameFactor)}}
                      : std::nullopt;
    }

    [[nodiscard]] tl::expected<TurnProposal, NoTurn> byBelt(double factor) const {
        if (std::abs(factor - 1.0) < m_rules.leastBeltStep) {
            return tl::unexpected{NoTurn::nothingToTurn};
        }
        return proposeBelt(factor);
    }

    [[nodiscard]] tl::expected<TurnProposal, NoTurn> bySetPoint(TemperatureDifference change) const {
        if (change.magnitude() < m_rules.leastSetPointStep) {
            return tl::unexpected{NoTurn::nothingToTurn};
        }
        return proposeSetPoint(change);
    }

    [[nodiscard]] bool reachesAim(const Heating& heating) const noexcept {
        return atLeast(ride().sustainedPeak(heating), *m_window.aim);
    }

    [[nodiscard]] Heating atFactor(double factor) const noexcept { return {m_request.fit.inTunnel / factor, {}}; }

    [[nodiscard]] TemperatureDifference mostSetPoint() const noexcept {
        const auto& dryer = m_request.dryer;
        return dryer.setPoint && dryer.highestSetPoint ? std::clamp(*dryer.highestSetPoint - *dryer.setPoint,
                                                                    TemperatureDifference{}, m_rules.mostSetPointInAll)
                                                       : m_rules.mostSetPointInAll;
    }

    /// The change of set-point that does in this time.
    [[nodiscard]] std::optional<TemperatureDifference> setPointChange(Duration inTunnel) const {
        const auto knob = [&](Temperature peak) -> std::optional<Heating> {
            return Heating{inTunnel, ride().hotterFor(peak, inTunnel)};
        };
        const auto target = m_search.target(knob, ride().rawPeak({inTunnel, mostSetPoint()}));
        if (!target) {
            return std::nullopt;
        }
        const auto change = ride().hotterFor(*target, inTunnel);
        return change.magnitude() <= m_rules.mostSetPointInAll + kSameTemperature ? std::optional{change}
                                                                                  : std::nullopt;
    }

    /// Neither knob does alone. If both would together, the belt goes first, one step of the way to its end.
    [[nodiscard]] tl::expected<TurnProposal, NoTurn> firstOfBoth() const {
        const double end = m_search.reaches(ride().asRidden()) ? fastestFactor() : slowestFactor();
        const auto change = setPointChange(atFactor(end).inTunnel);
        if (!change) {
            return tl::unexpected{NoTurn::noSettingDoes};
        }
        if (std::abs(end - 1.0) < m_rules.leastBeltStep) {
            return bySetPoint(*change);
        }
        auto proposal = proposeBelt(end);
        if (!proposal.partOfTheWay) {
            proposal.partOfTheWay = true;
            proposal.cautions = cautionsOf(proposal);
        }
        proposal.aim = ride().sustainedPeak({atFactor(end).inTunnel, *change});
        return proposal;
    }

    [[nodiscard]] TurnProposal proposeBelt(double whole) const {
        const double factor = std::clamp(whole, 1.0 - m_rules.mostBeltStep, 1.0 + m_rules.mostBeltStep);
        TurnProposal proposal;
        proposal.knob = factor < 1.0 ? TurnKnob::beltSlower : TurnKnob::beltFaster;
        proposal.beltFactor = factor;
        if (const auto& speed = m_request.dryer.beltMetresPerMinute) {
            proposal.beltMetresPerMinute = *speed * factor;
        }
        proposal.partOfTheWay = factor != whole;
        proposal.aim = ride().sustainedPeak(atFactor(whole));
        const auto heating = atFactor(factor);
        proposal.rideAgainAfter = m_rules.beltSettles + heating.inTunnel * m_rules.dwellsLoaded;
        proposal.assumptions = {TurnAssumption::timeFollowsBelt, TurnAssumption::airStaysAsIs,
                                TurnAssumption::loadStaysAsIs};
        finish(proposal, heating);
        return proposal;
    }

    [[nodiscard]] TurnProposal proposeSetPoint(TemperatureDifference whole) const {
        const auto change = std::clamp(whole, -m_rules.mostSetPointStep, m_rules.mostSetPointStep);
        TurnProposal proposal;
        proposal.knob = change.celsius() > 0.0 ? TurnKnob::setPointUp : TurnKnob::setPointDown;
        proposal.setPointChange = change;
        if (const auto& setPoint = m_request.dryer.setPoint) {
            proposal.setPoint = *setPoint + change;
        }
        proposal.partOfTheWay = change != whole;
        proposal.aim = ride().sustainedPeak({m_request.fit.inTunnel, whole});
        const Heating heating{m_request.fit.inTunnel, change};
        proposal.rideAgainAfter = m_rules.setPointSettles + heating.inTunnel * m_rules.dwellsLoaded;
        proposal.assumptions = {TurnAssumption::airFollowsSetPoint, TurnAssumption::loadStaysAsIs};
        finish(proposal, heating);
        return proposal;
    }

    void finish(TurnProposal& proposal, const Heating& heating) const {
        proposal.predicted = ride().sustainedPeak(heating);
        proposal.predictedLow = ride().lowestPeak(heating);
        proposal.predictedHigh = ride().highestPeak(heating);
        proposal.word = m_search.judged(heating).word;
        proposal.dwell = dwellDisagreementOf(m_request.fit, m_request.dryer, m_rules);
        proposal.cautions = cautionsOf(proposal);
    }

    [[nodiscard]] bool mayMiss(const TurnProposal& proposal) const {
        const auto highest = m_search.highest();
        if (highest && proposal.predictedHigh > *highest) {
            return true;
        }
        return std::any_of(m_window.layers.begin(), m_window.layers.end(), [&](const LayerRequirement& layer) {
            return proposal.predictedLow < layer.cure.limit + layer.cure.guard;
        });
    }

    [[nodiscard]] bool driesByTime() const {
        const auto wet = [](const Layer& layer) {
            const auto chemistry = layer.ink.requirement.chemistry;
            return chemistry == Chemistry::waterBased || chemistry == Chemistry::discharge;
        };
        return std::any_of(m_request.plans.begin(), m_request.plans.end(), [&](const RunPlan& plan) {
            return std::any_of(plan.layers.begin(), plan.layers.end(), wet);
        });
    }

    [[nodiscard]] std::vector<TurnCaution> cautionsOf(const TurnProposal& proposal) const {
        const bool more = proposal.knob == TurnKnob::beltSlower || proposal.knob == TurnKnob::setPointUp;
        std::vector<TurnCaution> cautions;
        const auto add = [&](bool applies, TurnCaution caution) {
            if (applies) {
                cautions.push_back(caution);
            }
        };
        add(proposal.partOfTheWay, TurnCaution::onlyPartOfTheWay);
        add(!proposal.partOfTheWay && mayMiss(proposal), TurnCaution::mayMiss);
        add(more, TurnCaution::beyondWhatWasSeen);
        add(more, TurnCaution::watchCloth);
        add(proposal.knob == TurnKnob::beltFaster && driesByTime(), TurnCaution::lessTimeToDry);
        add(!m_window.upper, TurnCaution::noCeilingKnown);
        add(proposal.dwell.has_value(), TurnCaution::dwellDisagrees);
        cautions.push_back(TurnCaution::dataSheetGoverns);
        return cautions;
    }

    const TurnRequest& m_request;
    const RunWindow& m_window;
    const TurnRules& m_rules;
    TurnSearch m_search;
};

} // namespace

std::optional<DwellDisagreement> dwellDisagreementOf(const RiseFit& fit, const DryerSettings& dryer,
                                                     const TurnRules& rules) noexcept {
    if (!dryer.heatedLengthMetres || !dryer.beltMetresPerMinute || !(*dryer.heatedLengthMetres > 0.0) ||
        !(*dryer.beltMetresPerMinute > 0.0)) {
        return std::nullopt;
    }
    const Duration fromBelt{*dryer.heatedLengthMetres / *dryer.beltMetresPerMinute * 60.0};
    const double off = std::abs(std::log(fit.inTunnel / fromBelt));
    if (off <= std::log1p(rules.dwellOff)) {
        return std::nullopt;
    }
    return DwellDisagreement{fromBelt, fit.inTunnel};
}

tl::expected<TurnProposal, NoTurn> turnThisMuch(const TurnRequest& request, const TurnRules& rules) {
    if (!request.signs.empty()) {
        return tl::unexpected{NoTurn::rideNotTrusted};
    }
    if (request.plans.empty() || !usable(request.fit) || !usable(request.dryer)) {
        return tl::unexpected{NoTurn::badInput};
    }
    const auto window = windowOfBelt(request);
    if (!window) {
        return tl::unexpected{window.error()};
    }
    return Turner{request, *window, rules}.turn();
}

} // namespace holdfast::analytics
