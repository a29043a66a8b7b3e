#include "kiosk/reports/chart_table.hpp"

#include <catch2/catch.hpp>

#include <limits>
#include <string>
#include <vector>

using namespace holdfast::kiosk;
using namespace holdfast::kiosk::screens;

namespace {

/// A reader of RFC 4180 of its own.
std::vector<std::vector<std::string>> tableOf(const std::string& text) {
    std::vector<std::vector<std::string>> rows(1, std::vector<std::string>(1));
    bool quoted = false;
    for (std::size_t i = 0; i < text.size(); ++i) {
        auto& cell = rows.back().back();
        const char sign = text[i];
        if (quoted) {
            if (sign != '"') {
                cell += sign;
            } else if (i + 1 < text.size() && text[i + 1] == '"') {
                cell += text[++i];
            } else {
                quoted = false;
            }
        } else if (sign == '"') {
            quoted = true;
        } else if (sign == ',') {
            rows.back().emplace_back();
        } else if (sign == '\r') {
            REQUIRE(text.at(i + 1) == '\n');
        } else if (sign == '\n') {
            rows.emplace_back(1);
        } else {
            cell += sign;
        }
    }
    rows.pop_back(); // after the last line end
    return rows;
}

} // namespace

TEST_CASE("a chart's table has a row for all that is drawn, and figures read back to the same", "[reports][charts]") {
    TrendChartState state;
    const double odd = 0.1 + 0.2;
    state.points = {
        {.id = "run.1", .spoken = "one, \"first\"", .x = 1.5, .y = odd, .mark = MarkKind::UnderCured, .rule = 2},
        {.x = 2, .span = TrendSpan{.low = -1e-9, .high = 5, .openHigh = true}}};
    state.lines = {{.name = "high", .points = {{0, 7}, {1, std::numeric_limits<double>::quiet_NaN()}}}};
    state.bands = {{.limits = {{0, 1, 2}}}};
    state.bars = {{.id = "w", .text = "8", .x = 3, .value = 8, .upTo = 9}};
    state.events = {{.x = 4, .text = "belt"}};
    state.stretches = {{.from = 5, .to = 6, .text = "since"}};
    const auto table = tableOf(reports::csvOf(state));
    REQUIRE(table.size() == 1 + 2 + 1 + 2 + 1 + 1 + 2);
    for (const auto& row : table) {
        REQUIRE(row.size() == 10);
    }
    REQUIRE(table[0] ==
            std::vector<std::string>{"part", "name", "id", "x", "y", "low", "high", "verdict", "rule", "said"});
    REQUIRE(table[1][0] == "point");
    REQUIRE(std::stod(table[1][4]) == odd);
    REQUIRE(table[1][7] == "under-cured");
    REQUIRE(table[1][8] == "2");
    REQUIRE(table[1][9] == "one, \"first\"");
    REQUIRE(table[2][4].empty()); // a strip has no point
    REQUIRE(std::stod(table[2][5]) == -1e-9);
    REQUIRE(table[2][6].empty()); // open
    REQUIRE(std::stod(table[3][6]) == 9.0);
    REQUIRE(table[5][4].empty()); // no number
    REQUIRE(table[8][1] == "since");
}

TEST_CASE("days are dates in the table, with a time where there is one", "[reports][charts]") {
    TrendChartState state;
    state.x.days = true;
    // 2026-10-16 is 20742 days after 1970-01-01 (date -u -d @$((20742 * 86400))).
    state.events = {{.x = 20742}, {.x = 20742.75}, {.x = -1}, {.x = 1e300}};
    const auto table = tableOf(reports::csvOf(state));
    REQUIRE(table[1][3] == "2026-10-16");
    REQUIRE(table[2][3] == "2026-10-16T18:00:00");
    REQUIRE(table[3][3] == "1969-12-31");
    REQUIRE(std::stod(table[4][3]) == 1e300);
}

TEST_CASE("names that people typed are never formulas in the table", "[reports][charts]") {
    TrendChartState state;
    state.rows = {{.name = "=1+1", .counts = "7 of 9", .with = {0.75, 0.4, 0.9}, .without = {0.25, 0, 0}}};
    const auto table = tableOf(reports::csvOf(state));
    REQUIRE(table.size() == 3);
    REQUIRE(table[1][1] == "'=1+1");
    REQUIRE(table[1][4] == "0.75");
    REQUIRE(table[1][5] == "0.4");
    REQUIRE(table[2][5].empty()); // no limits known
}
