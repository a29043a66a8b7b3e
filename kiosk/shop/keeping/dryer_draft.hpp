#pragma once

#include "analytics/quantity/duration.hpp"
#include "kiosk/records/shop_records.hpp"

#include <tl/expected.hpp>

#include <optional>
#include <string>
#include <vector>

/// A dryer while it is being described: everything as typed, checked at once and as a whole.
namespace holdfast::kiosk::shop {

struct DryerDraft final {
    analytics::TemperatureUnit unit = analytics::TemperatureUnit::fahrenheit; ///< of the set-points
    std::string name{};
    std::string heatedLength{}; ///< m; empty: not known, and then no dwell either
    std::string belt{};         ///< m/min
    std::string slowest{};
    std::string fastest{};
    std::string setPoint{};
    std::string highestSetPoint{};
    std::string piecesPerMetre{};
    std::optional<records::DryerDescribed> before{}; ///< absent: a new one
};

enum class DryerFaultCause {
    nameMissing,
    textTooLong, ///< text
    controlSign,
    nameTaken,   ///< text
    notANumber,  ///< text
    notPositive, ///< text: zero or below
    slowestAboveFastest,
    beltOutside, ///< slower than the slowest or faster than the fastest
    setPointAboveHighest,
};

struct DryerFault final {
    DryerFaultCause cause{};
    std::string field{}; ///< "name", "length", "belt", "slowest", "fastest", "set-point", "highest", "pieces"
    std::string text{};
    bool operator==(const DryerFault&) const = default;
};

[[nodiscard]] DryerDraft draftOf(const records::DryerDescribed& dryer, analytics::TemperatureUnit unit);

/// Every fault at once, in the order of the form. A set-point whose text was not touched stays as it was authored. A
/// new one still lacks its id. `others` are the dryers in use; the one being changed may be among them.
[[nodiscard]] tl::expected<records::DryerDescribed, std::vector<DryerFault>>
dryerFrom(const DryerDraft& draft, const std::vector<records::DryerDescribed>& others);

/// Heated length over belt speed; nothing if either is not known.
[[nodiscard]] std::optional<analytics::Duration> dwellOf(const records::DryerDescribed& dryer);

} // namespace holdfast::kiosk::shop
