#include "analytics/cure/joint_window.hpp"
#include "analytics/cure/window.hpp"

#include <algorithm>

namespace holdfast::analytics {
namespace {

/// Puts one run's layers, ceilings and reasons behind those gathered so far, numbered on.
void append(RunWindow& belt, const RunWindow& run) {
    const int before = static_cast<int>(belt.layers.size());
    for (auto layer : run.layers) {
        layer.position += before;
        belt.layers.push_back(std::move(layer));
    }
    for (auto ceiling : run.ceilings) {
        if (ceiling.position) {
            *ceiling.position += before;
        }
        belt.ceilings.push_back(std::move(ceiling));
    }
    for (auto reason : run.whyNotProvable) {
        if (reason.layer) {
            *reason.layer += before;
        }
        belt.whyNotProvable.push_back(std::move(reason));
    }
}

/// Steps accepted in every run that is read by a strip.
std::vector<AcceptedSteps> commonSteps(const std::vector<RunWindow>& windows) {
    const auto first = std::find_if(windows.begin(), windows.end(), [](const RunWindow& w) { return w.readByStrip; });
    if (first == windows.end()) {
        return {};
    }
    std::vector<AcceptedSteps> common;
    for (auto steps : first->acceptedSteps) {
        bool everywhere = true;
        for (const auto& window : windows) {
            const auto here =
                std::find_if(window.acceptedSteps.begin(), window.acceptedSteps.end(),
                             [&](const AcceptedSteps& s) { return s.dark == steps.dark && s.light == steps.light; });
            const bool found = here != window.acceptedSteps.end();
            everywhere = everywhere && (found || !window.readByStrip);
            steps.belowBleed = steps.belowBleed && (!found || here->belowBleed);
        }
        if (everywhere) {
            common.push_back(steps);
        }
    }
    return common;
}

/// The intersection of the zones of the runs that have one; all are open.
std::optional<AcceptanceZone> commonZone(const std::vector<RunWindow>& windows) {
    std::optional<AcceptanceZone> common;
    const auto narrowTo = [](std::optional<Temperature>& end, const std::optional<Temperature>& other) {
        end = end && other ? std::min(*end, *other) : (end ? end : other);
    };
    for (const auto& window : windows) {
        if (!window.acceptance) {
            continue;
        }
        if (!common) {
            common = window.acceptance;
            continue;
        }
        common->low = std::max(common->low, window.acceptance->low);
        narrowTo(common->high, window.acceptance->high);
        narrowTo(common->highBleed, window.acceptance->highBleed);
    }
    return common;
}

bool nothingLeft(const RunWindow& belt) {
    const auto& zone = belt.acceptance;
    const bool aboveHard = zone && zone->high && !atMost(zone->low, *zone->high);
    const bool overheated =
        zone && belt.upperBleed && atLeast(zone->low, belt.upperBleed->limit + belt.upperBleed->guard);
    return aboveHard || overheated || (belt.readByStrip && belt.acceptedSteps.empty());
}

Reason nothingLeftReason(const RunWindow& belt) {
    const auto& binding = bindingLayer(belt.layers);
    Reason reason;
    reason.code = belt.readByStrip ? ReasonCode::stripStepsDoNotFit : ReasonCode::guardTooWide;
    reason.guard = binding.cure.guard;
    reason.value = belt.readByStrip ? binding.cure.limit : binding.cure.limit + binding.cure.guard;
    if (belt.upperHard) {
        reason.limit = belt.readByStrip ? belt.upperHard->limit : belt.upperHard->limit - belt.upperHard->guard;
    }
    return reason;
}

void settleBelt(RunWindow& belt, const std::vector<RunWindow>& windows, const WindowRules& rules) {
    if (isClosed(belt, rules)) {
        belt.state = WindowState::closed;
        belt.whyNotProvable.clear();
        return;
    }
    if (std::any_of(windows.begin(), windows.end(),
                    [](const RunWindow& w) { return w.state == WindowState::notProvable; })) {
        belt.state = WindowState::notProvable;
        return;
    }
    belt.acceptedSteps = commonSteps(windows);
    belt.acceptance = commonZone(windows);
    if (nothingLeft(belt)) {
        belt.state = WindowState::notProvable;
        belt.acceptance.reset();
        belt.acceptedSteps.clear();
        belt.whyNotProvable.push_back(nothingLeftReason(belt));
        return;
    }
    markOpen(belt, rules);
    if (std::any_of(windows.begin(), windows.end(), [](const RunWindow& w) { return w.aim.has_value(); })) {
        setAim(belt);
    }
}

} // namespace

std::optional<RunWindow> intersectionOf(const std::vector<RunWindow>& windows, const WindowRules& rules) {
    if (windows.empty()) {
        return std::nullopt;
    }
    RunWindow belt;
    for (const auto& window : windows) {
        append(belt, window);
        belt.readByStrip = belt.readByStrip || window.readByStrip;
    }
    settleLimits(belt);
    settleBelt(belt, windows, rules);
    if (limitsAreToBlame(belt)) {
        belt.culprits = culpritsOf(belt);
    }
    belt.advice = adviceFor(belt);
    return belt;
}

} // namespace holdfast::analytics
