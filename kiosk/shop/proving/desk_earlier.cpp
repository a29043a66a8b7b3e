#include "kiosk/records/queries.hpp"
#include "kiosk/shop/proving/desk_disk.hpp"
#include "kiosk/shop/proving/earlier_rides.hpp"

#include <algorithm>

namespace holdfast::kiosk::shop {
namespace {

analytics::BeltLane laneOf(records::BeltPosition position) {
    switch (position) {
    case records::BeltPosition::left:
        return analytics::BeltLane::left;
    case records::BeltPosition::right:
        return analytics::BeltLane::right;
    case records::BeltPosition::centre:
        break;
    }
    return analytics::BeltLane::centre;
}

/// Of the newest lot that was ridden in every lane: one lot is one dryer state, so its peaks may be compared.
std::optional<analytics::BeltMap> newestMap(const SQLite::Database& database,
                                            const std::vector<records::ReadingRow>& newestFirst,
                                            const std::string& dryer) {
    std::map<std::string, std::vector<analytics::LanePeak>> byLot;
    for (const auto& row : newestFirst) {
        if (row.lot.empty() || row.trace.empty() || row.struck || row.refused ||
            row.reason == records::ReadingReason::setUp) {
            continue;
        }
        const auto taken = records::readingInFull(database, row.id);
        const auto* seen = taken && *taken ? std::get_if<records::TraceSeen>(&(*taken)->evidence) : nullptr;
        if (seen == nullptr || !seen->sustainedPeak || (*taken)->dryer != dryer) {
            continue;
        }
        auto& rides = byLot[row.lot];
        const auto day = drivers::localDay({row.takenAt, row.utcOffsetMinutes});
        rides.insert(rides.begin(), {laneOf(row.position), *seen->sustainedPeak, day}); // oldest first
        if (auto map = analytics::beltMapOf(rides)) {
            return map;
        }
    }
    return std::nullopt;
}

} // namespace

EarlierRidesLoaded ProvingDesk::Disk::earlierRides() {
    constexpr int kMostRows = 200;         // some days' readings (MEM)
    constexpr std::size_t kMostRides = 20; // enough for a median (MEM)
    constexpr int kMostActions = 500;
    EarlierRidesLoaded loaded;
    const auto database = reader();
    const auto rows =
        database ? records::latestReadings(**database, kMostRows) : ledger::Result<std::vector<records::ReadingRow>>{};
    const auto dryers = database ? records::dryersNow(**database) : ledger::Result<std::vector<records::DryerNow>>{};
    const auto actions = database ? records::actionsAt(**database, m_dryer, kMostActions)
                                  : ledger::Result<std::vector<records::ActionRow>>{};
    if (!rows || !dryers || !actions) {
        return loaded; // the usual is learned from the rides to come
    }
    const auto here = std::find_if(dryers->begin(), dryers->end(),
                                   [&](const auto& dryer) { return dryer.described.dryer == m_dryer; });
    for (const auto& row : *rows) {
        const bool cured = row.word == analytics::Word::cured && !row.trace.empty() && !row.struck;
        if (loaded.rides.size() == kMostRides) {
            break;
        }
        const auto answer = cured ? trace(row.id) : ProvingEvent{ClaimLeft{}};
        const auto* ride = std::get_if<TraceLoaded>(&answer);
        if (ride == nullptr || ride->taken.dryer != m_dryer) {
            continue;
        }
        const auto setPointThen = here == dryers->end() ? std::nullopt : setPointAt(*actions, *here, row.takenAt);
        if (auto usual = usualRideOf(*ride, setPointThen)) {
            loaded.rides.insert(loaded.rides.begin(), std::move(*usual)); // oldest first
        }
    }
    loaded.map = newestMap(**database, *rows, m_dryer);
    return loaded;
}

} // namespace holdfast::kiosk::shop
