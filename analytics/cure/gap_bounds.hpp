#pragma once

#include "analytics/cure/trace.hpp"

#include <algorithm>

/// How hot and how cold a film may have been while nobody looked (decisions 3.5). Private to this room.
namespace holdfast::analytics::tracing {

/// (T1 + T2 + film rate·d)/2, and never below an end: the film may have turned round once inside the gap.
[[nodiscard]] inline Temperature hiddenTopOf(const CleanSample& a, const CleanSample& b,
                                             HeatingRate filmRate) noexcept {
    const double reach = (filmRate * (b.at - a.at)).celsius();
    const double top = (a.t.celsius() + b.t.celsius() + reach) / 2.0;
    return Temperature::fromCelsius(std::max({top, a.t.celsius(), b.t.celsius()}));
}

/// (T1 + T2 − film rate·d)/2.
[[nodiscard]] inline Temperature hiddenBottomOf(const CleanSample& a, const CleanSample& b,
                                                HeatingRate filmRate) noexcept {
    const double reach = (filmRate * (b.at - a.at)).celsius();
    return Temperature::fromCelsius((a.t.celsius() + b.t.celsius() - reach) / 2.0);
}

} // namespace holdfast::analytics::tracing
