#include "analytics/cure/window.hpp"

#include "analytics/cure/joint_window.hpp"
#include "analytics/cure/prover.hpp"
#include "analytics/cure/ways_out.hpp"

#include <algorithm>
#include <cmath>

namespace holdfast::analytics {
namespace {

/// A combined requirement may have what no family may: a ceiling below its cure, an additive band without room.
bool isSound(const Ink& ink) {
    const auto& whole = ink.requirement;
    const bool finite =
        whole.cure.isFinite() && std::isfinite(whole.hold.count()) && (!whole.ceiling || whole.ceiling->isFinite());
    return finite && !ink.parts.empty() &&
           std::all_of(ink.parts.begin(), ink.parts.end(), [](const InkFamily& f) { return faultsOf(f).empty(); }) &&
           (ink.isMix() || faultsOf(whole).empty());
}

std::vector<WindowFault> faultsOf(const RunPlan& plan) {
    std::vector<WindowFault> faults;
    if (plan.layers.empty()) {
        faults.push_back(WindowFault::emptyLayerList);
    }
    if (!std::all_of(plan.layers.begin(), plan.layers.end(), [](const Layer& layer) { return isSound(layer.ink); })) {
        faults.push_back(WindowFault::familyFaulty);
    }
    if (!faultsOf(plan.fabric).empty()) {
        faults.push_back(WindowFault::fabricFaulty);
    }
    return faults;
}

LayerRequirement layerRequirement(const Layer& layer, int position, const Fabric& fabric, const Prover& prover) {
    auto asked = prover.requirementOf(layer.ink.requirement);
    asked.position = position;
    asked.colour = layer.colour;
    asked.need = fabric.needOf(layer.colour);
    asked.atRisk = asked.need > BleedResistance::none;
    asked.bleeds = layer.ink.requirement.bleedResistance < asked.need;
    return asked;
}

void addCeilings(RunWindow& window, const RunPlan& plan, const Prover& prover) {
    int position = 0;
    for (const auto& layer : plan.layers) {
        ++position;
        if (const auto& own = layer.ink.requirement.ceiling) {
            window.ceilings.push_back({CulpritKind::layer, position, layer.colour, false, prover.guarded(*own)});
        }
    }
    const auto add = [&](const std::optional<Temperature>& limit, bool bleed) {
        if (limit) {
            window.ceilings.push_back(
                {CulpritKind::fabric, std::nullopt, plan.fabric.name, bleed, prover.guarded(*limit)});
        }
    };
    add(plan.fabric.hardCeiling, false);
    const bool anyAtRisk = std::any_of(window.layers.begin(), window.layers.end(),
                                       [](const LayerRequirement& layer) { return layer.atRisk; });
    if (anyAtRisk) {
        add(plan.fabric.bleedCeiling, true);
    }
}

void settleState(RunWindow& window, const Prover& prover, const WindowRules& rules) {
    const auto ceilings = ceilingsOf(window);
    const auto caps = prover.capsOf(ceilings);
    const bool provable = std::all_of(window.layers.begin(), window.layers.end(), [&](const LayerRequirement& layer) {
        return Prover::proves(prover.reachOf(layer), caps);
    });
    window.readByStrip = prover.isStrip();
    if (isClosed(window, rules)) {
        window.state = WindowState::closed;
    } else if (!provable) {
        window.state = WindowState::notProvable;
        window.whyNotProvable = prover.whyNot(window.layers, ceilings, bindingLayer(window.layers).cure);
    } else {
        window.acceptedSteps = prover.acceptedSteps(ceilings, window.lower);
        if (!prover.isStrip()) {
            window.acceptance = zoneOf(window, prover.shortfall());
        }
        markOpen(window, rules);
        if (prover.hasInstrument()) {
            setAim(window);
        }
    }
    if (limitsAreToBlame(window)) {
        window.culprits = culpritsOf(window);
    }
    window.advice = adviceFor(window);
}

RunWindow windowOfSound(const RunPlan& plan, const Prover& prover, const WindowRules& rules) {
    RunWindow window;
    int position = 0;
    for (const auto& layer : plan.layers) {
        window.layers.push_back(layerRequirement(layer, ++position, plan.fabric, prover));
    }
    addCeilings(window, plan, prover);
    settleLimits(window);
    settleState(window, prover, rules);
    return window;
}

std::vector<std::string> provingInstruments(const RunPlan& plan, const Choices& choices, const GuardSetting& guard,
                                            const WindowRules& rules) {
    std::vector<std::string> names;
    for (const auto& instrument : choices.instruments) {
        const auto window = windowOfSound(plan, Prover{&instrument, guard, rules}, rules);
        const auto& name = instrument.instrument().name;
        if (window.state == WindowState::open && std::find(names.begin(), names.end(), name) == names.end()) {
            names.push_back(name);
        }
    }
    return names;
}

} // namespace

tl::expected<RunWindow, std::vector<WindowFault>> windowOf(const RunPlan& plan, const Calibration* instrument,
                                                           const GuardSetting& guard, const WindowRules& rules) {
    if (auto faults = faultsOf(plan); !faults.empty()) {
        return tl::unexpected(std::move(faults));
    }
    return windowOfSound(plan, Prover{instrument, guard, rules}, rules);
}

tl::expected<RunWindow, std::vector<WindowFault>> windowWithWaysOut(const RunPlan& plan, const Calibration* instrument,
                                                                    const Choices& choices, const GuardSetting& guard,
                                                                    const WindowRules& rules) {
    auto window = windowOf(plan, instrument, guard, rules);
    if (!window || window->state == WindowState::open) {
        return window;
    }
    if (window->state == WindowState::notProvable) {
        window->couldProve = provingInstruments(plan, choices, guard, rules);
    }
    auto found = waysOutOf(plan, instrument, choices, guard, rules);
    window->waysOut = std::move(found.ways);
    window->waysOutLeftOut = found.leftOut;
    return window;
}

} // namespace holdfast::analytics
