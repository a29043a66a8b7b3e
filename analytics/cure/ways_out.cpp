#include "analytics/cure/ways_out.hpp"

#include "analytics/cure/plain_text.hpp"
#include "analytics/cure/ways_out_search.hpp"

#include <algorithm>

namespace holdfast::analytics {
namespace {

/// Sound families by name, each name's newest revision once.
std::vector<InkFamily> offered(const std::vector<InkFamily>& families) {
    std::vector<InkFamily> sorted;
    std::copy_if(families.begin(), families.end(), std::back_inserter(sorted),
                 [](const InkFamily& family) { return faultsOf(family).empty(); });
    std::stable_sort(sorted.begin(), sorted.end(), [](const InkFamily& a, const InkFamily& b) {
        return a.name != b.name ? a.name < b.name : a.revision > b.revision;
    });
    const auto sameNameAs = [](const InkFamily& a, const InkFamily& b) { return a.name == b.name; };
    sorted.erase(std::unique(sorted.begin(), sorted.end(), sameNameAs), sorted.end());
    return sorted;
}

/// Instruments that are not the present one, each name once; none where there is no present one.
std::vector<Calibration> others(const std::vector<Calibration>& instruments, const Calibration* present) {
    std::vector<Calibration> kept;
    for (const auto& other : instruments) {
        const auto& name = other.instrument().name;
        const bool known =
            std::any_of(kept.begin(), kept.end(), [&](const Calibration& k) { return k.instrument().name == name; });
        if (present && name != present->instrument().name && !known) {
            kept.push_back(other);
        }
    }
    return kept;
}

} // namespace

WaysOut waysOutOf(const RunPlan& plan, const Calibration* instrument, const Choices& choices, const GuardSetting& guard,
                  const WindowRules& rules) {
    const auto families = offered(choices.families);
    const auto bundles =
        smallestBundles(plan, instrument, families, others(choices.instruments, instrument), guard, rules);
    auto found = firstWays(bundles, kWaysOutShown);
    for (auto& way : found.ways) {
        for (auto& change : way.changes) {
            change.from = plan.layers[static_cast<std::size_t>(change.position - 1)].ink.name;
        }
    }
    return found;
}

} // namespace holdfast::analytics
