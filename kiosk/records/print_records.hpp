#pragma once

#include "analytics/metrology/instrument.hpp"
#include "kiosk/records/reading_records.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

/// Prints under test. Each wears five signs in laundry pen: its number as the code T… says it, without the T.
namespace holdfast::kiosk::records {

/// Numbers of prints go from 0 to one below this: four signs of 31 and a check sign.
inline constexpr std::int64_t kMostPrints = 923'521;

/// A piece kept so that it can be looked at when somebody asks.
struct RetainedPlace final {
    std::string shelf{};
    std::optional<analytics::Date> until{};
    bool reprintAllowed = false; ///< the customer agreed that it may be shipped once the time is over
    bool operator==(const RetainedPlace&) const = default;
};

/// print.named: a print that is tested or retained.
struct PrintNamed final {
    std::string print{}; ///< id
    std::int64_t number = 0;
    std::string run{}; ///< id
    std::string lot{}; ///< id
    std::optional<int> piece{};
    std::optional<BeltPosition> position{};
    std::int64_t printedAt = 0;          ///< wall milliseconds of its way through the dryer: rest is counted from here
    std::optional<std::string> halfOf{}; ///< id of the print that was cut in two (split test, unwashed half)
    std::optional<RetainedPlace> retained{};
};

enum class PrintEnd { usedUp, thrownAway, shipped, lost };

/// print.changed: the whole of what may change, as it is from now on.
struct PrintChanged final {
    std::string print{};
    std::optional<RetainedPlace> retained{};
    std::optional<PrintEnd> ended{}; ///< then no test of it counts any more
};

} // namespace holdfast::kiosk::records
