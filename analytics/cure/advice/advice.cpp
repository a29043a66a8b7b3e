#include "analytics/cure/advice/advice.hpp"

#include <algorithm>
#include <tuple>

namespace holdfast::analytics {
namespace {

bool among(const std::vector<std::string>& names, const std::string& name) {
    return std::find(names.begin(), names.end(), name) != names.end();
}

std::vector<LayerAdvice> layersFor(const Fabric& fabric, const std::string& garment,
                                   const std::vector<std::string>& colours, const PrintingHabits& habits) {
    std::vector<LayerAdvice> layers;
    const bool dark = !garment.empty() && !among(habits.lightGarments, garment);
    const bool uncovered = std::any_of(colours.begin(), colours.end(),
                                       [&](const auto& colour) { return !among(habits.coveringColours, colour); });
    const bool whiteFirst = !colours.empty() && colours.front() == "white";
    if (dark && uncovered && !whiteFirst) {
        LayerAdvice base;
        base.colour = "white";
        base.underbase = true;
        layers.push_back(base);
    }
    for (const auto& colour : colours) {
        LayerAdvice layer;
        layer.colour = colour;
        layers.push_back(layer);
    }
    for (auto& layer : layers) {
        layer.need = fabric.needOf(layer.colour);
    }
    return layers;
}

/// One family a layer.
struct Combination final {
    std::vector<const InkFamily*> families;
    bool bleedMet = true;
    RunWindow window;
};

RunPlan planOf(const Fabric& fabric, const std::vector<LayerAdvice>& layers,
               const std::vector<const InkFamily*>& families) {
    RunPlan plan;
    plan.fabric = fabric;
    for (std::size_t i = 0; i < layers.size(); ++i) {
        plan.layers.push_back({layers[i].colour, pureInk(*families[i]), std::nullopt});
    }
    return plan;
}

bool easier(const InkFamily* one, const InkFamily* other) {
    return std::tie(one->ease, one->name) < std::tie(other->ease, other->name);
}

/// The easiest family that asks no more heat than `most` and bears `most`. Bound by bound this finds the easiest open
/// combination: in an open one every family's cure lies at or below the highest, which every ceiling bears.
const InkFamily* easiestWithin(const std::vector<const InkFamily*>& families, Temperature most, BleedResistance need) {
    for (const auto* family : families) {
        const bool bears = !family->ceiling || *family->ceiling >= most;
        if (family->cure <= most && bears && family->bleedResistance >= need) {
            return family;
        }
    }
    return nullptr;
}

std::tuple<int, int> easeOf(const Combination& combination) {
    int worst = 0;
    int sum = 0;
    for (const auto* family : combination.families) {
        worst = std::max(worst, family->ease);
        sum += family->ease;
    }
    return {worst, sum};
}

std::optional<Combination> easiestOpen(const Fabric& fabric, const std::vector<LayerAdvice>& layers,
                                       const std::vector<const InkFamily*>& families, bool bleedMet) {
    std::optional<Combination> best;
    for (const auto* bound : families) {
        Combination made;
        made.bleedMet = bleedMet;
        for (const auto& layer : layers) {
            made.families.push_back(
                easiestWithin(families, bound->cure, bleedMet ? layer.need : BleedResistance::none));
        }
        if (std::any_of(made.families.begin(), made.families.end(), [](const auto* one) { return one == nullptr; })) {
            continue;
        }
        auto window = windowOf(planOf(fabric, layers, made.families));
        if (!window || window->state != WindowState::open) {
            continue;
        }
        made.window = std::move(*window);
        if (!best || easeOf(made) < easeOf(*best)) {
            best = std::move(made);
        }
    }
    return best;
}

/// The families of one chemistry, easiest first.
std::vector<const InkFamily*> ofChemistry(const std::vector<InkFamily>& families, Chemistry chemistry) {
    std::vector<const InkFamily*> list;
    for (const auto& family : families) {
        if (family.chemistry == chemistry && faultsOf(family).empty()) {
            list.push_back(&family);
        }
    }
    std::stable_sort(list.begin(), list.end(), easier);
    return list;
}

FamilyChoice choiceOf(const InkFamily& family, int easiest, const RunWindow& window) {
    FamilyChoice choice;
    choice.family = family.name;
    choice.cure = family.cure;
    choice.cost.harderBy = std::max(0, family.ease - easiest);
    choice.cost.needsHold = family.hold > Duration{0} || family.pairs.has_value();
    choice.cost.hasPotLife = family.potLife.has_value();
    choice.cost.lowersCeiling = family.ceiling && window.upperHard && *family.ceiling <= window.upperHard->limit;
    return choice;
}

/// Families that would leave the window open in this layer's place.
std::vector<FamilyChoice> othersFor(const Fabric& fabric, const std::vector<LayerAdvice>& layers, std::size_t at,
                                    const Combination& chosen, const std::vector<const InkFamily*>& families,
                                    int easiest) {
    std::vector<FamilyChoice> others;
    for (const auto* family : families) {
        if (family == chosen.families[at] || (chosen.bleedMet && family->bleedResistance < layers[at].need)) {
            continue;
        }
        auto changed = chosen.families;
        changed[at] = family;
        const auto window = windowOf(planOf(fabric, layers, changed));
        if (window && window->state == WindowState::open) {
            others.push_back(choiceOf(*family, easiest, *window));
        }
    }
    return others;
}

struct Found final {
    Combination combination;
    std::vector<const InkFamily*> families;
};

std::optional<Found> search(const Fabric& fabric, const std::vector<LayerAdvice>& layers,
                            const std::vector<InkFamily>& families, bool bleedMet) {
    std::optional<Found> best;
    for (const auto chemistry :
         {Chemistry::plastisol, Chemistry::waterBased, Chemistry::discharge, Chemistry::silicone}) {
        const auto list = ofChemistry(families, chemistry);
        auto open = easiestOpen(fabric, layers, list, bleedMet);
        if (open && (!best || easeOf(*open) < easeOf(best->combination))) {
            best = Found{std::move(*open), list};
        }
    }
    return best;
}

int easiestOf(const std::vector<InkFamily>& families) {
    int easiest = families.empty() ? 1 : families.front().ease;
    for (const auto& family : families) {
        easiest = std::min(easiest, family.ease);
    }
    return easiest;
}

} // namespace

PlanAdvice adviseRun(const Fabric& fabric, const std::string& garmentColour, const std::vector<std::string>& colours,
                     const std::vector<InkFamily>& families, const PrintingHabits& habits) {
    PlanAdvice advice;
    advice.layers = layersFor(fabric, garmentColour, colours, habits);
    if (advice.layers.empty()) {
        return advice;
    }
    auto found = search(fabric, advice.layers, families, true);
    if (!found) {
        found = search(fabric, advice.layers, families, false);
    }
    if (!found) {
        return advice;
    }
    const int easiest = easiestOf(families);
    auto& chosen = found->combination;
    for (std::size_t i = 0; i < advice.layers.size(); ++i) {
        auto& layer = advice.layers[i];
        layer.choice = choiceOf(*chosen.families[i], easiest, chosen.window);
        layer.others = othersFor(fabric, advice.layers, i, chosen, found->families, easiest);
        if (i + 1 < advice.layers.size()) {
            layer.flash = chosen.families[i]->gel;
        }
    }
    advice.bleedWatchDue = !chosen.window.bleeds.empty() || chosen.window.bleedNotProvable;
    advice.window = std::move(chosen.window);
    return advice;
}

} // namespace holdfast::analytics
