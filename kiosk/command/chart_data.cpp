// The charts of a table that somebody brings.
#include "kiosk/command/chart.hpp"

#include "analytics/statistics/charts/attributes.hpp"
#include "analytics/statistics/charts/cusum.hpp"
#include "analytics/statistics/charts/individuals.hpp"
#include "analytics/statistics/charts/run_length.hpp"
#include "analytics/statistics/charts/subgroups.hpp"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <utility>

namespace holdfast::kiosk::command {

namespace {

namespace st = analytics::statistics;

using Built = tl::expected<Charted, CommandFault>;

/// The values of a file, by group if groups are asked for.
struct Taken final {
    std::vector<double> values{};
    std::vector<double> totals{};
    std::vector<std::int32_t> groups{}; ///< of each row; empty: none asked
    std::vector<std::string> groupNames{};
};

std::optional<std::size_t> wholeNumber(std::string_view text) {
    std::size_t value = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
    return error == std::errc{} && end == text.data() + text.size() ? std::optional{value} : std::nullopt;
}

/// "1..20", from one, both ends in it.
tl::expected<std::optional<st::Stretch>, CommandFault> stretchFrom(const std::string& text, std::size_t points) {
    if (text.empty()) {
        return std::nullopt;
    }
    const auto dots = text.find("..");
    const auto first = dots == std::string::npos ? std::nullopt : wholeNumber(std::string_view{text}.substr(0, dots));
    const auto last = dots == std::string::npos ? std::nullopt : wholeNumber(std::string_view{text}.substr(dots + 2));
    if (!first || !last || *first < 1 || *last < *first) {
        return tl::unexpected(CommandFault{"baseline-unreadable", {{"text", text}}});
    }
    if (*last > points) {
        return tl::unexpected(CommandFault{"baseline-beyond", {{"text", text}, {"count", count(points)}}});
    }
    return st::Stretch{*first - 1, *last - *first + 1};
}

tl::expected<Taken, CommandFault> take(const DataFile& file, const ChartTyped& typed, LeftOut& leftOut) {
    std::vector<std::string> asked{typed.value.empty() ? std::string{"1"} : typed.value};
    if (typed.value.empty() && file.names().size() > 1) {
        return tl::unexpected(CommandFault{"value-column-missing", {{"path", file.path()}}});
    }
    if (!typed.total.empty()) {
        asked.push_back(typed.total);
    }
    std::vector<std::size_t> places;
    for (const auto& name : asked) {
        const auto place = file.column(name);
        if (!place) {
            return tl::unexpected(place.error());
        }
        places.push_back(*place);
    }
    if (!typed.by.empty()) {
        const auto place = file.column(typed.by);
        if (!place) {
            return tl::unexpected(place.error());
        }
        places.push_back(*place);
    }
    Taken taken;
    Labels labels;
    file.forEach(places, [&](std::size_t line, DataFile::Cells cells) {
        const auto value = file.number(cells[0]);
        const auto total = typed.total.empty() ? NumberCell{0.0, false} : file.number(cells[1]);
        if (!value.value || !total.value) {
            const bool unreadable = value.unreadable || total.unreadable;
            ++(unreadable ? leftOut.unreadable : leftOut.missing);
            leftOut.firstUnreadable = unreadable && leftOut.firstUnreadable == 0 ? line : leftOut.firstUnreadable;
            return;
        }
        taken.values.push_back(*value.value);
        if (!typed.total.empty()) {
            taken.totals.push_back(*total.value);
        }
        if (!typed.by.empty()) {
            taken.groups.push_back(labels.of(cells.back()));
        }
    });
    if (taken.values.empty()) {
        return tl::unexpected(CommandFault{"data-no-numbers", {{"path", file.path()}, {"column", asked.front()}}});
    }
    taken.groupNames = labels.names();
    return taken;
}

/// By group in the order in which they come, or by `size` rows.
std::vector<std::vector<double>> groupsOf(const Taken& taken, std::size_t size) {
    std::vector<std::vector<double>> groups;
    if (!taken.groups.empty()) {
        groups.resize(taken.groupNames.size());
        for (std::size_t i = 0; i < taken.values.size(); ++i) {
            groups[static_cast<std::size_t>(taken.groups[i])].push_back(taken.values[i]);
        }
        return groups;
    }
    for (std::size_t i = 0; i < taken.values.size(); i += size) {
        const auto from = taken.values.begin() + static_cast<std::ptrdiff_t>(i);
        const auto many = std::min(size, taken.values.size() - i);
        groups.emplace_back(from, from + static_cast<std::ptrdiff_t>(many));
    }
    return groups;
}

/// Means of groups where groups were asked for: an episode is one point, however many readings it has.
std::vector<double> single(const Taken& taken, const ChartTyped& typed, Charted& chart) {
    if (taken.groups.empty() && typed.size < 2) {
        return taken.values;
    }
    std::vector<double> means;
    for (const auto& group : groupsOf(taken, static_cast<std::size_t>(std::max(typed.size, 1)))) {
        double sum = 0.0;
        for (const double value : group) {
            sum += value / static_cast<double>(group.size());
        }
        means.push_back(sum);
    }
    chart.labels = taken.groupNames;
    return means;
}

void addFindings(Charted& chart, const st::RuleFindings& findings) {
    for (const auto& signal : findings.alarms) {
        chart.alarms.push_back({static_cast<int>(signal.rule), signal.side, findings.pointsOf(signal), signal.at, {}});
    }
}

/// Neighbouring points beyond a chart's own limits are one signal.
void addOutside(Charted& chart, const std::vector<std::size_t>& outside, double center) {
    for (const auto at : outside) {
        const auto side = chart.values[at] >= center ? st::SignalSide::Above : st::SignalSide::Below;
        if (!chart.alarms.empty() && chart.alarms.back().side == side && chart.alarms.back().points.back() + 1 == at) {
            chart.alarms.back().points.push_back(at);
        } else {
            chart.alarms.push_back({0, side, {at}, at, {}});
        }
    }
}

void addRunLengths(Charted& chart, st::RuleSet rules, double shift) {
    if (rules.has(st::NelsonRule::Trend) || rules.has(st::NelsonRule::Alternating)) {
        const auto quiet = st::drawnRunLength(rules, 0.0);
        const auto moved = st::drawnRunLength(rules, shift);
        if (quiet && moved) {
            chart.inControl = quiet->mean;
            chart.shifted = moved->mean;
            chart.drawnWithin = std::max(quiet->standardError / quiet->mean, moved->standardError / moved->mean);
        }
        return;
    }
    if (const auto length = st::rulesRunLength(rules, 0.0)) {
        chart.inControl = *length;
    }
    if (const auto length = st::rulesRunLength(rules, shift)) {
        chart.shifted = *length;
    }
}

Built individuals(const Taken& taken, const ChartTyped& typed, const DataFile& file, st::RuleSet rules) {
    Charted chart;
    chart.values = single(taken, typed, chart);
    auto stretch = stretchFrom(typed.baseline, chart.values.size());
    if (!stretch) {
        return tl::unexpected(stretch.error());
    }
    st::ChartOptions options{rules, *stretch, {}};
    if (typed.target || typed.sigma) {
        auto base = st::individualsBaseline(
            "typed", options.stretch ? std::span{chart.values}.subspan(options.stretch->first, options.stretch->count)
                                     : std::span{chart.values});
        if (!base && !(typed.target && typed.sigma)) {
            return tl::unexpected(faultOf(base.error(), file));
        }
        st::Baseline given = base ? *base : st::Baseline{};
        given.name = "typed";
        given.center = typed.target.value_or(given.center);
        given.sigma = typed.sigma.value_or(given.sigma);
        if (typed.sigma) {
            given.spreadError = 0.0;
            given.caveats.clear(); // they speak of a spread taken from the values
        }
        options.baseline = given;
    }
    auto made = st::individualsChart(chart.values, options);
    if (!made) {
        return tl::unexpected(faultOf(made.error(), file));
    }
    chart.limits = {made->limits};
    chart.besides = made->ranges;
    chart.besidesOutside = made->rangesOutside;
    chart.baseline = made->baseline;
    addFindings(chart, made->findings);
    if (made->baseline.sigma > 0.0) {
        addRunLengths(chart, rules, typed.shift);
    }
    return chart;
}

Built subgroups(const Taken& taken, const ChartTyped& typed, const DataFile& file, st::RuleSet rules) {
    const auto spread = typed.kind == "mean-range" ? st::SubgroupSpread::Range : st::SubgroupSpread::StandardDeviation;
    if (taken.groups.empty() && typed.size < 2) {
        return tl::unexpected(CommandFault{"chart-no-subgroups", {{"kind", typed.kind}}});
    }
    const auto groups = groupsOf(taken, static_cast<std::size_t>(std::max(typed.size, 1)));
    std::vector<double> values;
    for (const auto& group : groups) {
        if (group.size() != groups.front().size()) {
            return tl::unexpected(CommandFault{
                "chart-subgroups-differ", {{"first", count(groups.front().size())}, {"other", count(group.size())}}});
        }
        values.insert(values.end(), group.begin(), group.end());
    }
    auto stretch = stretchFrom(typed.baseline, groups.size());
    if (!stretch) {
        return tl::unexpected(stretch.error());
    }
    auto made = st::subgroupChart(values, groups.front().size(), spread, {rules, *stretch, {}});
    if (!made) {
        return tl::unexpected(faultOf(made.error(), file));
    }
    Charted chart;
    chart.labels = taken.groupNames;
    chart.values = std::move(made->meanValues);
    chart.beside = std::move(made->spreadValues);
    chart.limits = {made->means};
    chart.besides = made->spreads;
    chart.besidesOutside = made->spreadsOutside;
    chart.baseline = made->baseline;
    addFindings(chart, made->findings);
    if (made->baseline.sigma > 0.0) {
        addRunLengths(chart, rules, typed.shift);
    }
    return chart;
}

/// Centre and spread of EWMA and CUSUM: as typed, else of the stretch.
tl::expected<st::Baseline, CommandFault> centreOf(const std::vector<double>& values, const ChartTyped& typed,
                                                  const DataFile& file) {
    const auto stretch = stretchFrom(typed.baseline, values.size());
    if (!stretch) {
        return tl::unexpected(stretch.error());
    }
    const auto span = *stretch ? std::span{values}.subspan((*stretch)->first, (*stretch)->count) : std::span{values};
    auto base = st::individualsBaseline("centre", span);
    if (!base && !(typed.target && typed.sigma)) {
        return tl::unexpected(faultOf(base.error(), file));
    }
    st::Baseline given = base ? *base : st::Baseline{};
    given.center = typed.target.value_or(given.center);
    given.sigma = typed.sigma.value_or(given.sigma);
    if (typed.sigma) {
        given.spreadError = 0.0;
        given.caveats.clear();
    }
    if (!(given.sigma > 0.0) || !std::isfinite(given.sigma)) {
        return tl::unexpected(faultOf(st::StatisticsFault::NoSpread, file));
    }
    return given;
}

Built averaged(const Taken& taken, const ChartTyped& typed, const DataFile& file) {
    Charted chart;
    const auto values = single(taken, typed, chart);
    const auto base = centreOf(values, typed, file);
    if (!base) {
        return tl::unexpected(base.error());
    }
    const auto track = st::ewma(values, base->center, base->sigma, {typed.lambda, typed.width, true});
    if (!track) {
        return tl::unexpected(faultOf(track.error(), file));
    }
    chart.values = track->values;
    chart.beside = values;
    for (const double half : track->halfWidths) {
        chart.limits.push_back({track->center - half, track->center, track->center + half});
    }
    chart.baseline = *base;
    addOutside(chart, track->outside, track->center);
    if (const auto length = st::ewmaRunLength(typed.lambda, typed.width, 0.0)) {
        chart.inControl = *length;
    }
    if (const auto length = st::ewmaRunLength(typed.lambda, typed.width, typed.shift)) {
        chart.shifted = *length;
    }
    return chart;
}

Built summed(const Taken& taken, const ChartTyped& typed, const DataFile& file) {
    Charted chart;
    const auto values = single(taken, typed, chart);
    const auto base = centreOf(values, typed, file);
    if (!base) {
        return tl::unexpected(base.error());
    }
    const auto track = st::standardCusum(values, base->center, base->sigma, typed.k, typed.h);
    if (!track) {
        return tl::unexpected(faultOf(track.error(), file));
    }
    chart.values = track->high;
    chart.beside = track->low;
    chart.limits = {{0.0, 0.0, typed.h * base->sigma}};
    chart.baseline = *base;
    for (const auto& signal : track->alarms) {
        auto& alarms = chart.alarms;
        const auto same =
            std::find_if(alarms.rbegin(), alarms.rend(), [&](const auto& one) { return one.side == signal.side; });
        if (same != alarms.rend() && same->points.back() + 1 == signal.at) {
            same->points.push_back(signal.at);
        } else {
            alarms.push_back({0, signal.side, {signal.at}, signal.at, signal.since});
        }
    }
    if (const auto length = st::cusumRunLength(typed.k, typed.h, 0.0)) {
        chart.inControl = *length;
    }
    if (const auto length = st::cusumRunLength(typed.k, typed.h, typed.shift)) {
        chart.shifted = *length;
    }
    return chart;
}

std::optional<st::ChartKind> attributeKind(const std::string& kind) {
    constexpr std::pair<std::string_view, st::ChartKind> kKinds[] = {
        {"p", st::ChartKind::P}, {"np", st::ChartKind::Np},         {"c", st::ChartKind::C},
        {"u", st::ChartKind::U}, {"p-over", st::ChartKind::LaneyP}, {"u-over", st::ChartKind::LaneyU}};
    for (const auto& [name, which] : kKinds) {
        if (name == kind) {
            return which;
        }
    }
    return std::nullopt;
}

Built attributes(const Taken& taken, const ChartTyped& typed, const DataFile& file, st::ChartKind kind,
                 st::RuleSet rules) {
    if (typed.total.empty() && kind != st::ChartKind::C && typed.size < 1) {
        return tl::unexpected(CommandFault{"chart-no-total", {{"kind", typed.kind}}});
    }
    std::vector<st::Counted> periods;
    const auto totalOf = [&](std::size_t row) {
        return taken.totals.empty() ? static_cast<double>(std::max(typed.size, 1)) : taken.totals[row];
    };
    if (taken.groups.empty()) {
        for (std::size_t i = 0; i < taken.values.size(); ++i) {
            periods.push_back({taken.values[i], totalOf(i)});
        }
    } else {
        periods.resize(taken.groupNames.size());
        for (std::size_t i = 0; i < taken.values.size(); ++i) {
            auto& period = periods[static_cast<std::size_t>(taken.groups[i])];
            period.failed += taken.values[i];
            period.inspected += totalOf(i);
        }
    }
    auto stretch = stretchFrom(typed.baseline, periods.size());
    if (!stretch) {
        return tl::unexpected(stretch.error());
    }
    const auto made = st::attributeChart(kind, periods, {rules, *stretch, {}});
    if (!made) {
        return tl::unexpected(faultOf(made.error(), file));
    }
    Charted chart;
    chart.labels = taken.groupNames;
    for (const auto& point : made->points) {
        chart.values.push_back(point.value);
        chart.limits.push_back(point.limits);
        chart.plotted.push_back(point.inspected ? 1 : 0);
    }
    const auto same = [&](const st::Limits& one) {
        return one.lower == chart.limits.front().lower && one.upper == chart.limits.front().upper;
    };
    if (std::all_of(chart.limits.begin(), chart.limits.end(), same)) {
        chart.limits.resize(1);
    }
    chart.baseline = made->baseline;
    addFindings(chart, made->findings);
    addRunLengths(chart, rules, typed.shift);
    return chart;
}

} // namespace

std::optional<st::RuleSet> rulesFrom(const std::string& text) {
    if (text == "all") {
        return st::RuleSet::all();
    }
    if (text == "none" || text.empty()) {
        return st::RuleSet::none();
    }
    if (text == "western-electric") {
        return st::RuleSet::westernElectric();
    }
    constexpr std::size_t kRules = 8;
    auto rules = st::RuleSet::none();
    for (std::string_view left{text}; !left.empty();) {
        const auto comma = left.find(',');
        const auto number = wholeNumber(left.substr(0, comma));
        if (!number || *number < 1 || *number > kRules || comma + 1 == left.size()) {
            return std::nullopt;
        }
        rules = rules.with(static_cast<st::NelsonRule>(*number));
        left.remove_prefix(comma == std::string_view::npos ? left.size() : comma + 1);
    }
    return rules;
}

tl::expected<Charted, CommandFault> chartOf(const DataFile& file, const ChartTyped& typed, LeftOut& leftOut) {
    const auto rules = rulesFrom(typed.rules);
    if (!rules) {
        return tl::unexpected(CommandFault{"rules-unreadable", {{"text", typed.rules}}});
    }
    if (!typed.by.empty() && typed.size > 0) {
        return tl::unexpected(CommandFault{"chart-by-and-size", {}});
    }
    const auto taken = take(file, typed, leftOut);
    if (!taken) {
        return tl::unexpected(taken.error());
    }
    const auto counted = attributeKind(typed.kind);
    auto chart = typed.kind == "individuals" ? individuals(*taken, typed, file, *rules)
                 : typed.kind == "ewma"      ? averaged(*taken, typed, file)
                 : typed.kind == "cusum"     ? summed(*taken, typed, file)
                 : counted                   ? attributes(*taken, typed, file, *counted, *rules)
                                             : subgroups(*taken, typed, file, *rules);
    if (chart) {
        chart->kind = typed.kind;
    }
    return chart;
}

} // namespace holdfast::kiosk::command
