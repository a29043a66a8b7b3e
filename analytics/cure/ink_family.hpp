#pragma once

#include "analytics/quantity/duration.hpp"
#include "analytics/quantity/temperature.hpp"

#include <optional>
#include <string>
#include <vector>

namespace holdfast::analytics {

enum class Chemistry { plastisol, waterBased, discharge, silicone };

/// Ordered: none < low < high.
enum class BleedResistance { none, low, high };

/// Where a figure comes from.
enum class Mark { standard, dataSheet, commonPractice, fromMemory };

struct GelRange final {
    Temperature low = Temperature::fromCelsius(0);
    Temperature high = Temperature::fromCelsius(0);
};

/// The data sheet's statement "this long at this temperature".
struct CurePoint final {
    Duration time{0};
    Temperature temperature = Temperature::fromCelsius(0);
};

/// Exactly two equal-cure statements; the hotter is the shorter, both lie above the gel range.
struct EqualCurePairs final {
    CurePoint hotter;
    CurePoint cooler;
};

/// Additive (fixer, catalyst, reducer) by mass fraction of the ink, inclusive at both ends.
struct AdditiveBand final {
    double low = 0.0;
    double high = 0.0;
};

/// One revision of an ink family; revisions never change, a new one is added (decisions 1).
struct InkFamily final {
    std::string name;
    int revision = 1;
    Chemistry chemistry = Chemistry::plastisol;
    std::optional<GelRange> gel;
    Temperature cure = Temperature::fromCelsius(0); ///< minimum the whole film must reach
    Duration hold{0};                               ///< time at or above `cure`; 0 = reaching it is enough
    bool unbroken = false;                          ///< the hold must be one spell
    std::optional<Temperature> ceiling;             ///< the ink's own hard upper limit
    BleedResistance bleedResistance = BleedResistance::none;
    int ease = 1; ///< 1 = easiest and cheapest to print
    std::optional<EqualCurePairs> pairs;
    std::optional<Duration> potLife;
    std::optional<AdditiveBand> additiveBand;
    std::optional<Duration> restBeforeTest;
    Mark mark = Mark::fromMemory;
    std::string source;

    /// g_lo of the rules: the gel range's low end, or 60 °C where the family has none (contracts, Shop file).
    [[nodiscard]] Temperature gelLow() const noexcept;
};

enum class FamilyFault {
    nameEmpty,
    gelReversed,
    cureBelowGel,
    cureAboveCeiling,
    holdNegative,
    pairsNotHotterShorter,
    pairsNotAboveGel,
    bandReversed,
    notFinite
};

/// Every fault of an authored family at once; empty when it may be used.
[[nodiscard]] std::vector<FamilyFault> faultsOf(const InkFamily& family);

/// The six starters of contracts.md; data, never compiled into a decision.
[[nodiscard]] std::vector<InkFamily> starterFamilies();

} // namespace holdfast::analytics
