#pragma once

#include "kiosk/screens/charts/trend_state.hpp"
#include "kiosk/screens/presenting/trending/trends_words.hpp"

namespace holdfast::kiosk::screens {

/// From the first day to the last: months, or weeks and days where it is short.
[[nodiscard]] TrendAxis dayAxis(std::int64_t from, std::int64_t to, const TrendsHow& how);
/// Three to six even steps of a margin, signed, 0 bold with the unit. Both ends in the unit shown.
[[nodiscard]] TrendAxis marginAxis(double from, double to, const TrendsHow& how);
/// Shares in per cent: 0 and two or three steps.
[[nodiscard]] TrendAxis shareAxis(double to, const TrendsHow& how);

} // namespace holdfast::kiosk::screens
