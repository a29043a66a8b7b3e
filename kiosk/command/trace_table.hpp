#pragma once

#include "kiosk/command/trace_text.hpp"

/// Lines cut into fields, and which of them is the header. Private to trace_file.
namespace holdfast::kiosk::command::tracefile {

struct TableRow final {
    std::vector<std::string> fields;
    std::size_t line = 0;
    bool ended = true;
};

struct Table final {
    std::vector<TableRow> rows;     ///< every non-empty line
    std::vector<std::string> names; ///< one a column; "column 1" and so on without a header
    bool named = false;             ///< a header was found
    std::size_t firstData = 0;      ///< rows before it are preamble
    std::size_t columns = 0;        ///< of most data rows

    /// The row has two or more values.
    [[nodiscard]] static bool isData(const TableRow& row);
};

[[nodiscard]] Table tableOf(const std::vector<Line>& lines, char separator);

} // namespace holdfast::kiosk::command::tracefile
