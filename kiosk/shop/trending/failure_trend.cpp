#include "kiosk/shop/trending/failure_trend.hpp"

#include "analytics/statistics/charts/attributes.hpp"

#include <algorithm>
#include <chrono>

namespace holdfast::kiosk::shop::trending {
namespace {

namespace st = analytics::statistics;

constexpr std::int64_t kMostWeeks = 5'200; ///< a clock that was wrong by centuries fills no list

/// ISO 8601: the week that has the Thursday.
void nameWeek(FailureWeek& week, int utcOffsetMinutes) {
    using namespace std::chrono;
    const auto local = week.begins + static_cast<std::int64_t>(utcOffsetMinutes) * 60'000;
    const sys_days monday{days{static_cast<int>(local / kDayMs)}};
    const year_month_day thursday{monday + days{3}};
    const sys_days newYear{thursday.year() / January / 1};
    week.isoYear = static_cast<int>(thursday.year());
    week.isoWeek = static_cast<int>((sys_days{thursday} - newYear).count()) / 7 + 1;
}

std::vector<FailureWeek> emptyWeeks(const TrendFacts& facts, const std::vector<LotOutcome>& outcomes) {
    std::vector<FailureWeek> weeks;
    if (outcomes.empty()) {
        return weeks;
    }
    const auto openedAt = [&](const LotOutcome& one) { return facts.lots[static_cast<std::size_t>(one.lot)].openedAt; };
    const auto last = weekOf(openedAt(outcomes.back()), facts.utcOffsetMinutes);
    const auto first =
        std::max(weekOf(openedAt(outcomes.front()), facts.utcOffsetMinutes), last - kMostWeeks * kWeekMs);
    for (auto begins = first; begins <= last; begins += kWeekMs) {
        FailureWeek week;
        week.begins = begins;
        nameWeek(week, facts.utcOffsetMinutes);
        weeks.push_back(std::move(week));
    }
    return weeks;
}

void fillWeeks(const TrendFacts& facts, const std::vector<LotOutcome>& outcomes, FailureTrend& trend) {
    for (const auto& outcome : outcomes) {
        const auto at = facts.lots[static_cast<std::size_t>(outcome.lot)].openedAt;
        const auto place = (weekOf(at, facts.utcOffsetMinutes) - trend.weeks.front().begins) / kWeekMs;
        auto& week = trend.weeks[static_cast<std::size_t>(std::max<std::int64_t>(place, 0))];
        ++week.lots;
        week.drawn += outcome.drawn;
        week.bad += outcome.badDrawn;
        week.missed += outcome.missed;
        if (outcome.inRates) {
            ++week.failed;
            week.failedLots.push_back(outcome.lot);
        }
    }
}

void takeFailureChart(const FailureQuestion& question, FailureTrend& trend) {
    std::vector<st::Counted> periods;
    std::vector<std::size_t> places; ///< of the weeks that have a point
    for (std::size_t i = 0; i < trend.weeks.size(); ++i) {
        if (trend.weeks[i].lots > 0) {
            places.push_back(i);
            periods.push_back({static_cast<double>(trend.weeks[i].failed), static_cast<double>(trend.weeks[i].lots)});
        }
    }
    st::ChartOptions options;
    options.rules = st::RuleSet::none().with(st::NelsonRule::BeyondThreeSigma).with(st::NelsonRule::OneSide);
    options.baseline = question.baseline;
    const auto chart = st::attributeChart(st::ChartKind::LaneyP, periods, options);
    if (!chart) {
        trend.usual = tl::unexpected(chart.error() == st::StatisticsFault::NoValues
                                         ? Refusal{NoFigure::noLots, 0, 1}
                                         : Refusal{NoFigure::tooFewWeeks, static_cast<std::int64_t>(places.size()), 2});
        return;
    }
    trend.usual = chart->baseline.center;
    trend.dispersion = chart->baseline.dispersion;
    trend.caveats = chart->baseline.caveats;
    for (std::size_t i = 0; i < places.size(); ++i) {
        auto& week = trend.weeks[places[i]];
        week.share = chart->points[i].value;
        week.limits = chart->points[i].limits;
        week.outside = chart->points[i].value > chart->points[i].limits.upper && trend.dispersion > 0.0;
    }
    const auto& findings = chart->findings; // empty weeks are not among the periods, so places are those of points
    for (std::size_t i = 0; i < findings.marks.size() && i < places.size(); ++i) {
        trend.weeks[places[i]].marks = findings.marks[i];
    }
    for (const auto& signal : findings.alarms) {
        FailureSignal said{signal.rule, signal.side, {}};
        for (const auto point : findings.pointsOf(signal)) {
            said.weeks.push_back(places[point]);
        }
        trend.alarms.push_back(std::move(said));
    }
}

} // namespace

FailureTrend failureTrend(const TrendFacts& facts, const FailureQuestion& question) {
    FailureTrend trend;
    const auto outcomes = lotOutcomes(facts, question.filter);
    trend.weeks = emptyWeeks(facts, outcomes);
    if (outcomes.empty()) {
        const Refusal none{NoFigure::noLots, 0, 1};
        trend.usual = tl::unexpected(none);
        trend.readingRate = tl::unexpected(none);
        trend.since = tl::unexpected(none);
        return trend;
    }
    fillWeeks(facts, outcomes, trend);
    std::int64_t drawn = 0;
    std::int64_t bad = 0;
    std::int64_t missed = 0;
    std::vector<std::int64_t> times;
    std::vector<st::FailedOfTotal> shares;
    for (const auto& week : trend.weeks) {
        trend.lots += week.lots;
        trend.failed += week.failed;
        drawn += week.drawn;
        bad += week.bad;
        missed += week.missed;
        times.push_back(week.begins);
        shares.push_back({week.failed, week.lots});
    }
    takeFailureChart(question, trend);
    if (const auto rate = st::rateWithMissed(bad, drawn, missed)) {
        trend.readingRate = *rate;
    } else {
        trend.readingRate = tl::unexpected(Refusal{NoFigure::noReadings, 0, 1});
    }
    trend.since = changeIn(facts, question.filter, times, shares, question.seed);
    return trend;
}

} // namespace holdfast::kiosk::shop::trending
