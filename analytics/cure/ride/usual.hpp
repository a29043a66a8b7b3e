#pragma once

#include "analytics/cure/ride/rise_fit.hpp"

#include <optional>
#include <vector>

namespace holdfast::analytics {

/// A good earlier ride of a dryer.
struct UsualRide final {
    RiseFit fit;
    std::optional<Temperature> setPoint; ///< of the dryer when it was ridden
};

struct UsualRules final {
    int leastRides = 5; ///< from memory (MEM)
};

/// Middle and robust spread of τ: median and 1.4826 times the median distance from it.
struct UsualTime final {
    Duration middle{0};
    Duration spread{0};
};
struct UsualTemperature final {
    Temperature middle = Temperature::fromCelsius(0);
    TemperatureDifference spread;
};
struct UsualRate final {
    HeatingRate middle = HeatingRate::fromCelsiusPerSecond(0);
    HeatingRate spread = HeatingRate::fromCelsiusPerSecond(0);
};

/// How a dryer heats when nothing is wrong.
struct Usual final {
    int rides = 0;
    UsualTime tau;
    UsualTemperature air;
    UsualRate rate;
    TemperatureDifference flutter; ///< median
};

/// The usual of these rides at the set-point of now: where both are known, the air of an earlier ride is moved by the
/// change of set-point, one to one; rides without a set-point count only if none is asked for. Absent for fewer than
/// `leastRides` of them. Median and 1.4826·MAD (Rousseeuw & Croux, J. Am. Stat. Assoc. 88, 1993): half the rides may be
/// bad ones.
[[nodiscard]] std::optional<Usual> usualOf(const std::vector<UsualRide>& rides,
                                           std::optional<Temperature> setPointNow = std::nullopt,
                                           const UsualRules& rules = {});

} // namespace holdfast::analytics
