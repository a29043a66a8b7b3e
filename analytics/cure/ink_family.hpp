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
    bool operator==(const GelRange&) const = default;
};

/// The data sheet's statement "this long at this temperature".
struct CurePoint final {
    Duration time{0};
    Temperature temperature = Temperature::fromCelsius(0);
    bool operator==(const CurePoint&) const = default;
};

/// Exactly two equal-cure statements; the hotter is the shorter, both lie above the gel range.
struct EqualCurePairs final {
    CurePoint hotter;
    CurePoint cooler;
    bool operator==(const EqualCurePairs&) const = default;
};

/// Additive (fixer, catalyst, reducer) by mass fraction of the ink, inclusive at both ends.
struct AdditiveBand final {
    double low = 0.0;
    double high = 0.0;
    bool operator==(const AdditiveBand&) const = default;
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

    bool operator==(const InkFamily&) const = default;
};

/// What can be wrong with an authored family. Equality is allowed everywhere but between the pairs and the gel range.
enum class FamilyFault {
    nameEmpty, ///< or nothing but blanks
    gelReversed,
    cureBelowGel,          ///< below the gel range's high end
    cureAboveCeiling,      ///< C, or the hotter pair
    holdNegative,          ///< hold, pot life or rest before test
    pairsNotHotterShorter, ///< or the shorter time not above 0
    pairsNotAboveGel,      ///< without a gel range: not above 60 °C
    bandReversed,          ///< or its low end below 0
    notFinite              ///< any number
};

/// Every fault of an authored family at once, in the order of the enumeration; empty when it may be used.
[[nodiscard]] std::vector<FamilyFault> faultsOf(const InkFamily& family);

/// The six starters of contracts.md; data, never compiled into a decision.
[[nodiscard]] std::vector<InkFamily> starterFamilies();

} // namespace holdfast::analytics
