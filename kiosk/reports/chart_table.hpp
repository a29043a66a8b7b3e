#pragma once

#include "kiosk/screens/charts/trend_state.hpp"

#include <string>

namespace holdfast::kiosk::reports {

/// Everything a chart draws as one table, RFC 4180, one row each, whatever the zoom or the thinning of the screen:
/// `part` is point, bar, line, band, event, stretch or row; figures are in the unit shown with a point as decimal sign
/// and read back to the same double; days are written as dates (of fractions with their time). What is no number is an
/// empty cell. The columns are the same for every chart.
[[nodiscard]] std::string csvOf(const screens::TrendChartState& state);

} // namespace holdfast::kiosk::reports
