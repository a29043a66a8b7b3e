#pragma once

#include "analytics/cure/fabric.hpp"
#include "analytics/cure/ink_family.hpp"

#include <cstdint>
#include <optional>
#include <string>

/// What can be wrong with a family, cloth, bucket or mix as it was typed.
namespace holdfast::kiosk::shop {

enum class StockFaultCause {
    nameMissing,
    nameTaken,   ///< text
    textTooLong, ///< text: its first signs
    controlSign,
    notANumber,          ///< text
    negative,            ///< text
    overHundredPercent,  ///< text
    notWhole,            ///< text: no whole number from 1 to kMostEase
    temperatureUnlikely, ///< text: under the freezing point or over kHottestAuthored
    cureMissing,
    halfGiven, ///< fields that belong together, one of them empty; `field` is the empty one
    sourceMissing,
    family, ///< `family` says what
    fabric, ///< `fabric` says what
    familyMissing,
    familyUnknown, ///< text
    notADate,      ///< text
    noPart,
    massNotPositive, ///< bucket, text
    bucketTwice,     ///< bucket
    bucketUnknown,   ///< bucket
    bucketClosed,    ///< bucket: thrown away or mislabelled
    containsItself,  ///< bucket: the part that is the mix, or has it in it
    chemistriesDiffer,
    familyGone,     ///< bucket: nobody knows what it is made of
    tooManyBuckets, ///< more than the book draws as one tree
};

struct StockFault final {
    StockFaultCause cause{};
    std::string field{}; ///< "cure", "part.3": the form's names
    std::string text{};
    std::optional<std::int64_t> bucket{}; ///< its number
    std::optional<analytics::FamilyFault> family{};
    std::optional<analytics::FabricFault> fabric{};
    bool operator==(const StockFault&) const = default;
};

inline constexpr int kMostEase = 99;
/// No ink, cloth or belt in the trade comes near it; a figure above is a slip of the finger (from memory).
inline constexpr analytics::Temperature kHottestAuthored = analytics::Temperature::fromCelsius(400.0);

} // namespace holdfast::kiosk::shop
