#include "kiosk/command/trace_table.hpp"

#include <algorithm>
#include <map>

namespace holdfast::kiosk::command::tracefile {

namespace {

/// "Time (s)" that white space cut in two becomes one name again.
std::vector<std::string> withUnitsJoined(const std::vector<std::string>& fields) {
    std::vector<std::string> names;
    for (const std::string& field : fields) {
        if (!names.empty() && (field.starts_with('(') || field.starts_with('['))) {
            names.back() += " " + field;
        } else {
            names.push_back(field);
        }
    }
    return names;
}

/// A row of words only, one for each column: the names. A mark of a comment before the first is dropped.
std::optional<std::vector<std::string>> namesIn(const TableRow& row, std::size_t columns, char separator) {
    std::vector<std::string> names = row.fields;
    if (!names.empty() && names.front().find_first_of("#%") == 0) {
        names.front() = std::string{trimmed(std::string_view{names.front()}.substr(1))};
        if (names.front().empty()) {
            names.erase(names.begin());
        }
    }
    if (separator == ' ' && names.size() > columns) {
        names = withUnitsJoined(names);
    }
    const auto words = std::count_if(names.begin(), names.end(), [](const std::string& name) { return !name.empty(); });
    const bool anyValue = std::any_of(names.begin(), names.end(), isValue);
    while (names.size() > columns && names.back().empty()) {
        names.pop_back();
    }
    if (words < 2 || anyValue || names.size() > columns || names.size() + 1 < columns) {
        return std::nullopt;
    }
    return names;
}

std::size_t usualColumns(const std::vector<TableRow>& rows) {
    std::map<std::size_t, std::size_t> counts;
    for (const TableRow& row : rows) {
        if (Table::isData(row)) {
            ++counts[row.fields.size()];
        }
    }
    const auto most = std::max_element(counts.begin(), counts.end(),
                                       [](const auto& a, const auto& b) { return a.second < b.second; });
    return most == counts.end() ? 0 : most->first;
}

} // namespace

bool Table::isData(const TableRow& row) {
    int values = 0;
    for (const std::string& field : row.fields) {
        values += isValue(field) ? 1 : 0;
        if (values >= 2) {
            return true;
        }
    }
    return false;
}

Table tableOf(const std::vector<Line>& lines, char separator) {
    Table table;
    table.rows.reserve(lines.size());
    for (const Line& line : lines) {
        table.rows.push_back({fieldsOf(line.text, separator), line.number, line.ended});
    }
    table.columns = usualColumns(table.rows);
    for (std::size_t i = 0; i < table.rows.size() && !table.named; ++i) {
        if (auto names = namesIn(table.rows[i], table.columns, separator)) {
            table.names = std::move(*names);
            table.named = true;
            const auto end = table.rows.begin() + static_cast<std::ptrdiff_t>(i);
            const bool dataBefore = std::any_of(table.rows.begin(), end, [&table](const TableRow& row) {
                return row.fields.size() == table.columns && Table::isData(row);
            });
            table.firstData = dataBefore ? 0 : i + 1;
        }
    }
    for (std::size_t i = table.names.size(); i < table.columns; ++i) {
        table.names.push_back("column " + std::to_string(i + 1));
    }
    for (std::size_t i = 0; i < table.names.size(); ++i) {
        table.names[i] = table.names[i].empty() ? "column " + std::to_string(i + 1) : table.names[i];
    }
    return table;
}

} // namespace holdfast::kiosk::command::tracefile
