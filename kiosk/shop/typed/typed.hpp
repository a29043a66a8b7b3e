#pragma once

#include "analytics/quantity/temperature.hpp"

#include <optional>
#include <string>
#include <vector>

/// Texts as typed on the pad: what every room that takes a form needs of them.
namespace holdfast::kiosk::shop {

inline constexpr std::size_t kLongestText = 200; ///< in characters

enum class TextFault {
    missing,
    tooLong,     ///< over kLongestText
    controlSign, ///< a sign that no printer prints
};

/// Without blanks at either end.
[[nodiscard]] std::string trimmed(const std::string& text);
/// Of a trimmed text; empty is `missing`.
[[nodiscard]] std::optional<TextFault> textFault(const std::string& text);
/// Letters A to Z in any case are the same.
[[nodiscard]] bool sameName(const std::string& one, const std::string& other);
/// Characters of a text in UTF-8 (RFC 3629); a byte that is part of none counts as one.
[[nodiscard]] std::size_t charactersIn(const std::string& text);
/// The first 40 characters of a text, for a sentence about it; never part of one.
[[nodiscard]] std::string firstSigns(const std::string& text);
/// "280", "-1.5", "−1,5", "+2": a point or one comma. Nothing for anything else: text, exponents, infinite, and a comma
/// before three digits, which could part thousands.
[[nodiscard]] std::optional<double> numberFrom(const std::string& typed);
/// As few digits as say the same number, at most six behind the point.
[[nodiscard]] std::string numberTyped(double value);
/// The names in a text parted by commas, without blanks at their ends, each once in any case of letters, empty ones
/// left out.
[[nodiscard]] std::vector<std::string> namesTyped(const std::string& text);
/// "black, navy".
[[nodiscard]] std::string namesJoined(const std::vector<std::string>& names);
/// The smallest step that typed figures of this many decimals tell apart: "212" 1, "99.8" 0.1.
[[nodiscard]] double stepTyped(const std::string& typed);
/// The authored figure if it was written in that unit, else turned into it and rounded to a ten-thousandth.
[[nodiscard]] std::string authoredTyped(const std::optional<analytics::AuthoredTemperature>& t,
                                        analytics::TemperatureUnit unit);
[[nodiscard]] std::string authoredTyped(const std::optional<analytics::AuthoredDifference>& d,
                                        analytics::TemperatureUnit unit);

} // namespace holdfast::kiosk::shop
