#include "analytics/cure/prover.hpp"

#include <algorithm>
#include <limits>

namespace holdfast::analytics {
namespace {

constexpr Temperature kNoLimit = Temperature::fromCelsius(std::numeric_limits<double>::infinity());
constexpr Temperature kNothingLeft = Temperature::fromCelsius(-std::numeric_limits<double>::infinity());

/// Where a layer's guard is taken: at its cure, with pairs at the hotter.
Temperature guardedAt(const LayerRequirement& layer) noexcept {
    return layer.pairs ? layer.pairs->hotter.temperature : layer.cure.limit;
}

ReasonCode codeOf(CalibrationFault fault) noexcept {
    switch (fault) {
    case CalibrationFault::correctionBeyondClassFarFromLimit:
        return ReasonCode::correctionBeyondClass;
    case CalibrationFault::stripExpired:
        return ReasonCode::stripExpired;
    case CalibrationFault::noTolerance:
        return ReasonCode::noToleranceKnown;
    case CalibrationFault::noCertificateOrCheckInDate:
        break;
    }
    return ReasonCode::noCertificateOrCheckInDate;
}

Reason reasonOf(ReasonCode code) {
    Reason reason;
    reason.code = code;
    return reason;
}

} // namespace

Prover::Prover(const Calibration* instrument, const GuardSetting& guard, const WindowRules& rules) noexcept
    : m_instrument{instrument}, m_guard{guard}, m_rules{rules} {}

TemperatureDifference Prover::shortfall() const noexcept {
    return isKind(InstrumentKind::spot) ? m_rules.spotShortfall : TemperatureDifference{};
}

TemperatureDifference Prover::guardAt(Temperature limit) const noexcept {
    if (!m_instrument) {
        return {};
    }
    const auto guard = m_instrument->guardAt(limit, m_guard);
    return isStrip() ? guard + m_instrument->toleranceAt(limit).value_or(TemperatureDifference{}) : guard;
}

LayerRequirement Prover::requirementOf(const InkFamily& ink) const noexcept {
    LayerRequirement layer;
    layer.pairs = ink.pairs;
    layer.hold = ink.pairs ? Duration{0} : ink.hold;
    layer.cure.limit = ink.pairs ? ink.pairs->cooler.temperature : ink.cure;
    layer.cure.guard = guardAt(guardedAt(layer));
    return layer;
}

bool Prover::reachesRange(Temperature reach) const noexcept {
    if (!m_instrument || isStrip() || !m_instrument->instrument().range) {
        return true;
    }
    return atLeast(m_instrument->corrected(m_instrument->instrument().range->high), reach + shortfall());
}

Reach Prover::reachOf(const LayerRequirement& layer) const noexcept {
    const Reach reach{true, isStrip() ? layer.cure.limit : layer.cure.limit + layer.cure.guard};
    const bool asksTime = layer.pairs || layer.hold > Duration{0};
    const bool impossible =
        m_instrument && (isKind(InstrumentKind::gun) || (asksTime && seesNoTime()) ||
                         m_instrument->faultAt(guardedAt(layer)) || !reach.at.isFinite() || !reachesRange(reach.at));
    return {!impossible, reach.at};
}

Caps Prover::capsOf(const Ceilings& ceilings) const {
    if (m_instrument && ceilings.hard && m_instrument->faultAt(ceilings.hard->limit)) {
        return {kNothingLeft, kNoLimit, kNothingLeft};
    }
    if (isStrip()) {
        return stripCapsOf(ceilings);
    }
    Caps caps{kNoLimit, kNoLimit, kNoLimit};
    if (ceilings.hard) {
        caps.proves = ceilings.hard->limit - ceilings.hard->guard - shortfall();
        caps.showsBleed = caps.proves;
    }
    if (ceilings.bleed) {
        caps.overheats = ceilings.bleed->limit + ceilings.bleed->guard;
        caps.showsBleed = std::min(caps.proves, ceilings.bleed->limit - ceilings.bleed->guard - shortfall());
    }
    return caps;
}

Caps Prover::stripCapsOf(const Ceilings& ceilings) const {
    Caps caps{kNothingLeft, kNoLimit, kNothingLeft};
    for (const auto& steps : acceptedSteps(ceilings, kNothingLeft)) {
        const auto low = steps.dark - guardAt(steps.dark);
        caps.proves = std::max(caps.proves, low);
        if (steps.belowBleed) {
            caps.showsBleed = std::max(caps.showsBleed, low);
        }
    }
    return caps;
}

std::vector<AcceptedSteps> Prover::acceptedSteps(const Ceilings& ceilings, Temperature lower) const {
    std::vector<AcceptedSteps> accepted;
    if (!isStrip() || !m_instrument->instrument().strip) {
        return accepted;
    }
    const auto& steps = m_instrument->instrument().strip->steps;
    for (std::size_t i = 0; i < steps.size(); ++i) {
        const bool top = i + 1 == steps.size();
        const auto low = steps[i] - guardAt(steps[i]);
        const auto high = top ? kNoLimit : steps[i + 1] + guardAt(steps[i + 1]);
        const bool belowHard = !ceilings.hard || atMost(high, ceilings.hard->limit);
        const bool overheated = ceilings.bleed && atLeast(low, ceilings.bleed->limit);
        if (atLeast(low, lower) && belowHard && !overheated) {
            const bool belowBleed = !ceilings.bleed || atMost(high, ceilings.bleed->limit);
            accepted.push_back({steps[i], top ? std::nullopt : std::optional{steps[i + 1]}, belowBleed});
        }
    }
    return accepted;
}

bool Prover::proves(const Reach& reach, const Caps& caps) noexcept {
    return reach.possible && atMost(reach.at, caps.proves) && !atLeast(reach.at, caps.overheats);
}

bool Prover::showsBleed(const Reach& reach, const Caps& caps) noexcept {
    return atMost(reach.at, caps.showsBleed);
}

void Prover::addFaults(std::vector<Reason>& reasons, const std::vector<LayerRequirement>& layers,
                       const Ceilings& ceilings) const {
    const auto add = [&](Temperature limit) {
        const auto fault = m_instrument->faultAt(limit);
        const auto known = [&](const Reason& reason) { return reason.code == codeOf(*fault); };
        if (fault && std::none_of(reasons.begin(), reasons.end(), known)) {
            auto reason = reasonOf(codeOf(*fault));
            reason.subject = m_instrument->instrument().name;
            reasons.push_back(std::move(reason));
        }
    };
    for (const auto& layer : layers) {
        add(guardedAt(layer));
    }
    if (ceilings.hard) {
        add(ceilings.hard->limit);
    }
}

void Prover::addLayerReasons(std::vector<Reason>& reasons, const LayerRequirement& layer) const {
    const bool asksTime = layer.pairs || layer.hold > Duration{0};
    if (asksTime && seesNoTime()) {
        auto reason = reasonOf(layer.pairs ? ReasonCode::doseNeedsTrace : ReasonCode::holdNeedsTrace);
        reason.layer = layer.position;
        reason.needed = layer.pairs ? layer.pairs->hotter.time : layer.hold;
        reasons.push_back(std::move(reason));
    }
    const auto reach = layer.cure.limit + layer.cure.guard;
    if (reach.isFinite() && !reachesRange(reach)) {
        auto reason = reasonOf(ReasonCode::instrumentRangeTooShort);
        reason.layer = layer.position;
        reason.subject = m_instrument->instrument().name;
        reason.value = reach;
        reason.limit = m_instrument->corrected(m_instrument->instrument().range->high);
        reasons.push_back(std::move(reason));
    }
}

Reason Prover::capReason(const Ceilings& ceilings, const GuardedLimit& lower) const {
    auto reason = reasonOf(isStrip() ? ReasonCode::stripStepsDoNotFit : ReasonCode::guardTooWide);
    reason.subject = m_instrument->instrument().name;
    reason.guard = lower.guard;
    if (isStrip()) {
        reason.value = lower.limit;
        reason.limit = ceilings.hard ? std::optional{ceilings.hard->limit} : std::nullopt;
        return reason;
    }
    reason.value = lower.limit + lower.guard;
    if (ceilings.hard) {
        reason.limit = ceilings.hard->limit - ceilings.hard->guard - shortfall();
    } else if (ceilings.bleed) {
        reason.limit = ceilings.bleed->limit + ceilings.bleed->guard;
    }
    return reason;
}

std::vector<Reason> Prover::whyNot(const std::vector<LayerRequirement>& layers, const Ceilings& ceilings,
                                   const GuardedLimit& lower) const {
    std::vector<Reason> reasons;
    if (!m_instrument) {
        return reasons;
    }
    addFaults(reasons, layers, ceilings);
    if (isKind(InstrumentKind::gun)) {
        reasons.push_back(reasonOf(ReasonCode::surfaceOnly));
        return reasons;
    }
    const bool faulty = !reasons.empty();
    for (const auto& layer : layers) {
        addLayerReasons(reasons, layer);
    }
    const auto caps = capsOf(ceilings);
    const bool tooWide = !faulty && std::any_of(layers.begin(), layers.end(), [&](const LayerRequirement& layer) {
        const auto reach = isStrip() ? layer.cure.limit : layer.cure.limit + layer.cure.guard;
        return !atMost(reach, caps.proves) || atLeast(reach, caps.overheats) || !reach.isFinite();
    });
    if (tooWide) {
        reasons.push_back(capReason(ceilings, lower));
    }
    return reasons;
}

} // namespace holdfast::analytics
