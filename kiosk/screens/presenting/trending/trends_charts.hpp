#pragma once

#include "kiosk/screens/charts/trend_state.hpp"
#include "kiosk/screens/presenting/trending/trends_words.hpp"

#include <string_view>

/// What was found, as charts.
namespace holdfast::kiosk::screens {

inline constexpr std::string_view kTrendsRun = "trends.run.";               ///< then the run's id
inline constexpr std::string_view kTrendsWeek = "trends.week.";             ///< then its place in FailureTrend::weeks
inline constexpr std::string_view kTrendsSuspect = "trends.suspect.";       ///< then its place in TrendsFound::named
inline constexpr std::string_view kTrendsInstrument = "trends.instrument."; ///< then its id

/// Margin by episode: limits, rules, drift, since when with what is known to have changed, strips as intervals.
[[nodiscard]] TrendChartState marginChart(const TrendsFound& found, const TrendsHow& how);
/// Share of failed lots by week.
[[nodiscard]] TrendChartState failureChart(const TrendsFound& found, const TrendsHow& how);
/// What failures share, ranked. Without any: the sentence why.
[[nodiscard]] TrendChartState suspectsChart(const TrendsFound& found, const TrendsHow& how);
/// Margin against whether the wash was survived.
[[nodiscard]] TrendChartState washChart(const TrendsFound& found, const TrendsHow& how);
/// How much hotter each instrument reads than its fellows.
[[nodiscard]] TrendChartState instrumentsChart(const TrendsFound& found, const TrendsHow& how);

} // namespace holdfast::kiosk::screens
