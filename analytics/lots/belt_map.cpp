#include "analytics/lots/belt_map.hpp"

#include <algorithm>

namespace holdfast::analytics {

std::optional<BeltMap> beltMapOf(const std::vector<LanePeak>& rides) {
    std::optional<BeltMap> map;
    std::optional<Temperature> lowest;
    for (const auto lane : kLanesWithoutMap) {
        const LanePeak* newest = nullptr;
        for (const auto& ride : rides) {
            if (ride.lane == lane && ride.peak.isFinite() && (newest == nullptr || ride.on >= newest->on)) {
                newest = &ride;
            }
        }
        if (newest == nullptr) {
            return std::nullopt;
        }
        if (!map || newest->peak < *lowest) {
            lowest = newest->peak;
            map = BeltMap{lane, map ? map->on : newest->on};
        }
        map->on = std::min(map->on, newest->on);
    }
    return map;
}

bool isInDate(const BeltMap& map, Date today, std::optional<Date> maintenance) noexcept {
    return map.on <= today && today <= map.on + kMapHolds && (!maintenance || *maintenance < map.on);
}

} // namespace holdfast::analytics
