#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

/// Bytes to lines, lines to fields, fields to numbers. Private to trace_file.
namespace holdfast::kiosk::command::tracefile {

[[nodiscard]] constexpr bool isDigit(char c) noexcept {
    return c >= '0' && c <= '9';
}

/// Without white space at either end.
[[nodiscard]] std::string_view trimmed(std::string_view text) noexcept;

[[nodiscard]] std::string lowered(std::string_view text);

/// Equal but for the case of ASCII letters.
[[nodiscard]] bool sameWord(std::string_view a, std::string_view b) noexcept;

struct Line final {
    std::string text;
    std::size_t number = 0; ///< 1 = first of the file
    bool ended = true;      ///< by a line end; false only for a last line without one
};

/// A byte-order mark of UTF-16, or every second byte zero.
[[nodiscard]] bool isUtf16(std::string_view bytes) noexcept;

/// Non-empty lines in UTF-8 (what is not is taken as Latin-1), without a byte-order mark and control characters other
/// than tab. Lines end in LF, CR LF, or CR where the file has no LF.
[[nodiscard]] std::vector<Line> linesOf(std::string_view bytes);

/// ' ' separates at any run of white space. Fields in double quotes may hold the separator, and "" for a quote. Fields
/// are trimmed.
[[nodiscard]] std::vector<std::string> fieldsOf(std::string_view line, char separator);

/// A word that stands for "no reading": empty, nan, inf, null, n/a, ---.
[[nodiscard]] bool isMissingWord(std::string_view text) noexcept;

struct Number final {
    double value = 0.0;
    int decimals = 0;
    std::optional<char> unit; ///< 'C' or 'F' where the field names it: "25.3 °C"
};

/// One decimal number, with point or comma, and nothing else but a unit.
[[nodiscard]] std::optional<Number> parseNumber(std::string_view text);

/// The separator under which the most fields of these lines read as numbers or times; absent when none yields two in
/// any line.
[[nodiscard]] std::optional<char> separatorOf(const std::vector<Line>& lines);

/// Reads as a number, a date or a time.
[[nodiscard]] bool isValue(std::string_view field);

} // namespace holdfast::kiosk::command::tracefile
