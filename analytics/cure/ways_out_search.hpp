#pragma once

#include "analytics/cure/ways_out.hpp"

#include <optional>
#include <string>
#include <vector>

namespace holdfast::analytics {

/// A family that one layer may take.
struct Option final {
    const std::string* name = nullptr;
    int ease = 1;
    Temperature limit = Temperature::fromCelsius(0); ///< what it asks: C, with pairs T2
    bool carriesHardUpper = false;                   ///< its ceiling is the bundle's hard upper
    bool showsBleed = true;                          ///< the bleed ceiling is shown kept as far as it depends on it
};

/// Ways that change the same layers, with the same instrument, to the same hard upper: every choice of one option for
/// each changed layer is one, except those in which nothing carries the hard upper.
struct Bundle final {
    std::optional<std::string> instrument; ///< another one
    std::optional<Temperature> hardUpper;
    std::optional<Temperature> upper;         ///< the smaller of both ceilings
    std::vector<int> positions;               ///< of the changed layers, ascending
    std::vector<std::vector<Option>> options; ///< for each of them, by name
    std::optional<Temperature> keptLower;     ///< highest limit among the layers that stay
    bool keptCarriesHardUpper = false;
    bool keptShowsBleed = true;
};

/// The bundles of the smallest size, none empty. `families` must outlive them.
[[nodiscard]] std::vector<Bundle> smallestBundles(const RunPlan& plan, const Calibration* instrument,
                                                  const std::vector<InkFamily>& families,
                                                  const std::vector<Calibration>& instruments,
                                                  const GuardSetting& guard, const WindowRules& rules);

/// The first `shown` ways of bundles in the order of decisions 1, and how many more there are.
[[nodiscard]] WaysOut firstWays(const std::vector<Bundle>& bundles, std::size_t shown);

} // namespace holdfast::analytics
