// A chart of any kind in the one grammar of the owner's charts.
#include "kiosk/command/chart.hpp"

#include <algorithm>
#include <cmath>

namespace holdfast::kiosk::command {

namespace {

namespace st = analytics::statistics;
using namespace screens;

QString text(const std::string& said) {
    return QString::fromStdString(said);
}

/// Three to six even steps.
QList<TrendTick> evenTicks(double low, double high, bool whole) {
    constexpr double kSteps = 5.0;
    QList<TrendTick> ticks;
    const double span = high - low;
    if (!(span > 0.0) || !std::isfinite(span)) {
        ticks.append({low, text(shown(low)), false});
        return ticks;
    }
    const double rough = span / kSteps;
    const double power = std::pow(10.0, std::floor(std::log10(rough)));
    const double lead = rough / power;
    double step = power * (lead < 1.5 ? 1.0 : lead < 3.5 ? 2.0 : lead < 7.5 ? 5.0 : 10.0);
    step = whole ? std::max(1.0, step) : step;
    const double first = std::ceil(low / step);
    for (double i = first; i * step <= high + 1e-9 * step; i += 1.0) {
        const double at = i * step;
        ticks.append({at, text(shown(std::fabs(at) < 1e-9 * step ? 0.0 : at)), false});
    }
    return ticks;
}

void addLine(TrendChartState& state, const Charted& chart, const char* name, TrendStroke stroke,
             double st::Limits::*side) {
    TrendLine line;
    line.name = text(said(name));
    line.stroke = stroke;
    line.stepped = chart.limits.size() > 1;
    for (std::size_t i = 0; i < chart.limits.size(); ++i) {
        const bool plotted = chart.plotted.empty() || chart.plotted[i] != 0;
        line.points.append({static_cast<double>(i + 1), plotted ? chart.limits[i].*side : std::nan("")});
    }
    state.lines.append(line);
}

void addRules(TrendChartState& state, const Charted& chart) {
    std::vector<int> told;
    for (const auto& signal : chart.alarms) {
        if (signal.rule > 0 && std::find(told.begin(), told.end(), signal.rule) == told.end()) {
            told.push_back(signal.rule);
            state.rules.append({signal.rule, text(ruleSaid(signal.rule, signal.side, signal.points.size()))});
        }
    }
    std::sort(state.rules.begin(), state.rules.end(),
              [](const TrendRule& one, const TrendRule& other) { return one.number < other.number; });
}

} // namespace

TrendChartState pictureOf(const Charted& chart, const std::string& detail, const std::string& valueName) {
    TrendChartState state;
    state.title = text(chart.alarms.empty() ? said("signals-none") : signalSaid(chart, chart.alarms.back()));
    state.detail = text(detail);
    state.y.name = text(valueName);
    double low = std::numeric_limits<double>::infinity();
    double high = -low;
    const auto reach = [&](double value) {
        low = std::isfinite(value) ? std::min(low, value) : low;
        high = std::isfinite(value) ? std::max(high, value) : high;
    };
    std::vector<int> rules(chart.values.size(), 0);
    for (const auto& signal : chart.alarms) {
        for (const auto point : signal.points) {
            rules[point] = rules[point] == 0 ? signal.rule : std::min(rules[point], signal.rule);
        }
    }
    state.points.reserve(static_cast<qsizetype>(chart.values.size()));
    for (std::size_t i = 0; i < chart.values.size(); ++i) {
        if (!chart.plotted.empty() && chart.plotted[i] == 0) {
            continue;
        }
        TrendPoint point;
        point.x = static_cast<double>(i + 1);
        point.y = chart.values[i];
        point.rule = rules[i];
        state.points.append(point);
        reach(point.y);
    }
    for (const auto& limits : chart.limits) {
        reach(limits.lower);
        reach(limits.upper);
    }
    addLine(state, chart, "line.centre", TrendStroke::Centre, &st::Limits::center);
    addLine(state, chart, "line.low", TrendStroke::Limit, &st::Limits::lower);
    addLine(state, chart, "line.high", TrendStroke::Limit, &st::Limits::upper);
    if (chart.kind == "margin") {
        reach(0.0);
        state.lines.append({text(said("line.cure")), TrendStroke::Proof, {{1.0, 0.0}}, false});
    }
    addRules(state, chart);
    const double room = high > low ? 0.05 * (high - low) : 1.0;
    state.y.from = low - room;
    state.y.to = high + room;
    state.y.ticks = evenTicks(state.y.from, state.y.to, false);
    state.x.from = 1.0;
    state.x.to = std::max(2.0, static_cast<double>(chart.values.size()));
    state.x.ticks = evenTicks(state.x.from, state.x.to, true);
    for (auto& tick : state.x.ticks) {
        tick.text = text(pointName(chart, static_cast<std::size_t>(tick.at) - 1));
    }
    for (const auto caveat : chart.baseline ? chart.baseline->caveats : std::vector<st::ChartCaveat>{}) {
        state.note += (state.note.isEmpty() ? QString() : QStringLiteral(" ")) +
                      text(said("caveat." + std::string{nameOf(caveat)}, {{"points", count(chart.baseline->points)}}));
    }
    state.spoken = state.title + QLatin1Char(' ') + state.detail;
    return state;
}

} // namespace holdfast::kiosk::command
