#include "analytics/cure/joint_window.hpp"

#include "analytics/metrology/aim.hpp"

#include <algorithm>
#include <cassert>

namespace holdfast::analytics {
namespace {

/// The lowest of the ceilings of one sort; of equal ones the fabric's, which comes last.
const Ceiling* lowestCeiling(const std::vector<Ceiling>& ceilings, bool bleed) {
    const Ceiling* lowest = nullptr;
    for (const auto& ceiling : ceilings) {
        if (ceiling.bleed == bleed && (!lowest || ceiling.at.limit <= lowest->at.limit)) {
            lowest = &ceiling;
        }
    }
    return lowest;
}

std::optional<GuardedLimit> smallerUpper(const RunWindow& window) {
    if (window.upperHard && window.upperBleed) {
        return window.upperBleed->limit < window.upperHard->limit ? window.upperBleed : window.upperHard;
    }
    return window.upperHard ? window.upperHard : window.upperBleed;
}

Culprit culpritFrom(const LayerRequirement& layer) {
    return {CulpritKind::layer, layer.position, layer.colour, layer.cure.limit, CulpritSide::below};
}

/// One entry per layer or fabric, with its lower ceiling.
void addAbove(std::vector<Culprit>& culprits, const Ceiling& ceiling) {
    const auto same = std::find_if(culprits.begin(), culprits.end(), [&](const Culprit& culprit) {
        return culprit.side == CulpritSide::above && culprit.kind == ceiling.kind &&
               culprit.position == ceiling.position && culprit.name == ceiling.name;
    });
    if (same != culprits.end()) {
        same->limit = std::min(same->limit, ceiling.at.limit);
    } else {
        culprits.push_back({ceiling.kind, ceiling.position, ceiling.name, ceiling.at.limit, CulpritSide::above});
    }
}

template <class Offends>
void addBelow(std::vector<Culprit>& culprits, const RunWindow& window, Offends offends) {
    for (const auto& layer : window.layers) {
        if (offends(layer)) {
            culprits.push_back(culpritFrom(layer));
        }
    }
}

/// Width of what is accepted; absent when it has no upper end.
std::optional<TemperatureDifference> widthOf(const RunWindow& window) {
    if (window.readByStrip) {
        const auto counts = [&](const AcceptedSteps& s) { return s.belowBleed || window.bleedNotProvable; };
        const auto first = std::find_if(window.acceptedSteps.begin(), window.acceptedSteps.end(), counts);
        const auto last = std::find_if(window.acceptedSteps.rbegin(), window.acceptedSteps.rend(), counts);
        return last->light ? std::optional{*last->light - first->dark} : std::nullopt;
    }
    auto high = window.acceptance->high;
    if (window.acceptance->highBleed && !window.bleedNotProvable) {
        high = high ? std::min(*high, *window.acceptance->highBleed) : *window.acceptance->highBleed;
    }
    return high ? std::optional{*high - window.acceptance->low} : std::nullopt;
}

} // namespace

void settleLimits(RunWindow& window) {
    assert(!window.layers.empty());
    window.lower = window.layers.front().cure.limit;
    window.lowerLayer = window.layers.front().position;
    for (const auto& layer : window.layers) {
        if (layer.cure.limit > window.lower) {
            window.lower = layer.cure.limit;
            window.lowerLayer = layer.position;
        }
        if (layer.hold > window.hold) {
            window.hold = layer.hold;
            window.holdLayer = layer.position;
        }
        if (layer.bleeds) {
            window.bleeds.push_back(layer.position);
        }
    }
    if (const auto* hard = lowestCeiling(window.ceilings, false)) {
        window.upperHard = hard->at;
        window.upperHardLayer = hard->position;
    }
    if (const auto* bleed = lowestCeiling(window.ceilings, true)) {
        window.upperBleed = bleed->at;
    }
    if (const auto upper = smallerUpper(window)) {
        window.upper = upper->limit;
    }
}

Ceilings ceilingsOf(const RunWindow& window) {
    return {window.upperHard, window.upperBleed};
}

bool isClosed(const RunWindow& window, const WindowRules& rules) {
    return (window.upperHard && !atMost(window.lower, window.upperHard->limit)) ||
           (window.upperBleed && !atMost(window.lower + rules.leastBleedRoom, window.upperBleed->limit));
}

const LayerRequirement& bindingLayer(const std::vector<LayerRequirement>& layers) {
    return *std::max_element(layers.begin(), layers.end(), [](const LayerRequirement& a, const LayerRequirement& b) {
        return a.cure.limit + a.cure.guard < b.cure.limit + b.cure.guard;
    });
}

AcceptanceZone zoneOf(const RunWindow& window, TemperatureDifference shortfall) {
    const auto end = [&](const std::optional<GuardedLimit>& ceiling) {
        return ceiling ? std::optional{ceiling->limit - ceiling->guard - shortfall} : std::nullopt;
    };
    const auto& binding = bindingLayer(window.layers);
    return {binding.cure.limit + binding.cure.guard, end(window.upperHard), end(window.upperBleed)};
}

void markOpen(RunWindow& window, const WindowRules& rules) {
    const auto& zone = window.acceptance;
    const bool notByZone = zone && zone->highBleed && !atMost(zone->low, *zone->highBleed);
    const bool notBySteps =
        window.readByStrip && std::none_of(window.acceptedSteps.begin(), window.acceptedSteps.end(),
                                           [](const AcceptedSteps& steps) { return steps.belowBleed; });
    window.bleedNotProvable = notByZone || notBySteps;
    const auto width = widthOf(window);
    window.narrow = width && !atLeast(*width, rules.narrowBelow);
}

void setAim(RunWindow& window) {
    const auto& binding = bindingLayer(window.layers);
    AimRequest request{binding.cure.limit, binding.cure.guard, std::nullopt, {}, std::nullopt, {}};
    const auto guardTo = [](const GuardedLimit& ceiling, const std::optional<Temperature>& zoneEnd) {
        return zoneEnd ? ceiling.limit - *zoneEnd : ceiling.guard;
    };
    const auto zone = window.acceptance.value_or(AcceptanceZone{});
    if (window.upperHard) {
        request.hardUpper = window.upperHard->limit;
        request.guardHard = guardTo(*window.upperHard, zone.high);
    }
    if (window.upperBleed) {
        request.bleedUpper = window.upperBleed->limit;
        request.guardBleed = guardTo(*window.upperBleed, zone.highBleed);
    }
    if (const auto aim = aimFor(request)) {
        window.aim = aim->at;
        window.aimIsMiddle = aim->rule == AimRule::middle;
    }
}

bool limitsAreToBlame(const RunWindow& window) {
    return window.state == WindowState::closed ||
           std::any_of(window.whyNotProvable.begin(), window.whyNotProvable.end(), [](const Reason& reason) {
               return reason.code == ReasonCode::guardTooWide || reason.code == ReasonCode::stripStepsDoNotFit;
           });
}

std::vector<Culprit> culpritsOf(const RunWindow& window) {
    std::vector<Culprit> culprits;
    const auto upper = smallerUpper(window);
    if (!upper) {
        return culprits;
    }
    const bool guarded = window.state != WindowState::closed;
    const auto above = [&](const GuardedLimit& l) { return guarded ? l.limit + l.guard : l.limit; };
    const auto below = [&](const GuardedLimit& l) { return guarded ? l.limit - l.guard : l.limit; };
    addBelow(culprits, window, [&](const LayerRequirement& l) { return !atMost(above(l.cure), below(*upper)); });
    if (culprits.empty()) {
        addBelow(culprits, window, [&](const LayerRequirement& l) { return atLeast(l.cure.limit, window.lower); });
    }
    const auto asked = std::find_if(window.layers.begin(), window.layers.end(),
                                    [&](const LayerRequirement& l) { return l.position == window.lowerLayer; });
    const auto belowOnly = culprits.size();
    for (const auto& ceiling : window.ceilings) {
        if (!atLeast(below(ceiling.at), above(asked->cure))) {
            addAbove(culprits, ceiling);
        }
    }
    const bool noneAbove = culprits.size() == belowOnly;
    for (const auto& ceiling : window.ceilings) {
        if (noneAbove && atMost(ceiling.at.limit, upper->limit)) {
            addAbove(culprits, ceiling);
        }
    }
    return culprits;
}

std::vector<Advice> adviceFor(const RunWindow& window) {
    std::vector<Advice> advice;
    const bool onlyBleedCloses = window.state == WindowState::closed && window.upperBleed &&
                                 (!window.upperHard || atMost(window.lower, window.upperHard->limit));
    if (onlyBleedCloses || window.bleedNotProvable || !window.bleeds.empty()) {
        advice.push_back(Advice::printWithBleedWatch);
    }
    const bool fabricToBlame = std::any_of(window.culprits.begin(), window.culprits.end(),
                                           [](const Culprit& culprit) { return culprit.kind == CulpritKind::fabric; });
    if (fabricToBlame) {
        advice.push_back(Advice::anotherCloth);
    }
    return advice;
}

} // namespace holdfast::analytics
