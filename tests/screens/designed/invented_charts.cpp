#include "tests/screens/designed/invented_charts.hpp"

#include <array>
#include <cmath>
#include <limits>
#include <random>

namespace holdfast::kiosk::screens::invented {
namespace {

constexpr double kSeptember = 20697.0; // 2026-09-01 in days since 1970-01-01
constexpr double kOctober = 20727.0;
constexpr double kNovember = 20758.0;

QString s(const char* text) {
    return QString::fromUtf8(text);
}

TrendAxis months() {
    return {.from = kSeptember,
            .to = kSeptember + 85.0,
            .ticks = {{kSeptember + 1.0, s("Sep")}, {kOctober, s("Oct")}, {kNovember, s("Nov")}},
            .days = true};
}

TrendAxis margins() {
    return {.ticks = {{0.0, s("0 °F"), true}, {10.0, s("+10")}}};
}

/// The same on every machine: sums of twelve uniform figures.
class Noise {
public:
    explicit Noise(unsigned seed) : m_random{seed} {}
    double normal() {
        double sum = -6.0;
        for (int i = 0; i < 12; ++i) {
            sum += uniform();
        }
        return sum;
    }
    double uniform() { return static_cast<double>(m_random() >> 8U) / 16777216.0; }

private:
    std::mt19937 m_random;
};

QList<TrendPoint> episodes(int count) {
    Noise noise{20391};
    QList<TrendPoint> points;
    for (int i = 0; i < count; ++i) {
        const double day = kSeptember + 1.0 + 84.0 * i / count;
        const double sink = std::max(0.0, day - (kOctober + 15.0)) / 7.0;
        points.append({.id = QStringLiteral("trends.run.%1").arg(20300 + i),
                       .spoken = QStringLiteral("run %1, margin %2 °F").arg(20300 + i).arg(11 - sink, 0, 'f', 1),
                       .x = day,
                       .y = 11.0 - sink + 1.6 * noise.normal(),
                       .mark = MarkKind::Cured,
                       .group = i});
    }
    return points;
}

QList<QPointF> averageOf(const QList<TrendPoint>& points, double weight) {
    QList<QPointF> line;
    double mean = points.first().y;
    for (const TrendPoint& point : points) {
        mean += weight * (point.y - mean);
        line.append({point.x, mean});
    }
    return line;
}

QList<TrendLine> limitsOf(double usual, double spread) {
    return {{.name = s("high"), .stroke = TrendStroke::Limit, .points = {{0.0, usual + spread}}},
            {.name = s("usual"), .stroke = TrendStroke::Centre, .points = {{0.0, usual}}},
            {.name = s("low"), .stroke = TrendStroke::Limit, .points = {{0.0, usual - spread}}},
            {.name = s("cure"), .stroke = TrendStroke::Proof, .points = {{0.0, 0.0}}}};
}

double logistic(double x) {
    return 1.0 / (1.0 + std::exp(-x));
}

} // namespace

TrendChartState marginChart() {
    TrendChartState chart;
    chart.title = s("The margin is sinking 1 °F a week since 16 October.");
    chart.detail = s("At this pace North reaches the cure line about 30 December.");
    chart.x = months();
    chart.y = margins();
    chart.points = episodes(40);
    chart.points[35].y = -8.0;
    chart.points[35].mark = MarkKind::UnderCured;
    chart.points[35].rule = 1;
    for (int i = 28; i < 34; ++i) {
        chart.points[i].rule = 2;
    }
    chart.lines = limitsOf(10.0, 7.0);
    chart.lines.append({.stroke = TrendStroke::Average, .points = averageOf(chart.points, 0.2)});
    chart.events = {{.x = kOctober + 14.0, .text = s("belt 12 to 14 ft/min")},
                    {.x = kSeptember + 20.0, .text = s("family revised")}};
    chart.brackets = {
        {.from = chart.points[28].x, .to = chart.points[39].x, .text = s("12 runs in a row below usual")}};
    chart.notes = {{.x = chart.points[35].x, .y = -8.0, .text = s("20335, cold start")}};
    chart.rules = {{1, s("beyond the limits: look at this run alone")},
                   {2, s("nine in a row on one side: the usual margin has moved")}};
    chart.spoken = s("40 runs from 2 September to 25 November. Usual +10 °F, limits +3 and +17. One run below cure.");
    chart.pressHint = s("Arrow keys go along the runs.");
    return chart;
}

TrendChartState stripChart() {
    TrendChartState chart = marginChart();
    chart.title = s("Strips say where the margin may have been, not where it was.");
    chart.detail = {};
    chart.brackets = {};
    chart.events = {};
    chart.rules = {};
    chart.notes = {};
    chart.lines.removeLast();
    QList<TrendPoint> kept;
    for (int i = 0; i < 40; i += 2) {
        TrendPoint point = chart.points[i];
        if (point.x > kOctober + 2.0 && point.x < kOctober + 16.0) {
            continue; // two weeks without a run
        }
        point.rule = i == 30 ? 1 : 0;
        if (i % 3 != 0) {
            point.span = TrendSpan{.low = point.y - 4.0, .high = point.y + 5.0, .openLow = i == 8, .openHigh = i == 26};
        }
        kept.append(point);
    }
    chart.points = kept;
    chart.note = s("2 of 18 strips are open at one end and are not in the usual margin.");
    return chart;
}

TrendChartState failureChart() {
    TrendChartState chart;
    chart.title = s("Week 48 is over the limit: 10 % of its lots failed.");
    chart.detail = s("All others are within chance.");
    const std::array<double, 12> shares{2, 3, 1, 2, -1, 3, 2, 2, 4, 3, 5, 10};
    const std::array<double, 12> limits{8, 8.5, 7.6, 9, 8.4, 8, 8.6, 8, 8.5, 7.9, 8.4, 8.1};
    TrendLine limit{.name = s("limit"), .stroke = TrendStroke::Limit, .points = {}, .stepped = true};
    for (int i = 0; i < 12; ++i) {
        const auto at = static_cast<std::size_t>(i);
        const QString week = QString::number(37 + i);
        chart.x.ticks.append({37.0 + i, week, i == 11});
        limit.points.append({37.0 + i, limits[at]});
        if (shares[at] < 0.0) {
            continue; // no lots in that week
        }
        TrendBar bar{.id = QStringLiteral("trends.week.%1").arg(week),
                     .spoken = QStringLiteral("week %1: %2 % failed").arg(week).arg(shares[at]),
                     .x = 37.0 + i,
                     .value = shares[at],
                     .strong = i == 11};
        if (i == 7 || i == 10) {
            bar.upTo = shares[at] + 2.5;
        }
        chart.bars.append(bar);
    }
    chart.y.ticks = {{0.0, s("0")}, {8.0, s("8 %")}};
    chart.lines = {limit};
    chart.plotHeight = 136.0;
    chart.note = s("Hatched: readings that were missed could make it so many.");
    chart.spoken = s("Failed lots each week, 37 to 48: up to 5 %, and 10 % in week 48. No lots in week 41.");
    return chart;
}

TrendChartState sharedChart() {
    TrendChartState chart;
    chart.title = s("What failures share");
    chart.detail = s("9 failed lots, 310 good ones");
    const auto row = [](const char* rank, const char* name, const char* word, bool strong, const char* counts,
                        TrendShare with, TrendShare without) {
        return TrendRow{.id = s("trends.share.") + s(rank),
                        .spoken = s(name) + s(": ") + s(counts),
                        .rank = s(rank),
                        .name = s(name),
                        .word = s(word),
                        .counts = s(counts),
                        .strong = strong,
                        .with = with,
                        .without = without};
    };
    // Clopper–Pearson limits of 7/9, 11/310, 4/9, 58/310, 5/9, 142/310, rounded.
    chart.rows = {row("1", "Mixed bucket M-118", "strong", true, "7 of 9 with it, 11 of 310 without",
                      {0.778, 0.400, 0.972}, {0.035, 0.018, 0.063}),
                  row("2", "First run of the day", "weak", false, "4 of 9 with it, 58 of 310 without",
                      {0.444, 0.137, 0.788}, {0.187, 0.145, 0.235}),
                  row("3", "North dryer", "cannot be told apart", false, "5 of 9 with it, 142 of 310 without",
                      {0.556, 0.212, 0.863}, {0.458, 0.402, 0.515})};
    chart.note = s("Sharing is not causing. To test it, print one piece from M-118 and one without.");
    chart.spoken = s("Three things that 9 failed lots share, the strongest first.");
    return chart;
}

TrendChartState sinceChart() {
    TrendChartState chart;
    chart.title = s("Since some day from 12 to 20 October, or from 3 November on.");
    chart.detail = s("The belt was changed in that time.");
    chart.x = months();
    TrendLine likely{.name = {}, .stroke = TrendStroke::Fit, .points = {}, .stepped = false};
    for (int i = 0; i <= 84; ++i) {
        const double day = kSeptember + i;
        const double first = std::exp(-std::pow((day - kOctober - 15.0) / 4.5, 2.0));
        const double second = 0.35 * std::exp(-std::pow((day - kNovember - 3.0) / 2.0, 2.0));
        likely.points.append({day, first + second});
    }
    chart.lines = {likely};
    chart.stretches = {{.from = kOctober + 11.0, .to = kOctober + 19.0, .text = s("12 – 20 Oct")},
                       {.from = kNovember + 2.0, .to = kNovember + 5.0, .text = s("3 – 6 Nov")}};
    chart.events = {{.id = s("trends.event.1"), .x = kOctober + 14.0, .text = s("belt 12 to 14 ft/min")},
                    {.id = s("trends.event.2"), .x = kSeptember + 20.0, .text = s("family revised")},
                    {.id = s("trends.event.3"), .x = kNovember + 8.0, .text = s("bucket M-118 opened")}};
    chart.y.name = s("how well a day explains it");
    chart.y.from = 0.0;
    chart.y.to = 1.15;
    chart.plotHeight = 120.0;
    chart.spoken = s("Most likely 12 to 20 October; 3 to 6 November cannot be ruled out. Belt changed on 15 October.");
    return chart;
}

TrendChartState survivalChart() {
    TrendChartState chart;
    chart.title = s("At +6 °F about 95 of 100 prints outlive five washes.");
    chart.detail = s("From 62 prints of 14 lots; the grey is where the truth may lie.");
    Noise noise{118};
    for (int i = 0; i < 62; ++i) {
        const double margin = -9.0 + 24.0 * noise.uniform();
        const bool survived = noise.uniform() < logistic(0.55 * (margin - 0.6));
        chart.points.append({.id = QStringLiteral("trends.print.%1").arg(i),
                             .spoken = QStringLiteral("print %1 of lot %2").arg(i).arg(i % 14),
                             .x = margin,
                             .y = survived ? 1.0 : 0.0,
                             .mark = margin >= 0.0 ? MarkKind::Cured : MarkKind::UnderCured,
                             .group = i % 14});
    }
    TrendLine fit{.name = {}, .stroke = TrendStroke::Fit, .points = {}, .stepped = false};
    TrendBand band;
    for (double margin = -9.0; margin <= 15.0; margin += 0.5) {
        fit.points.append({margin, logistic(0.55 * (margin - 0.6))});
        band.limits.append({margin, logistic(0.40 * (margin - 2.0)), logistic(0.70 * (margin + 0.8))});
    }
    chart.lines = {fit};
    chart.bands = {band};
    chart.jitter = 0.16;
    chart.x.ticks = {{-5.0, s("−5")}, {0.0, s("0 °F"), true}, {5.0, s("+5")}, {10.0, s("+10")}};
    chart.x.name = s("margin");
    chart.y.ticks = {{0.0, s("failed")}, {0.5, s("half")}, {1.0, s("lived")}};
    chart.spoken = s("62 prints: survival of five washes against margin, rising from none at −8 to nearly all at +8.");
    return chart;
}

TrendChartState ladderChart() {
    TrendChartState chart = survivalChart();
    chart.title = s("No curve yet: 3 prints failed, 10 are needed.");
    chart.detail = {};
    chart.lines = {};
    chart.bands = {};
    chart.points.remove(20, 42);
    chart.note = s("A cure ladder would tell: twelve squares from raw to cured, washed together.");
    return chart;
}

TrendChartState driftChart() {
    TrendChartState chart;
    chart.title = s("North loses 0.8 to 1.3 °F a week.");
    chart.detail = s("The cure line is reached in 5 to 9 weeks, if nothing is done.");
    chart.x = months();
    chart.x.to = chart.x.from = 0.0;
    chart.x.ticks.append({kNovember + 30.0, s("Dec")});
    chart.x.ticks.append({kNovember + 61.0, s("Jan")});
    chart.y = margins();
    chart.points = episodes(32);
    const double start = kOctober + 15.0;
    const double now = kSeptember + 84.0;
    chart.points.removeIf([&](const TrendPoint& point) { return point.x < start; });
    const auto on = [&](double slope, double day) { return 11.0 + slope * (day - start) / 7.0; };
    const double end = now + 63.0;
    chart.lines = {{.stroke = TrendStroke::Fit, .points = {{start, 11.0}, {now, on(-1.04, now)}}},
                   {.stroke = TrendStroke::Outlook, .points = {{now, on(-1.04, now)}, {end, on(-1.04, end)}}},
                   {.name = s("cure"), .stroke = TrendStroke::Proof, .points = {{0.0, 0.0}}}};
    chart.bands = {{.limits = {{start, 10.0, 12.0},
                               {now, on(-1.3, now) - 0.5, on(-0.8, now) + 0.5},
                               {end, on(-1.3, end) - 0.5, on(-0.8, end) + 0.5}}}};
    chart.stretches = {{.from = start + 7.0 * 8.5, .to = start + 7.0 * 13.8, .y = 0.0, .text = s("14 Dec to 20 Jan")}};
    chart.spoken = s("16 runs since 16 October; the slope is −1.04 °F a week, from −1.3 to −0.8.");
    return chart;
}

TrendChartState briefingChart() {
    TrendChartState chart;
    chart.title = s("64 lots this week, about as many as usual.");
    const std::array<int, 14> lots{58, 61, 49, 66, 70, 55, 0, 62, 64, 57, 68, 60, 59, 64};
    for (int i = 0; i < 14; ++i) {
        const int many = lots[static_cast<std::size_t>(i)];
        chart.bars.append({.id = QStringLiteral("briefing.week.%1").arg(35 + i),
                           .spoken = QStringLiteral("week %1: %2 lots").arg(35 + i).arg(many),
                           .text = QString::number(many),
                           .x = 35.0 + i,
                           .value = static_cast<double>(many),
                           .strong = i == 13});
        chart.x.ticks.append({35.0 + i, QString::number(35 + i), i == 13});
    }
    chart.lines = {{.name = s("usual"), .stroke = TrendStroke::Limit, .points = {{0.0, 60.0}}}};
    chart.plotHeight = 112.0;
    chart.spoken = s("Lots each week, 35 to 48; 64 this week, 60 as usual, none in week 41.");
    return chart;
}

TrendChartState denseChart() {
    TrendChartState chart;
    chart.title = s("2000 readings hold within the limits.");
    chart.x = months();
    chart.y = margins();
    Noise noise{2000};
    for (int i = 0; i < 2000; ++i) {
        chart.points.append({.id = QStringLiteral("trends.reading.%1").arg(i),
                             .spoken = QStringLiteral("reading %1").arg(i),
                             .x = kSeptember + 1.0 + 84.0 * i / 2000.0,
                             .y = 10.0 + 1.9 * noise.normal(),
                             .mark = MarkKind::Cured});
    }
    for (const int i : {300, 1207, 1754}) {
        chart.points[i].y = i == 1754 ? -3.0 : 19.0;
        chart.points[i].rule = 1;
        chart.points[i].mark = i == 1754 ? MarkKind::UnderCured : MarkKind::Overheated;
    }
    chart.lines = limitsOf(10.0, 6.0);
    chart.lines.append({.stroke = TrendStroke::Average, .points = averageOf(chart.points, 0.05)});
    chart.rules = {{1, s("beyond the limits")}};
    chart.spoken = s("2000 readings, three of them beyond the limits.");
    return chart;
}

TrendChartState emptyChart() {
    TrendChartState chart;
    chart.title = s("Nothing can be said of South yet.");
    chart.x = months();
    chart.y = margins();
    chart.y.from = -6.0;
    chart.y.to = 16.0;
    chart.lines = {{.name = s("cure"), .stroke = TrendStroke::Proof, .points = {{0.0, 0.0}}}};
    chart.none = s("Twenty runs are needed for limits; three are there.");
    chart.plotHeight = 176.0;
    chart.spoken = s("No runs to draw.");
    return chart;
}

TrendChartState longChart() {
    TrendChartState chart = marginChart();
    chart.title = s("El margen de la secadora grande del norte baja medio grado por semana desde mediados de octubre.");
    chart.detail = s("A este paso llegará a la línea de curado entre el catorce de diciembre y el veinte de enero.");
    chart.lines[0].name = s("límite superior");
    chart.lines[1].name = s("lo acostumbrado");
    chart.lines[2].name = s("límite inferior");
    chart.lines[3].name = s("curado");
    chart.brackets[0].text = s("doce corridas seguidas por debajo de lo acostumbrado");
    chart.events = {{.x = kOctober + 14.0, .text = s("velocidad de la banda cambiada de 12 a 14 pies por minuto")},
                    {.x = kOctober + 15.0, .text = s("familia de tinta blanca revisada")},
                    {.x = kOctober + 17.0, .text = s("cubeta M-118 abierta")},
                    {.x = kNovember + 20.0, .text = s("sonda P-3 calibrada de nuevo")}};
    chart.notes[0].text = s("20335, arranque en frío");
    chart.x.ticks.clear();
    for (int day = 1; day < 84; day += 2) {
        chart.x.ticks.append({kSeptember + day, QString::number(day)});
    }
    chart.points[3].y = std::numeric_limits<double>::quiet_NaN();
    return chart;
}

} // namespace holdfast::kiosk::screens::invented
