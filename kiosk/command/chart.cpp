#include "kiosk/command/chart.hpp"

#include "kiosk/screens/charts/chart_files.hpp"
#include "kiosk/wording/figures.hpp"

#include <algorithm>
#include <cmath>
#include <ostream>

namespace holdfast::kiosk::command {

namespace {

namespace st = analytics::statistics;

constexpr std::size_t kSaid = 20; ///< signals in text; JSON has all

Json limitsJson(const st::Limits& limits) {
    return {{"lower", figure(limits.lower)}, {"center", figure(limits.center)}, {"upper", figure(limits.upper)}};
}

/// "4 to 12", "4, 7 and 9"; long lists by their ends.
std::string pointsSaid(const Charted& chart, const std::vector<std::size_t>& points) {
    constexpr std::size_t kListed = 6;
    const bool together = points.back() - points.front() + 1 == points.size();
    if (points.size() == 1 || pointName(chart, points.front()) == pointName(chart, points.back())) {
        return pointName(chart, points.front());
    }
    if (together || points.size() > kListed) {
        return said("points-range",
                    {{"first", pointName(chart, points.front())}, {"last", pointName(chart, points.back())}});
    }
    std::string list;
    for (const auto point : points) {
        list += (list.empty() ? "" : ", ") + pointName(chart, point);
    }
    return list;
}

Json signalJson(const ChartSignal& signal) {
    Json json{{"rule", signal.rule == 0 ? Json() : Json(signal.rule)},
              {"text", ruleSaid(signal.rule, signal.side, signal.points.size())},
              {"side", nameOf(signal.side)},
              {"from", signal.points.front() + 1},
              {"met_at", signal.metAt + 1},
              {"to", signal.points.back() + 1}};
    if (signal.since) {
        json["since"] = *signal.since + 1;
    }
    Json points = Json::array();
    for (const auto point : signal.points) {
        points.push_back(point + 1);
    }
    json["points"] = std::move(points);
    return json;
}

void addLimits(Answer& answer, const Charted& chart) {
    answer.json["limits"] = chart.limits.size() == 1 ? limitsJson(chart.limits.front()) : Json();
    answer.json["besides"] = chart.besides ? limitsJson(*chart.besides) : Json();
    std::vector<std::size_t> outside;
    for (const auto point : chart.besidesOutside) {
        outside.push_back(point + 1);
    }
    answer.json["besides_outside"] = outside;
    if (chart.baseline) {
        const auto& base = *chart.baseline;
        answer.json["baseline"] = {{"center", figure(base.center)},
                                   {"sigma", figure(base.sigma)},
                                   {"sigma_error", figure(base.spreadError)},
                                   {"dispersion", figure(base.dispersion)},
                                   {"subgroup", base.subgroup},
                                   {"points", base.points}};
    }
    if (chart.limits.size() == 1) {
        const auto& limits = chart.limits.front();
        answer.say("limits",
                   {{"lower", shown(limits.lower)}, {"center", shown(limits.center)}, {"upper", shown(limits.upper)}});
    } else if (chart.baseline) {
        answer.say("limits-vary", {{"center", shown(chart.baseline->center)}});
    }
    if (!outside.empty()) {
        answer.say("besides-outside", {{"count", count(outside.size())}, {"point", count(outside.front())}});
    }
}

void addRunLength(Answer& answer, const Charted& chart, double shift) {
    answer.json["run_length"] = {{"in_control", figure(chart.inControl)},
                                 {"shift_sd", figure(shift)},
                                 {"shifted", figure(chart.shifted)},
                                 {"drawn_within", figure(chart.drawnWithin)}};
    if (chart.inControl && chart.shifted) {
        constexpr double kWhole = 100.0;
        const auto points = [](double length) { return wording::numberText(length, length < kWhole ? 1 : 0); };
        answer.say(
            "run-length",
            {{"in-control", points(*chart.inControl)}, {"shift", shown(shift)}, {"shifted", points(*chart.shifted)}});
        if (chart.drawnWithin) {
            constexpr double kBothWays = 2.0; // standard errors
            answer.say("run-length-drawn",
                       {{"percent", wording::numberText(kBothWays * kWhole * *chart.drawnWithin, 0)}});
        }
    }
}

} // namespace

std::string_view nameOf(st::SignalSide side) noexcept {
    return side == st::SignalSide::Above ? "above" : side == st::SignalSide::Below ? "below" : "both";
}

std::string_view nameOf(st::ChartCaveat caveat) noexcept {
    switch (caveat) {
    case st::ChartCaveat::FewPoints:
        return "few-points";
    case st::ChartCaveat::NoSpread:
        return "no-spread";
    case st::ChartCaveat::Correlated:
        return "correlated";
    case st::ChartCaveat::SmallCounts:
        return "small-counts";
    case st::ChartCaveat::OverDispersed:
        return "over-dispersed";
    case st::ChartCaveat::EmptyPeriods:
        break;
    }
    return "empty-periods";
}

std::string ruleSaid(int rule, st::SignalSide side, std::size_t points) {
    const auto key = "rule." + std::to_string(rule) + "." + std::string{nameOf(side)};
    return said(key, {{"points", count(points)}});
}

Json seriesJson(const Charted& chart) {
    std::vector<std::vector<int>> rules(chart.values.size());
    for (const auto& signal : chart.alarms) {
        for (const auto point : signal.points) {
            rules[point].push_back(signal.rule);
        }
    }
    Json series = Json::array();
    for (std::size_t i = 0; i < chart.values.size(); ++i) {
        const bool plotted = chart.plotted.empty() || chart.plotted[i] != 0;
        const auto& limits = chart.limits.size() == 1 ? chart.limits.front() : chart.limits[i];
        Json one{{"point", i + 1},
                 {"label", i < chart.labels.size() ? Json(chart.labels[i]) : Json()},
                 {"value", plotted ? figure(chart.values[i]) : Json()}};
        if (chart.limits.size() > 1) {
            one["lower"] = plotted ? figure(limits.lower) : Json();
            one["center"] = plotted ? figure(limits.center) : Json();
            one["upper"] = plotted ? figure(limits.upper) : Json();
        }
        if (!chart.beside.empty()) {
            one["beside"] = figure(chart.beside[i]);
        }
        one["rules"] = rules[i];
        series.push_back(std::move(one));
    }
    return series;
}

std::string pointName(const Charted& chart, std::size_t point) {
    return point < chart.labels.size() ? chart.labels[point] : count(point + 1);
}

std::string signalSaid(const Charted& chart, const ChartSignal& signal) {
    return said(signal.points.size() == 1 ? "signal-one" : "signal",
                {{"rule", ruleSaid(signal.rule, signal.side, signal.points.size())},
                 {"points", pointsSaid(chart, signal.points)}});
}

void addSignals(Answer& answer, const Charted& chart) {
    Json alarms = Json::array();
    for (const auto& signal : chart.alarms) {
        if (alarms.size() < kSaid) {
            answer.lines.push_back(signalSaid(chart, signal));
        }
        alarms.push_back(signalJson(signal));
    }
    if (chart.alarms.size() > kSaid) {
        answer.say("signals-more", {{"count", count(chart.alarms.size() - kSaid)}});
    }
    if (chart.alarms.empty()) {
        answer.say("signals-none");
    }
    answer.json["signals"] = std::move(alarms);
}

void addCaveats(Answer& answer, const Charted& chart) {
    Json caveats = Json::array();
    for (const auto caveat : chart.baseline ? chart.baseline->caveats : std::vector<st::ChartCaveat>{}) {
        const auto name = std::string{nameOf(caveat)};
        caveats.push_back(name);
        answer.say("caveat." + name, {{"points", count(chart.baseline->points)}});
    }
    answer.json["caveats"] = std::move(caveats);
}

Answer answerOf(const Charted& chart, const ChartTyped& typed) {
    Answer answer;
    answer.json["kind"] = chart.kind;
    answer.json["points"] = chart.values.size();
    answer.say("points", {{"count", count(chart.values.size())}, {"kind", said("kind." + chart.kind)}});
    addLimits(answer, chart);
    addSignals(answer, chart);
    addRunLength(answer, chart, typed.shift);
    addCaveats(answer, chart);
    if (typed.points) {
        answer.json["series"] = seriesJson(chart);
    }
    return answer;
}

tl::expected<void, CommandFault> savePicture(const screens::TrendChartState& picture, const std::string& path,
                                             const DrawingReady& ready) {
    const bool svg = path.ends_with(".svg");
    if (!svg && !path.ends_with(".png")) {
        return tl::unexpected(CommandFault{"picture-ending", {{"path", path}}});
    }
    const auto screen = ready ? ready() : std::shared_ptr<void>{};
    if (!screen) {
        return tl::unexpected(CommandFault{"picture-not-written", {{"path", path}}});
    }
    screens::ChartPicture how;
    how.size = QSize{1280, 0};
    const auto name = QString::fromStdString(path);
    const auto done = svg ? screens::saveSvg(picture, how, name) : screens::savePng(picture, how, name);
    if (!done) {
        return tl::unexpected(CommandFault{"picture-not-written", {{"path", path}}});
    }
    return {};
}

int runChart(const ChartTyped& typed, const std::filesystem::path& data, const DrawingReady& ready, std::ostream& out,
             std::ostream& err) {
    const bool ofBook = typed.kind == "margin" || typed.kind == "failures";
    if (ofBook) {
        return typed.input.empty() ? runBookChart(typed, data, ready, out, err)
                                   : tell(tl::unexpected(CommandFault{"chart-kind-of-book", {{"kind", typed.kind}}}),
                                          typed.json, out, err);
    }
    if (typed.input.empty()) {
        return tell(tl::unexpected(CommandFault{"chart-needs-input", {{"kind", typed.kind}}}), typed.json, out, err);
    }
    const auto file = DataFile::read(typed.input, typed.file);
    if (!file) {
        return tell(tl::unexpected(file.error()), typed.json, out, err);
    }
    LeftOut leftOut;
    const auto chart = chartOf(*file, typed, leftOut);
    if (!chart) {
        return tell(tl::unexpected(chart.error()), typed.json, out, err);
    }
    auto answer = answerOf(*chart, typed);
    addLeftOut(answer, leftOut);
    if (!typed.picture.empty()) {
        const auto detail = answer.lines.size() > 1 ? answer.lines[1] : std::string{};
        if (const auto saved = savePicture(pictureOf(*chart, detail, typed.value), typed.picture, ready); !saved) {
            return tell(tl::unexpected(saved.error()), typed.json, out, err);
        }
        answer.json["picture"] = typed.picture;
        answer.say("picture-written", {{"path", typed.picture}});
    }
    return tell(answer, typed.json, out, err);
}

} // namespace holdfast::kiosk::command
