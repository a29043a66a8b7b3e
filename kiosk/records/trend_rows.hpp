#pragma once

#include "kiosk/records/statement.hpp"
#include "kiosk/records/trend_queries.hpp"

#include <string>
#include <unordered_map>

/// The inside of trendFacts(): which table is read by whom. What SQLite throws goes through.
namespace holdfast::kiosk::records::trending {

using Places = std::unordered_map<std::string, FactIndex>;

[[nodiscard]] inline FactIndex placeOf(const Places& places, const std::string& id) {
    const auto at = places.find(id);
    return at == places.end() ? kNoFact : at->second;
}

/// What is being read, and where each id stands in its list.
struct Gathering final {
    const SQLite::Database& database;
    TrendRange range{};
    TrendFacts facts{};
    Places dryers{};
    Places instruments{};
    Places buckets{}; ///< by id
    std::unordered_map<std::int64_t, FactIndex> bucketNumbers{};
    Places runs{};
    Places lots{};
    Places readings{};
    Places prints{};
    Places loads{};
    Places complaints{};
};

/// Dryers, instruments, buckets.
void gatherThings(Gathering& all);
/// Runs and their lots, buckets of lots, pieces, shipments.
void gatherLots(Gathering& all);
/// Readings, missed ones, holds.
void gatherReadings(Gathering& all);
/// Prints, loads, tests, complaints, findings.
void gatherTests(Gathering& all);
/// Turns at dryers and what is known to have changed.
void gatherEvents(Gathering& all);

/// Midnight of a calendar day by the shop's own clock, wall milliseconds.
[[nodiscard]] std::int64_t wallOf(analytics::Date day, int utcOffsetMinutes) noexcept;

} // namespace holdfast::kiosk::records::trending
