#include "analytics/cure/ride/ride_signs.hpp"

#include "analytics/cure/findings.hpp"

#include <algorithm>
#include <cmath>

namespace holdfast::analytics {
namespace {

std::optional<RideSign> liftedSign(const RiseFit& fit, const Usual& usual, const SignRules& rules) {
    const auto tau = fit.curve.tau;
    const bool fast = tau < usual.tau.middle * rules.liftedTauShare &&
                      tau < usual.tau.middle - usual.tau.spread * rules.liftedTauSpreads;
    const auto still = std::max(rules.liftedFlutterLeast, usual.flutter * rules.liftedFlutterTimes);
    if (!fast || fit.flutter <= still) {
        return std::nullopt;
    }
    RideSign sign{RideSignKind::probeLifted, judging::because(ReasonCode::probeLifted)};
    sign.reason.duration = tau;
    sign.reason.needed = usual.tau.middle;
    sign.reason.difference = fit.flutter;
    return sign;
}

std::optional<RideSign> emptySign(const RiseFit& fit, const Usual& usual, const SignRules& rules) {
    const FirstOrderCurve film{usual.air.middle, fit.entry, usual.tau.middle};
    const auto expected = film.at(fit.inTunnel);
    // Curve against curve: a sustained peak lies below both.
    const auto hotter = fit.curve.at(fit.left - fit.from) - expected;
    if (!expected.isFinite() || hotter <= std::max(rules.emptyLeast, usual.air.spread * rules.emptySpreads)) {
        return std::nullopt;
    }
    RideSign sign{RideSignKind::emptyBelt, judging::because(ReasonCode::emptyBelt)};
    sign.reason.value = fit.sustained;
    sign.reason.other = expected;
    sign.reason.difference = hotter;
    return sign;
}

std::optional<RideSign> wetSign(const Pass& pass, const Usual* usual, const SignRules& rules) {
    const auto stretch = wetStretchOf(pass, usual, rules.wet);
    if (!stretch) {
        return std::nullopt;
    }
    RideSign sign{RideSignKind::wetCloth, judging::because(ReasonCode::wetCloth)};
    sign.reason.at = stretch->from;
    sign.reason.duration = stretch->lasted;
    sign.reason.value = stretch->level;
    return sign;
}

bool speaksOfHeatReached(ReasonCode code) noexcept {
    switch (code) {
    case ReasonCode::belowCure:
    case ReasonCode::holdTooShort:
    case ReasonCode::doseTooSmall:
    case ReasonCode::mixPartTooCool:
    case ReasonCode::reachedCure:
    case ReasonCode::reachedHold:
    case ReasonCode::reachedDose:
    case ReasonCode::retakePassed:
        return true;
    default:
        return false;
    }
}

bool speaksOfTooHot(ReasonCode code) noexcept {
    return code == ReasonCode::aboveHardCeiling || code == ReasonCode::aboveBleedCeiling;
}

bool isNote(ReasonCode code) noexcept {
    return code == ReasonCode::bleedNotRuledOut || code == ReasonCode::bleedsAnyway;
}

std::vector<Remedy> remediesOf(const Verdict& verdict) {
    std::vector<Reason> deciding;
    std::copy_if(verdict.reasons.begin(), verdict.reasons.end(), std::back_inserter(deciding), [&](const Reason& r) {
        const bool hot = speaksOfTooHot(r.code);
        return verdict.word == Word::overheated ? hot : !hot && !isNote(r.code);
    });
    auto remedies = judging::remediesFor(deciding);
    if (verdict.bleedWatchDue) {
        remedies.push_back(Remedy::watchForBleed);
    }
    return remedies;
}

void takeAwayMargins(Verdict& verdict) {
    verdict.margin.reset();
    verdict.conformance.reset();
    verdict.peakRange.reset();
    verdict.curedButForMargin = false;
    verdict.guard = TemperatureDifference{};
    const LayerVerdict* highest = nullptr;
    for (auto& layer : verdict.layers) {
        layer.margin.reset();
        if (layer.word != Word::overheated) {
            layer.word = Word::notProven;
        }
        if (!highest || highest->limit.limit < layer.limit.limit) {
            highest = &layer;
        }
    }
    if (highest) {
        verdict.guard = highest->limit.guard;
    }
}

void lift(Verdict& verdict, const Reason& reason) {
    auto& reasons = verdict.reasons;
    reasons.erase(
        std::remove_if(reasons.begin(), reasons.end(), [](const Reason& r) { return speaksOfHeatReached(r.code); }),
        reasons.end());
    const auto behindHot =
        std::find_if(reasons.begin(), reasons.end(), [](const Reason& r) { return !speaksOfTooHot(r.code); });
    const bool tooHot = behindHot != reasons.begin();
    reasons.insert(behindHot, reason);
    verdict.word = tooHot ? Word::overheated : Word::notProven;
    takeAwayMargins(verdict);
    verdict.remedies = remediesOf(verdict);
}

void name(Verdict& verdict, const Reason& reason) {
    judging::addOnce(verdict.reasons, reason);
    if (verdict.word == Word::cured) {
        return;
    }
    auto first = judging::remediesFor({reason});
    for (const auto remedy : verdict.remedies) {
        if (std::find(first.begin(), first.end(), remedy) == first.end()) {
            first.push_back(remedy);
        }
    }
    verdict.remedies = std::move(first);
}

bool saysLifted(const Verdict& verdict) noexcept {
    return std::any_of(verdict.reasons.begin(), verdict.reasons.end(),
                       [](const Reason& reason) { return reason.code == ReasonCode::probeLifted; });
}

} // namespace

std::vector<RideSign> rideSigns(const RiseFit* fit, const Pass& pass, const Usual* usual, const SignRules& rules) {
    std::vector<RideSign> signs;
    const auto add = [&](std::optional<RideSign> sign) {
        if (sign) {
            signs.push_back(std::move(*sign));
        }
    };
    if (fit && usual) {
        add(liftedSign(*fit, *usual, rules));
    }
    add(wetSign(pass, usual, rules));
    if (fit && usual && !has(signs, RideSignKind::probeLifted)) {
        add(emptySign(*fit, *usual, rules));
    }
    return signs;
}

bool has(const std::vector<RideSign>& signs, RideSignKind kind) noexcept {
    return std::any_of(signs.begin(), signs.end(), [&](const RideSign& sign) { return sign.kind == kind; });
}

Verdict withSigns(Verdict verdict, const std::vector<RideSign>& signs) {
    for (const auto& sign : signs) {
        if (sign.kind == RideSignKind::probeLifted && verdict.word != Word::refused && !saysLifted(verdict)) {
            lift(verdict, sign.reason);
        }
    }
    for (const auto& sign : signs) {
        if (sign.kind != RideSignKind::probeLifted && verdict.word != Word::refused) {
            name(verdict, sign.reason);
        }
    }
    return verdict;
}

} // namespace holdfast::analytics
