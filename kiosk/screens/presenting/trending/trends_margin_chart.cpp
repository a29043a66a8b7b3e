#include "kiosk/screens/presenting/deciding/film_mark.hpp"
#include "kiosk/screens/presenting/shown.hpp"
#include "kiosk/screens/presenting/trending/trends_axes.hpp"
#include "kiosk/screens/presenting/trending/trends_charts.hpp"

#include <algorithm>
#include <limits>
#include <set>

namespace holdfast::kiosk::screens {
namespace {

using analytics::statistics::DriftStanding;
using analytics::statistics::NelsonRule;
using trending::Episode;
using trending::FactIndex;
using trending::kNoFact;

constexpr std::size_t kMostEvents = 2;
constexpr std::size_t kMostBrackets = 2;
constexpr int kMostRules = 2;
constexpr std::size_t kMostNotes = 3;
constexpr double kOutlook = 0.25; // of the time shown: what lies further ahead is said, not drawn

bool drifts(const trending::Figure<trending::MarginDrift>& drift) {
    return drift && (drift->standing == DriftStanding::Crosses || drift->standing == DriftStanding::MovesAway ||
                     drift->standing == DriftStanding::AlreadyPast);
}

const records::TrendRun* runOf(const TrendsFound& found, FactIndex run) {
    return run == kNoFact ? nullptr : &found.facts->runs[static_cast<std::size_t>(run)];
}

TrendPoint pointOf(const Episode& episode, const TrendsFound& found, const TrendsHow& how) {
    TrendPoint point;
    point.x = how.axisDay(episode.from);
    point.y = std::numeric_limits<double>::quiet_NaN();
    point.mark = episode.worst ? filmMark(*episode.worst) : MarkKind::Blank;
    std::string value = how.text("trends.page.no-figure");
    if (episode.mean) {
        point.y = shown(*episode.mean, how.speech);
        value = how.speech.figures.signedDifference(*episode.mean);
    } else if (episode.between.low || episode.between.high) {
        TrendSpan span;
        span.openLow = !episode.between.low;
        span.openHigh = !episode.between.high;
        span.low = episode.between.low ? shown(*episode.between.low, how.speech) : 0.0;
        span.high = episode.between.high ? shown(*episode.between.high, how.speech) : 0.0;
        point.span = span;
        value = wording::marginText(episode.between, how.speech);
    }
    if (const auto* run = runOf(found, episode.leadsTo)) {
        point.id = toQString(std::string{kTrendsRun} + run->id);
        point.spoken = toQString(
            how.text("trends.page.point",
                     {{"run", std::to_string(run->number)}, {"day", how.day(episode.from)}, {"margin", value}}));
    }
    return point;
}

/// A rule is numbered where it marks points; the latest two that speak of a stretch stand over it.
void addRules(TrendChartState& chart, const TrendsFound& found, const TrendsHow& how) {
    std::set<std::pair<NelsonRule, int>> told;
    std::size_t brackets = 0;
    const auto& margin = found.margin;
    for (auto signal = margin.alarms.rbegin(); signal != margin.alarms.rend(); ++signal) {
        if (signal->episodes.empty()) {
            continue;
        }
        const auto text = toQString(ruleText(*signal, how));
        const bool ofOne = signal->rule == NelsonRule::BeyondThreeSigma && signal->episodes.size() == 1;
        if (!ofOne && brackets < kMostBrackets) {
            chart.brackets.append({how.axisDay(margin.episodes[signal->episodes.front()].from),
                                   how.axisDay(margin.episodes[signal->episodes.back()].from), text});
            ++brackets;
        }
        const auto key = std::make_pair(signal->rule, static_cast<int>(signal->side));
        if (chart.rules.size() < kMostRules && told.insert(key).second) {
            const int number = static_cast<int>(chart.rules.size()) + 1;
            chart.rules.append(
                {number, toQString(how.text("trends.page.rule",
                                            {{"rule", ruleText(*signal, how)},
                                             {"days", how.days(margin.episodes[signal->episodes.front()].from,
                                                               margin.episodes[signal->episodes.back()].from)}}))});
            for (const auto episode : signal->episodes) {
                auto& point = chart.points[static_cast<qsizetype>(episode)];
                point.rule = point.rule == 0 ? number : point.rule;
            }
        }
    }
}

void addLimits(TrendChartState& chart, const TrendsFound& found, const TrendsHow& how) {
    const auto level = [&](analytics::TemperatureDifference at, const char* name, TrendStroke stroke) {
        chart.lines.append({toQString(how.text(name)), stroke, {{chart.x.from, shown(at, how.speech)}}, false});
    };
    level({}, "trends.page.cure", TrendStroke::Proof);
    if (!found.margin.limits) {
        return;
    }
    level(found.margin.limits->upper, "trends.page.high", TrendStroke::Limit);
    level(found.margin.limits->centre, "trends.page.usual", TrendStroke::Centre);
    level(found.margin.limits->lower, "trends.page.low", TrendStroke::Limit);
    TrendLine average{{}, TrendStroke::Average, {}, false};
    for (const auto& point : found.margin.points) {
        const auto at = how.axisDay(found.margin.episodes[point.episode].from);
        average.points.append(
            {at, point.ewma ? shown(*point.ewma, how.speech) : std::numeric_limits<double>::quiet_NaN()});
    }
    if (!drifts(found.margin.drift)) {
        chart.lines.append(average);
    }
}

void addDrift(TrendChartState& chart, const TrendsFound& found, const TrendsHow& how) {
    const auto& drift = found.margin.drift;
    if (!drifts(drift) || found.margin.episodes.empty()) {
        return;
    }
    constexpr double kWeek = 7.0;
    const double last = how.axisDay(found.margin.episodes.back().from);
    const double first = how.axisDay(found.margin.episodes.front().from);
    const double now = shown(drift->now, how.speech);
    const double aDay = shown(drift->aWeek, how.speech) / kWeek;
    chart.lines.append({{}, TrendStroke::Fit, {{first, now - (last - first) * aDay}, {last, now}}, false});
    const double latest = last + drift->weeksLatest * kWeek;
    if (drift->standing == DriftStanding::Crosses && latest - last <= kOutlook * (last - first)) {
        chart.lines.append({{}, TrendStroke::Outlook, {{last, now}, {latest, now + (latest - last) * aDay}}, false});
        chart.stretches.append({last + drift->weeksEarliest * kWeek, latest, 0.0, {}});
        chart.x.to = std::max(chart.x.to, latest + 1.0);
    }
}

void addSince(TrendChartState& chart, const TrendsFound& found, const TrendsHow& how) {
    const auto& since = found.margin.since;
    if (!since) {
        return;
    }
    for (std::size_t i = 0; i < since->possible.size(); ++i) {
        const auto& span = since->possible[i];
        const auto text = i == 0
                              ? how.text("trends.page.since", {{"days", how.days(since->earliest(), since->latest())}})
                              : std::string{};
        chart.stretches.append({how.axisDay(span.from), how.axisDay(span.to), std::nullopt, toQString(text)});
    }
    for (const auto index : turningEvents(*since, found, kMostEvents)) {
        const auto& event = found.facts->events[static_cast<std::size_t>(index)];
        chart.events.append({{}, how.axisDay(event.at), toQString(eventText(event, found, how))});
    }
}

/// Runs of the lowest episodes that failed, named beside their points.
void addNotes(TrendChartState& chart, const TrendsFound& found) {
    std::vector<qsizetype> failed;
    for (qsizetype i = 0; i < chart.points.size(); ++i) {
        const auto& point = chart.points[i];
        if (point.mark == MarkKind::UnderCured || point.mark == MarkKind::Overheated) {
            failed.push_back(i);
        }
    }
    if (failed.size() > kMostNotes) {
        return; // they would cover the chart
    }
    for (const auto i : failed) {
        const auto& point = chart.points[i];
        const auto* run = runOf(found, found.margin.episodes[static_cast<std::size_t>(i)].leadsTo);
        if (run != nullptr && std::isfinite(point.y)) {
            chart.notes.append({point.x, point.y, QString::number(run->number)});
        }
    }
}

/// Around the limits, the cure line and nearly all points; one far outside stands at the edge with an arrow.
TrendAxis heightOf(const TrendChartState& chart, const TrendsFound& found, const TrendsHow& how) {
    std::vector<double> all{0.0};
    for (const auto& point : chart.points) {
        if (std::isfinite(point.y)) {
            all.push_back(point.y);
        } else if (point.span && !point.span->openLow) {
            all.push_back(point.span->low);
        }
    }
    std::sort(all.begin(), all.end());
    const auto last = static_cast<double>(all.size() - 1);
    const auto at = [&](double share) { return all[static_cast<std::size_t>(std::lround(share * last))]; };
    double low = std::min(0.0, at(0.01));
    double high = std::max(0.0, at(0.99));
    if (found.margin.limits) {
        low = std::min(low, shown(found.margin.limits->lower, how.speech));
        high = std::max(high, shown(found.margin.limits->upper, how.speech));
    }
    const double air = std::max(1.0, (high - low) * 0.08);
    return marginAxis(std::max(low, -2.0 * std::max(high, 1.0)) - air, high + air, how);
}

} // namespace

TrendChartState marginChart(const TrendsFound& found, const TrendsHow& how) {
    constexpr double kHeight = 190.0;
    TrendChartState chart;
    chart.title = toQString(marginLead(found, how));
    chart.detail = toQString(marginDetail(found, how));
    chart.plotHeight = kHeight;
    chart.pressHint = toQString(how.text("trends.page.press-points"));
    const auto& episodes = found.margin.episodes;
    if (episodes.empty()) {
        const auto now = how.now;
        chart.x = dayAxis(now - trending::kWeekMs, now, how);
        chart.y = marginAxis(-10.0, 20.0, how);
        chart.lines.append({toQString(how.text("trends.page.cure")), TrendStroke::Proof, {{chart.x.from, 0.0}}, false});
        chart.none = toQString(how.text("trends.page.margin-none"));
        chart.spoken = chart.none;
        return chart;
    }
    chart.x = dayAxis(episodes.front().from, episodes.back().from, how);
    for (const auto& episode : episodes) {
        chart.points.append(pointOf(episode, found, how));
    }
    addLimits(chart, found, how);
    addRules(chart, found, how);
    addDrift(chart, found, how);
    addSince(chart, found, how);
    addNotes(chart, found);
    chart.y = heightOf(chart, found, how);
    chart.spoken = chart.detail;
    return chart;
}

} // namespace holdfast::kiosk::screens
