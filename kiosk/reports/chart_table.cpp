#include "kiosk/reports/chart_table.hpp"

#include "kiosk/reports/csv.hpp"

#include <QDateTime>

#include <charconv>
#include <cmath>
#include <optional>

namespace holdfast::kiosk::reports {
namespace {

/// Columns: part, name, id, x, y, low, high, verdict, rule, said.
struct Row {
    const char* part = "";
    QString name{};
    QString id{};
    std::string x{};
    std::optional<double> y{};
    std::optional<double> low{};
    std::optional<double> high{};
    const char* verdict = "";
    int rule = 0;
    QString said{};
};

std::string figure(std::optional<double> value) {
    if (!value || !std::isfinite(*value)) {
        return {};
    }
    char text[40];
    const auto end = std::to_chars(text, text + sizeof text, *value);
    return {text, end.ptr};
}

/// Within what a date can say, else as the figure.
std::string place(double x, const screens::TrendAxis& axis) {
    constexpr double kFarthest = 3.0e6; // days, year 10183
    if (!axis.days || !std::isfinite(x) || std::abs(x) > kFarthest) {
        return figure(x);
    }
    const bool whole = x == std::floor(x);
    const QDateTime time = QDateTime::fromMSecsSinceEpoch(std::llround(x * 86'400'000.0), Qt::UTC);
    return time.toString(whole ? QStringLiteral("yyyy-MM-dd") : QStringLiteral("yyyy-MM-ddTHH:mm:ss")).toStdString();
}

const char* verdictOf(screens::MarkKind kind) {
    switch (kind) {
    case screens::MarkKind::Cured:
        return "cured";
    case screens::MarkKind::UnderCured:
        return "under-cured";
    case screens::MarkKind::Overheated:
        return "overheated";
    case screens::MarkKind::NotProven:
        return "not proven";
    case screens::MarkKind::Blank:
    case screens::MarkKind::Closed:
        break;
    }
    return "";
}

void add(std::string& table, const Row& row) {
    table += csvRow({{row.part, false},
                     {row.name.toStdString(), true},
                     {row.id.toStdString(), true},
                     {row.x, false},
                     {figure(row.y), false},
                     {figure(row.low), false},
                     {figure(row.high), false},
                     {row.verdict, false},
                     {row.rule > 0 ? std::to_string(row.rule) : "", false},
                     {row.said.toStdString(), true}});
}

void addPoints(std::string& table, const screens::TrendChartState& state) {
    for (const auto& point : state.points) {
        Row row{.part = "point",
                .id = point.id,
                .x = place(point.x, state.x),
                .verdict = verdictOf(point.mark),
                .rule = point.rule,
                .said = point.spoken};
        if (point.span) {
            row.low = point.span->openLow ? std::nullopt : std::optional{point.span->low};
            row.high = point.span->openHigh ? std::nullopt : std::optional{point.span->high};
        } else {
            row.y = point.y;
        }
        add(table, row);
    }
    for (const auto& bar : state.bars) {
        add(table, {.part = "bar",
                    .name = bar.text,
                    .id = bar.id,
                    .x = place(bar.x, state.x),
                    .y = bar.value,
                    .high = bar.upTo,
                    .said = bar.spoken});
    }
}

void addLines(std::string& table, const screens::TrendChartState& state) {
    for (const auto& line : state.lines) {
        for (const auto& point : line.points) {
            add(table, {.part = "line", .name = line.name, .x = place(point.x(), state.x), .y = point.y()});
        }
    }
    for (const auto& band : state.bands) {
        for (const auto& limits : band.limits) {
            add(table, {.part = "band", .x = place(limits.x, state.x), .low = limits.low, .high = limits.high});
        }
    }
}

void addDays(std::string& table, const screens::TrendChartState& state) {
    for (const auto& event : state.events) {
        add(table, {.part = "event", .name = event.text, .id = event.id, .x = place(event.x, state.x)});
    }
    for (const auto& stretch : state.stretches) {
        for (const double end : {stretch.from, stretch.to}) {
            add(table, {.part = "stretch", .name = stretch.text, .x = place(end, state.x), .y = stretch.y});
        }
    }
}

void addShare(std::string& table, const screens::TrendRow& row, const char* part, const screens::TrendShare& share) {
    const bool limits = share.low < share.high;
    add(table, {.part = part,
                .name = row.name,
                .id = row.id,
                .y = share.share,
                .low = limits ? std::optional{share.low} : std::nullopt,
                .high = limits ? std::optional{share.high} : std::nullopt,
                .said = row.counts});
}

} // namespace

std::string csvOf(const screens::TrendChartState& state) {
    std::string table;
    std::vector<CsvCell> head;
    for (const char* column : {"part", "name", "id", "x", "y", "low", "high", "verdict", "rule", "said"}) {
        head.push_back({column, false});
    }
    table += csvRow(head);
    addPoints(table, state);
    addLines(table, state);
    addDays(table, state);
    for (const auto& row : state.rows) {
        addShare(table, row, "share with it", row.with);
        addShare(table, row, "share without it", row.without);
    }
    return table;
}

} // namespace holdfast::kiosk::reports
