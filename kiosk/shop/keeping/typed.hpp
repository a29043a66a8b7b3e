#pragma once

#include "analytics/quantity/temperature.hpp"

#include <optional>
#include <string>

/// Texts as typed on the pad.
namespace holdfast::kiosk::shop {

inline constexpr std::size_t kLongestText = 200; ///< in bytes

enum class TextFault {
    missing,
    tooLong,     ///< over kLongestText
    controlSign, ///< a sign that no printer prints
};

/// Without blanks at either end.
[[nodiscard]] std::string trimmed(const std::string& text);
/// Of a trimmed text; empty is `missing`.
[[nodiscard]] std::optional<TextFault> textFault(const std::string& text);
/// The first signs of a text, for a sentence about it; never part of a letter.
[[nodiscard]] std::string firstSigns(const std::string& text);
/// "1.5" or "1,5", sign allowed; nothing for anything else, also for infinite, not-a-number, exponents, and a comma
/// before three digits, which could part thousands.
[[nodiscard]] std::optional<double> numberFrom(const std::string& typed);
/// As few digits as say the same number, at most six behind the point.
[[nodiscard]] std::string numberTyped(double value);
/// The authored figure if it was written in that unit, else turned into it and rounded to a ten-thousandth.
[[nodiscard]] std::string temperatureTyped(const std::optional<analytics::AuthoredTemperature>& t,
                                           analytics::TemperatureUnit unit);

} // namespace holdfast::kiosk::shop
