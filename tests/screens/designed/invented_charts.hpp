#pragma once

#include "kiosk/screens/charts/trend_state.hpp"

/// The owner's charts with invented figures: each kind once, and what a drawing must hold besides.
namespace holdfast::kiosk::screens::invented {

/// Margin by episode of trends.png: limits, a moving average, events, a rule's bracket, one failure.
[[nodiscard]] TrendChartState marginChart();
/// The same read with strips: intervals, some open, two weeks without any.
[[nodiscard]] TrendChartState stripChart();
/// Failed lots each week: limits that vary, missed readings, a week without lots.
[[nodiscard]] TrendChartState failureChart();
[[nodiscard]] TrendChartState sharedChart();
[[nodiscard]] TrendChartState sinceChart();
[[nodiscard]] TrendChartState survivalChart();
/// Too few failures for a curve.
[[nodiscard]] TrendChartState ladderChart();
[[nodiscard]] TrendChartState driftChart();
/// This week beside the last thirteen.
[[nodiscard]] TrendChartState briefingChart();
/// Two thousand readings, three of which a rule speaks of.
[[nodiscard]] TrendChartState denseChart();
/// Nothing yet: axes, a limit, one sentence.
[[nodiscard]] TrendChartState emptyChart();
/// Long words, in Spanish.
[[nodiscard]] TrendChartState longChart();

} // namespace holdfast::kiosk::screens::invented
