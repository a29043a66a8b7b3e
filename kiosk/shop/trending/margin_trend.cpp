#include "kiosk/shop/trending/margin_trend.hpp"

#include "analytics/statistics/charts/individuals.hpp"
#include "kiosk/shop/trending/below_limit.hpp"

#include <algorithm>

namespace holdfast::kiosk::shop::trending {
namespace {

namespace st = analytics::statistics;
using analytics::TemperatureDifference;

/// The episodes that have a mean: what the rules read.
struct Series final {
    std::vector<std::size_t> places{}; ///< in MarginTrend::episodes
    std::vector<double> values{};      ///< kelvins
    std::vector<std::int64_t> times{};
};

Series seriesOf(const std::vector<Episode>& episodes) {
    Series series;
    for (std::size_t i = 0; i < episodes.size(); ++i) {
        if (episodes[i].mean) {
            series.places.push_back(i);
            series.values.push_back(episodes[i].mean->celsius());
            series.times.push_back(episodes[i].from);
        }
    }
    return series;
}

TemperatureDifference kelvinsOf(double value) {
    return TemperatureDifference::fromCelsius(value);
}

void takeMarginChart(const MarginQuestion& question, const Series& series, MarginTrend& trend) {
    const auto count = series.values.size();
    const std::size_t least = question.baseline ? 1 : 2;
    if (count < least) {
        trend.limits = tl::unexpected(Refusal{count == 0 ? NoFigure::noReadings : NoFigure::tooFewEpisodes,
                                              static_cast<std::int64_t>(count), static_cast<std::int64_t>(least)});
        return;
    }
    st::ChartOptions options{question.rules, std::nullopt, question.baseline};
    if (!question.baseline) {
        options.stretch = st::Stretch{0, std::min(count, std::max(st::kUsualPoints, question.baselineEpisodes))};
    }
    const auto chart = st::individualsWithEwma(series.values, options);
    if (!chart) {
        trend.limits = tl::unexpected(refusalOf(chart.error(), static_cast<std::int64_t>(count), 2));
        return;
    }
    const auto& shown = chart->individuals;
    trend.limits = MarginLimits{kelvinsOf(shown.limits.lower),
                                kelvinsOf(shown.limits.center),
                                kelvinsOf(shown.limits.upper),
                                kelvinsOf(shown.baseline.sigma),
                                question.baseline ? shown.baseline.name : std::string{},
                                shown.baseline.points,
                                shown.baseline.caveats};
    for (std::size_t i = 0; i < count; ++i) {
        auto& point = trend.points[series.places[i]];
        point.ewma = kelvinsOf(chart->ewma.values[i]);
        point.marks = shown.findings.marks[i];
    }
    for (const auto outside : chart->ewma.outside) {
        trend.points[series.places[outside]].ewmaOutside = true;
    }
    for (const auto& signal : shown.findings.alarms) {
        MarginSignal said{signal.rule, signal.side, {}, series.places[signal.at]};
        for (const auto point : shown.findings.pointsOf(signal)) {
            said.episodes.push_back(series.places[point]);
        }
        trend.alarms.push_back(std::move(said));
    }
}

Figure<MarginDrift> driftOf(const Series& series) {
    const auto count = static_cast<std::int64_t>(series.values.size());
    if (series.values.size() < st::kDriftPoints) {
        return tl::unexpected(Refusal{NoFigure::tooFewEpisodes, count, static_cast<std::int64_t>(st::kDriftPoints)});
    }
    std::vector<double> weeks;
    weeks.reserve(series.times.size());
    for (const auto time : series.times) {
        weeks.push_back(static_cast<double>(time - series.times.front()) / static_cast<double>(kWeekMs));
    }
    const auto drift = st::drift(weeks, series.values, {0.0, st::DriftSide::Lower});
    if (!drift) {
        return tl::unexpected(refusalOf(drift.error(), count, static_cast<std::int64_t>(st::kDriftPoints)));
    }
    MarginDrift said;
    said.aWeek = kelvinsOf(drift->line.slope);
    said.leastAWeek = kelvinsOf(drift->line.lower.value_or(drift->line.slope));
    said.mostAWeek = kelvinsOf(drift->line.upper.value_or(drift->line.slope));
    said.now = kelvinsOf(drift->levelNow);
    said.standing = drift->standing;
    said.episodes = series.values.size();
    if (drift->standing == st::DriftStanding::Crosses) {
        said.weeksEarliest = drift->earliest - drift->last;
        said.weeksLatest = drift->latest - drift->last;
    }
    return said;
}

void countReadings(MarginTrend& trend) {
    for (const auto& episode : trend.episodes) {
        trend.readings += static_cast<int>(episode.readings.size());
        trend.strips += episode.strips;
        trend.missed += episode.missed;
    }
    if (!trend.episodes.empty()) {
        trend.leadsTo = trend.episodes.back().leadsTo;
    }
    std::size_t latest = 0;
    for (const auto& signal : trend.alarms) {
        if (!signal.episodes.empty() && signal.episodes.back() >= latest) {
            latest = signal.episodes.back();
            trend.leadsTo = trend.episodes[latest].leadsTo;
        }
    }
}

} // namespace

MarginTrend marginTrend(const TrendFacts& facts, const MarginQuestion& question) {
    MarginTrend trend;
    trend.episodes = episodesOf(facts, question.filter, question.split);
    trend.points.resize(trend.episodes.size());
    for (std::size_t i = 0; i < trend.points.size(); ++i) {
        trend.points[i].episode = i;
    }
    const auto series = seriesOf(trend.episodes);
    takeMarginChart(question, series, trend);
    trend.drift = driftOf(series);
    trend.since = changeIn(facts, question.filter, series.times, series.values, question.seed);
    trend.below = belowLimit(facts, question.filter, trend.episodes);
    countReadings(trend);
    return trend;
}

Figure<st::Baseline> frozenBaseline(const MarginTrend& trend, const std::string& name, std::size_t firstEpisode,
                                    std::size_t count) {
    std::vector<double> values;
    for (std::size_t i = firstEpisode; i < trend.episodes.size() && i - firstEpisode < count; ++i) {
        if (trend.episodes[i].mean) {
            values.push_back(trend.episodes[i].mean->celsius());
        }
    }
    if (values.size() < st::kUsualPoints) {
        return tl::unexpected(Refusal{NoFigure::tooFewEpisodes, static_cast<std::int64_t>(values.size()),
                                      static_cast<std::int64_t>(st::kUsualPoints)});
    }
    const auto baseline = st::individualsBaseline(name, values);
    if (!baseline) {
        return tl::unexpected(refusalOf(baseline.error(), static_cast<std::int64_t>(values.size())));
    }
    return *baseline;
}

} // namespace holdfast::kiosk::shop::trending
