// The charts beside the margins.
#include "kiosk/screens/presenting/trending/trends_charts.hpp"

#include "kiosk/screens/presenting/deciding/film_mark.hpp"
#include "kiosk/screens/presenting/shown.hpp"
#include "kiosk/screens/presenting/trending/trends_axes.hpp"
#include "kiosk/screens/presenting/trending/trends_words.hpp"

#include <algorithm>
#include <cmath>

namespace holdfast::kiosk::screens {
namespace {

constexpr double kMidWeek = 3.5;

double shareOf(std::int64_t part, std::int64_t whole) {
    return whole > 0 ? static_cast<double>(part) / static_cast<double>(whole) : 0.0;
}

TrendBar barOf(const trending::FailureWeek& week, std::size_t at, const TrendsHow& how) {
    TrendBar bar;
    bar.x = how.axisDay(week.begins) + kMidWeek;
    bar.value = *week.share * kHundred;
    bar.strong = week.outside;
    bar.spoken = toQString(how.text("trends.page.week", {{"week", std::to_string(week.isoWeek)},
                                                         {"failed", std::to_string(week.failed)},
                                                         {"lots", std::to_string(week.lots)}}));
    bar.id = week.failed > 0 ? toQString(std::string{kTrendsWeek} + std::to_string(at)) : QString{};
    return bar;
}

TrendRow rowOf(const trending::Suspect& suspect, std::size_t at, const TrendsHow& how) {
    TrendRow row;
    row.id = toQString(std::string{kTrendsSuspect} + std::to_string(at));
    row.rank = QString::number(at + 1);
    row.name = toQString(levelName(suspect.level, how));
    row.word = toQString(strengthWord(suspect.strength, how));
    row.counts = toQString(countsText(suspect, how));
    row.strong = suspect.strength == trending::Strength::strong;
    row.with.share = shareOf(suspect.failedWith, suspect.failedWith + suspect.failedWithout);
    const auto goodWith = suspect.with - suspect.failedWith;
    row.without.share = shareOf(goodWith, goodWith + suspect.without - suspect.failedWithout);
    row.spoken = QStringLiteral("%1 %2, %3, %4").arg(row.rank, row.name, row.word, row.counts);
    return row;
}

TrendPoint washPointOf(const trending::WashPoint& point, const TrendsFound& found, const TrendsHow& how) {
    const auto& run = runAt(*found.facts, point.run);
    TrendPoint shownAs;
    shownAs.id = toQString(std::string{kTrendsRun} + run.id);
    shownAs.x = shown(point.margin, how.speech);
    shownAs.y = point.held ? kHundred : 0.0;
    shownAs.group = static_cast<int>(point.lot);
    shownAs.spoken = toQString(
        how.text(point.held ? "trends.page.wash-held" : "trends.page.wash-failed",
                 {{"run", std::to_string(run.number)}, {"margin", how.speech.figures.signedDifference(point.margin)}}));
    return shownAs;
}

/// The curve from the lowest margin to the highest.
TrendLine curveOf(const trending::WashCurve& curve, double from, double to, const TrendsHow& how) {
    constexpr int kSteps = 60;
    TrendLine line{{}, TrendStroke::Fit, {}, false};
    for (int i = 0; i <= kSteps; ++i) {
        const double at = from + (to - from) * i / kSteps;
        const auto margin = analytics::TemperatureDifference::from(at, how.speech.figures.unit);
        line.points.append({at, curve.holdsAt(margin) * kHundred});
    }
    return line;
}

} // namespace

TrendChartState failureChart(const TrendsFound& found, const TrendsHow& how) {
    constexpr double kHeight = 100.0;
    TrendChartState chart;
    chart.title = toQString(failureLead(found, how));
    chart.detail = toQString(failureDetail(found, how));
    chart.plotHeight = kHeight;
    chart.pressHint = toQString(how.text("trends.page.press-weeks"));
    TrendLine limit{toQString(how.text("trends.page.limit")), TrendStroke::Limit, {}, true};
    double highest = 0.0;
    const auto& weeks = found.failures.weeks;
    for (std::size_t i = 0; i < weeks.size(); ++i) {
        const auto& week = weeks[i];
        if (week.share) {
            chart.bars.append(barOf(week, i, how));
            highest = std::max(highest, *week.share * kHundred);
            if (week.limits) {
                limit.points.append({how.axisDay(week.begins) + kMidWeek, week.limits->upper * kHundred});
                highest = std::max(highest, week.limits->upper * kHundred);
            }
        }
        chart.x.ticks.append({how.axisDay(week.begins) + kMidWeek, QString::number(week.isoWeek), week.outside});
    }
    chart.x.days = true;
    if (!limit.points.isEmpty()) {
        chart.lines.append(limit);
    }
    chart.y = shareAxis(highest, how);
    if (chart.bars.isEmpty()) {
        chart.x = dayAxis(how.now - trending::kWeekMs, how.now, how);
        chart.none = toQString(how.text("trends.page.failures-none"));
    }
    chart.spoken = chart.detail;
    return chart;
}

TrendChartState suspectsChart(const TrendsFound& found, const TrendsHow& how) {
    TrendChartState chart;
    chart.title = toQString(how.text("trends.page.suspects"));
    chart.detail = toQString(suspectsDetail(found, how));
    chart.pressHint = toQString(how.text("trends.page.press-rows"));
    for (std::size_t i = 0; i < found.named.size(); ++i) {
        chart.rows.append(rowOf(found.named[i].suspect, i, how));
    }
    chart.spoken = chart.detail;
    return chart;
}

TrendChartState washChart(const TrendsFound& found, const TrendsHow& how) {
    constexpr double kHeight = 340.0;
    constexpr double kJitter = 16.0; // per cent: many prints stand at the same end
    TrendChartState chart;
    chart.title = toQString(washLead(found, how));
    chart.detail = toQString(washDetail(found, how));
    chart.plotHeight = kHeight;
    chart.jitter = kJitter;
    chart.pressHint = toQString(how.text("trends.page.press-points"));
    double from = 0.0;
    double to = 0.0;
    for (const auto& point : found.wash.points) {
        chart.points.append(washPointOf(point, found, how));
        const double at = chart.points.last().x;
        from = std::isfinite(at) ? std::min(from, at) : from;
        to = std::isfinite(at) ? std::max(to, at) : to;
    }
    const double air = std::max(1.0, (to - from) * 0.05);
    chart.x = marginAxis(from - air, to + air, how);
    chart.x.name = toQString(how.text("trends.page.wash-axis"));
    chart.y.from = -kJitter;
    chart.y.to = kHundred + kJitter;
    for (const int share : {0, 50, 100}) {
        chart.y.ticks.append(
            {static_cast<double>(share),
             toQString(share == 0     ? how.text("trends.page.wash-none-held")
                       : share == 100 ? how.text("trends.page.wash-all-held")
                                      : how.text("trends.page.percent", {{"share", std::to_string(share)}})),
             false});
    }
    if (found.wash.curve) {
        chart.lines.append(curveOf(*found.wash.curve, from, to, how));
    } else {
        chart.note = toQString(whyNot(found.wash.curve.error(), how));
    }
    if (chart.points.isEmpty()) {
        chart.none = toQString(how.text("trends.page.wash-none"));
    }
    chart.spoken = chart.detail;
    return chart;
}

TrendChartState instrumentsChart(const TrendsFound& found, const TrendsHow& how) {
    constexpr double kHeight = 300.0;
    TrendChartState chart;
    chart.title = toQString(how.text("trends.page.instruments"));
    chart.detail = toQString(how.text("trends.page.instruments-detail"));
    chart.plotHeight = kHeight;
    chart.pressHint = toQString(how.text("trends.page.press-points"));
    if (!found.instruments || found.instruments->empty()) {
        chart.x.from = 0.0;
        chart.x.to = 1.0;
        chart.y = marginAxis(-5.0, 5.0, how);
        chart.none = toQString(found.instruments ? how.text("trends.page.instruments-none")
                                                 : whyNot(found.instruments.error(), how));
        chart.spoken = chart.none;
        return chart;
    }
    double low = -1.0;
    double high = 1.0;
    double at = 0.0;
    for (const auto& offset : *found.instruments) {
        const auto& instrument = found.facts->instruments[static_cast<std::size_t>(offset.instrument)];
        const TrendSpan span{shown(offset.least, how.speech), shown(offset.most, how.speech), false, false};
        const auto id = toQString(std::string{kTrendsInstrument} + instrument.id);
        const auto spoken = toQString(offsetText(offset, found, how));
        at += 1.0;
        chart.points.append({id, spoken, at, 0.0, span, MarkKind::Blank, 0, 0});
        chart.points.append({{}, {}, at, shown(offset.hotter, how.speech), std::nullopt, MarkKind::Blank, 0, 0});
        chart.x.ticks.append({at, toQString(instrument.name), offset.strength == trending::Strength::strong});
        low = std::min(low, span.low);
        high = std::max(high, span.high);
    }
    chart.x.from = 0.5;
    chart.x.to = at + 0.5;
    const double air = (high - low) * 0.1;
    chart.y = marginAxis(low - air, high + air, how);
    chart.spoken = chart.detail;
    return chart;
}

} // namespace holdfast::kiosk::screens
