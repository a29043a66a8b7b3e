#pragma once

#include "analytics/cure/ride/usual.hpp"

#include <optional>

namespace holdfast::analytics {

/// What a rise that water holds up near boiling looks like; starter settings (MEM).
struct WetRules final {
    Temperature from = Temperature::fromCelsius(90.0);
    Temperature to = Temperature::fromCelsius(105.0);
    TemperatureDifference level = TemperatureDifference::fromCelsius(4.0); ///< hottest less coldest of the stretch
    Duration least{4.0};
    double mostOfRateBefore = 0.25;                                         ///< its slope against the rise before it
    double leastClimbOn = 2.0;                                              ///< the rise behind it against its slope
    TemperatureDifference climb = TemperatureDifference::fromCelsius(10.0); ///< behind it
    double leastMissing = 3.0; ///< of `level`: what usual air would have added, where nothing rises behind it
};

struct WetStretch final {
    Duration from{0};
    Duration lasted{0};
    Temperature level = Temperature::fromCelsius(0); ///< mean
};

/// The longest near-level stretch of the rise between 90 and 105 °C, if the rise before it was steeper and either the
/// rise behind it is steeper again, which no first-order rise ever is, or the dryer's usual air would have carried a
/// dry film on. Without gaps inside. Absent for n = 0, 1.
[[nodiscard]] std::optional<WetStretch> wetStretchOf(const Pass& pass, const Usual* usual, const WetRules& rules = {});

} // namespace holdfast::analytics
