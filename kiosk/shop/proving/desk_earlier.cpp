#include "kiosk/records/queries.hpp"
#include "kiosk/shop/proving/desk_disk.hpp"
#include "kiosk/shop/proving/earlier_rides.hpp"

#include <algorithm>

namespace holdfast::kiosk::shop {

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
    return loaded;
}

} // namespace holdfast::kiosk::shop
