#include "kiosk/reports/csv.hpp"

namespace holdfast::kiosk::reports {

namespace {

bool isFormula(std::string_view text) {
    if (!text.empty() && (text.front() == '\t' || text.front() == '\r' || text.front() == '\n')) {
        return true;
    }
    const auto first = text.find_first_not_of(' ');
    return first != std::string_view::npos && std::string_view{"=+-@"}.find(text[first]) != std::string_view::npos;
}

bool needsQuotes(std::string_view text) {
    return text.find_first_of(",\"\r\n") != std::string_view::npos ||
           (!text.empty() && (text.front() == ' ' || text.back() == ' '));
}

std::string cellText(const CsvCell& cell) {
    std::string plain = cell.typed && isFormula(cell.text) ? "'" : "";
    for (const char sign : cell.text) {
        if (sign != '\0') {
            plain += sign;
        }
    }
    if (!needsQuotes(plain)) {
        return plain;
    }
    std::string quoted = "\"";
    for (const char sign : plain) {
        quoted += sign == '"' ? "\"\"" : std::string(1, sign);
    }
    return quoted + '"';
}

} // namespace

std::string csvRow(const std::vector<CsvCell>& cells) {
    std::string row;
    for (std::size_t i = 0; i < cells.size(); ++i) {
        row += (i == 0 ? "" : ",") + cellText(cells[i]);
    }
    return row + "\r\n";
}

} // namespace holdfast::kiosk::reports
