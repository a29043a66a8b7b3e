#pragma once

#include <string>
#include <string_view>
#include <vector>

/// Tables that a spreadsheet opens.
namespace holdfast::kiosk::reports {

/// A cell. Text that a spreadsheet would take for a formula gets an apostrophe in front of it; what the program wrote
/// itself, such as a count, does not.
struct CsvCell final {
    std::string text{};
    bool typed = true; ///< by people
};

/// RFC 4180: commas, CR LF at the end, quotes around a cell that holds a comma, a quote, a line end, or a blank at
/// either end; quotes within doubled. NUL is left out. A typed cell whose first sign after blanks is one of = + - @, or
/// that begins with a tab or a line end, is guarded (OWASP, "CSV Injection").
[[nodiscard]] std::string csvRow(const std::vector<CsvCell>& cells);

} // namespace holdfast::kiosk::reports
