#pragma once

#include "analytics/metrology/instrument.hpp"
#include "analytics/quantity/temperature.hpp"

#include <optional>
#include <vector>

/// Left, centre and right of a belt differ; a map says which of them is the coldest.
namespace holdfast::analytics {

enum class BeltLane { left, centre, right };

/// The order in which a belt without a map is read (decisions 5).
inline constexpr BeltLane kLanesWithoutMap[] = {BeltLane::left, BeltLane::centre, BeltLane::right};
inline constexpr int kReadingsWithoutMap = 3;

/// How hot one ride of a map became in its lane.
struct LanePeak final {
    BeltLane lane = BeltLane::centre;
    Temperature peak = Temperature::fromCelsius(0);
    Date on;
};

/// What rides over the whole belt tell.
struct BeltMap final {
    BeltLane coldest = BeltLane::centre;
    Date on; ///< the day of its oldest ride
};

/// A map is taken weekly (decisions 5): it counts up to and including this many days after its oldest ride.
inline constexpr std::chrono::days kMapHolds{7};

/// The newest ride of each lane, if all three were ridden: the coldest is the one with the lowest peak, of equal ones
/// the leftmost. Peaks that are not finite are left out. Absent if a lane has none.
[[nodiscard]] std::optional<BeltMap> beltMapOf(const std::vector<LanePeak>& rides);

/// Not older than a week, and no maintenance on its day or later.
[[nodiscard]] bool isInDate(const BeltMap& map, Date today, std::optional<Date> maintenance) noexcept;

} // namespace holdfast::analytics
