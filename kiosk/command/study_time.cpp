// Drift and change.
#include "kiosk/command/study.hpp"

#include "analytics/statistics/models/change_point.hpp"
#include "analytics/statistics/models/trend.hpp"
#include "kiosk/wording/figures.hpp"

#include <algorithm>
#include <chrono>
#include <cmath>
#include <numeric>

namespace holdfast::kiosk::command {

namespace {

namespace st = analytics::statistics;

constexpr double kWeek = 7.0;

/// A file's values with their times, in the order of time.
struct Timed final {
    std::vector<double> times{};
    std::vector<std::vector<double>> columns{};
    bool days = false;
    std::size_t backward = 0; ///< rows whose time lies before the row ahead of them
    LeftOut leftOut{};
};

tl::expected<Timed, CommandFault> timed(const DataFile& file, const std::string& time,
                                        const std::vector<std::string>& asked) {
    std::vector<std::size_t> places;
    for (const auto& name : asked) {
        const auto place = file.column(name);
        if (!place) {
            return tl::unexpected(place.error());
        }
        places.push_back(*place);
    }
    if (!time.empty()) {
        const auto place = file.column(time);
        if (!place) {
            return tl::unexpected(place.error());
        }
        places.push_back(*place);
    }
    Timed out;
    out.columns.resize(asked.size());
    std::vector<double> row(asked.size());
    std::size_t days = 0;
    file.forEach(places, [&](std::size_t line, DataFile::Cells cells) {
        const auto at = time.empty() ? TimeCell{static_cast<double>(out.times.size() + 1), false}
                                     : timeOf(file, cells.back()).value_or(TimeCell{std::nan(""), false});
        bool missing = false;
        bool unreadable = !std::isfinite(at.at) && !file.isMissing(cells.back());
        missing = !std::isfinite(at.at);
        for (std::size_t i = 0; i < row.size(); ++i) {
            const auto cell = file.number(cells[i]);
            missing = missing || !cell.value;
            unreadable = unreadable || cell.unreadable;
            row[i] = cell.value.value_or(0.0);
        }
        if (missing || unreadable) {
            ++(unreadable ? out.leftOut.unreadable : out.leftOut.missing);
            out.leftOut.firstUnreadable =
                unreadable && out.leftOut.firstUnreadable == 0 ? line : out.leftOut.firstUnreadable;
            return;
        }
        out.backward += !out.times.empty() && at.at < out.times.back() ? 1U : 0U;
        days += at.isDay ? 1U : 0U;
        out.times.push_back(at.at);
        for (std::size_t i = 0; i < row.size(); ++i) {
            out.columns[i].push_back(row[i]);
        }
    });
    if (out.times.empty()) {
        return tl::unexpected(CommandFault{"data-no-numbers", {{"path", file.path()}, {"column", asked.front()}}});
    }
    if (days != 0 && days != out.times.size()) {
        return tl::unexpected(CommandFault{"data-times-mixed", {{"path", file.path()}, {"column", time}}});
    }
    out.days = days != 0;
    if (out.backward > 0) {
        std::vector<std::size_t> order(out.times.size());
        std::iota(order.begin(), order.end(), std::size_t{0});
        std::stable_sort(order.begin(), order.end(),
                         [&](std::size_t one, std::size_t other) { return out.times[one] < out.times[other]; });
        const auto sorted = [&](const std::vector<double>& column) {
            std::vector<double> moved;
            moved.reserve(column.size());
            for (const auto place : order) {
                moved.push_back(column[place]);
            }
            return moved;
        };
        for (auto& column : out.columns) {
            column = sorted(column);
        }
        out.times = sorted(out.times);
    }
    return out;
}

std::string timeShown(const Timed& data, double at) {
    if (!data.days) {
        return shown(at);
    }
    const std::chrono::year_month_day day{
        std::chrono::sys_days{std::chrono::days{static_cast<int>(std::floor(std::clamp(at, -1e6, 3e6)))}}};
    char out[40];
    std::snprintf(out, sizeof out, "%04d-%02u-%02u", static_cast<int>(day.year()), static_cast<unsigned>(day.month()),
                  static_cast<unsigned>(day.day()));
    return out;
}

Json timeJson(const Timed& data, double at) {
    return data.days ? Json(timeShown(data, at)) : figure(at);
}

void addBackward(Answer& answer, const Timed& data) {
    answer.json["rows_out_of_order"] = data.backward;
    if (data.backward > 0) {
        answer.say("backward", {{"count", count(data.backward)}});
    }
}

const char* driftName(st::DriftStanding standing) {
    switch (standing) {
    case st::DriftStanding::TooFewPoints:
        return "too-few-points";
    case st::DriftStanding::NotShown:
        return "not-shown";
    case st::DriftStanding::MovesAway:
        return "moves-away";
    case st::DriftStanding::AlreadyPast:
        return "already-past";
    case st::DriftStanding::Crosses:
        break;
    }
    return "crosses";
}

void addCrossing(Answer& answer, const Timed& data, const StudyTyped& typed, const st::Drift& drift) {
    const bool crosses = drift.standing == st::DriftStanding::Crosses;
    answer.json["limit"] = {{"value", *typed.limit},
                            {"standing", driftName(drift.standing)},
                            {"earliest", crosses ? timeJson(data, drift.earliest) : Json()},
                            {"latest", crosses ? timeJson(data, drift.latest) : Json()}};
    answer.say(std::string{"drift-"} + driftName(drift.standing), {{"limit", shown(*typed.limit)},
                                                                   {"earliest", timeShown(data, drift.earliest)},
                                                                   {"latest", timeShown(data, drift.latest)},
                                                                   {"have", count(data.times.size())},
                                                                   {"need", count(st::kDriftPoints)}});
}

/// A series of another kind whose one change is looked for.
tl::expected<st::ChangePoint, st::StatisticsFault> changeOf(const Timed& data, const StudyTyped& typed) {
    st::ChangeOptions options;
    options.level = typed.confidence;
    const auto& values = data.columns.front();
    constexpr double kMost = 1e12;
    const auto wholes = [](const std::vector<double>& column) {
        return std::all_of(column.begin(), column.end(),
                           [](double value) { return value >= 0.0 && value <= kMost && value == std::floor(value); });
    };
    if ((typed.counts || !typed.total.empty()) && !(wholes(values) && wholes(data.columns.back()))) {
        return tl::unexpected(st::StatisticsFault::OutOfDomain);
    }
    if (!typed.total.empty()) {
        std::vector<st::FailedOfTotal> periods;
        for (std::size_t i = 0; i < values.size(); ++i) {
            periods.push_back(
                {static_cast<std::int64_t>(values[i]), static_cast<std::int64_t>(data.columns.back()[i])});
        }
        return st::changeInShare(periods, options);
    }
    if (typed.counts) {
        std::vector<std::int64_t> events;
        for (const double value : values) {
            events.push_back(static_cast<std::int64_t>(value));
        }
        return st::changeInRate(events, options);
    }
    return st::changeInMean(values, options);
}

} // namespace

Answered studyDrift(const DataFile& file, const StudyTyped& typed) {
    const auto data = timed(file, typed.time, {typed.value});
    if (!data) {
        return tl::unexpected(data.error());
    }
    const auto line = st::theilSen(data->times, data->columns.front(), typed.confidence);
    if (!line) {
        return tl::unexpected(faultOf(line.error(), file));
    }
    const double unit = data->days ? kWeek : 1.0;
    const auto scaled = [unit](const std::optional<double>& slope) {
        return slope ? std::optional{*slope * unit} : std::nullopt;
    };
    Answer answer;
    answer.json = {
        {"study", "drift"},
        {"points", data->times.size()},
        {"slope", figure(line->slope * unit)},
        {"slope_lower", figure(scaled(line->lower))},
        {"slope_upper", figure(scaled(line->upper))},
        {"per", data->days ? "week" : "unit"},
        {"intercept", figure(line->intercept)},
        {"confidence", typed.confidence},
        {"shown", line->isShown()},
        {"kendall",
         {{"tau_b", figure(line->kendall.tauB)}, {"p", figure(line->kendall.p)}, {"exact", line->kendall.exact}}}};
    answer.say(data->days ? "drift-week" : "drift-unit",
               {{"count", count(data->times.size())},
                {"slope", shown(line->slope * unit)},
                {"lower", line->lower ? shown(*line->lower * unit) : said("no-limit")},
                {"upper", line->upper ? shown(*line->upper * unit) : said("no-limit")},
                {"confidence", shown(100.0 * typed.confidence)}});
    answer.say(line->isShown() ? "drift-shown" : "drift-not", {{"p", chanceShown(line->kendall.p)}});
    if (typed.limit) {
        const auto side = typed.side == "upper" ? st::DriftSide::Upper : st::DriftSide::Lower;
        const auto drift = st::drift(data->times, data->columns.front(), {*typed.limit, side}, typed.confidence);
        if (!drift) {
            return tl::unexpected(faultOf(drift.error(), file));
        }
        addCrossing(answer, *data, typed, *drift);
    }
    answer.say("drift-dependent");
    addBackward(answer, *data);
    addLeftOut(answer, data->leftOut);
    return answer;
}

Answered studyChange(const DataFile& file, const StudyTyped& typed) {
    std::vector<std::string> asked{typed.value};
    if (!typed.total.empty()) {
        asked.push_back(typed.total);
    }
    const auto data = timed(file, typed.time, asked);
    if (!data) {
        return tl::unexpected(data.error());
    }
    const auto change = changeOf(*data, typed);
    if (!change) {
        return tl::unexpected(faultOf(change.error(), file));
    }
    constexpr double kShown = 0.05;
    Json possible = Json::array();
    for (const auto position : change->possible) {
        possible.push_back(position);
    }
    const auto after = [&](std::size_t position) { return data->times[std::min(position, data->times.size() - 1)]; };
    Answer answer;
    answer.json = {{"study", "change"},
                   {"points", data->times.size()},
                   {"position", change->position},
                   {"last_before", timeJson(*data, data->times[change->position - 1])},
                   {"first_after", timeJson(*data, after(change->position))},
                   {"possible", possible},
                   {"earliest", timeJson(*data, data->times[change->earliest() - 1])},
                   {"latest", timeJson(*data, after(change->latest()))},
                   {"before", figure(change->before)},
                   {"after", figure(change->after)},
                   {"statistic", figure(change->statistic)},
                   {"p", figure(change->p)},
                   {"dispersion", figure(change->dispersion)},
                   {"confidence", typed.confidence}};
    answer.say(change->p < kShown ? "change" : "change-not",
               {{"count", count(data->times.size())},
                {"last", timeShown(*data, data->times[change->position - 1])},
                {"first", timeShown(*data, after(change->position))},
                {"before", shown(change->before)},
                {"after", shown(change->after)},
                {"p", chanceShown(change->p)}});
    if (change->p < kShown) {
        answer.say("change-set", {{"confidence", shown(100.0 * typed.confidence)},
                                  {"count", count(change->possible.size())},
                                  {"earliest", timeShown(*data, data->times[change->earliest() - 1])},
                                  {"latest", timeShown(*data, after(change->latest()))}});
    }
    addBackward(answer, *data);
    addLeftOut(answer, data->leftOut);
    return answer;
}

} // namespace holdfast::kiosk::command
