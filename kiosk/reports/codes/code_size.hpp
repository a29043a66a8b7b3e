#pragma once

#include "kiosk/reports/codes/code_modules.hpp"

#include <optional>
#include <string_view>

namespace holdfast::kiosk::reports {

/// Modules of bars are never narrower, mm: what common hand scanners read at arm's length (13 mil, common practice).
inline constexpr double kLeastBarModule = 0.33;
inline constexpr double kLeastSquareModule = 0.5;

/// A code ready to be placed, in mm, its quiet zone included.
struct SizedCode final {
    CodeModules modules;
    double module = 0;
    double width = 0;
    double height = 0;
};

/// The largest size up to `width` (of squares: `squareWidth`) at which each module is a whole number of dots of a label
/// printer (203 or 300 dots an inch); bars are `barHeight` high, at least 15 % of their length (ANSI/AIM BC4, Uniform
/// Symbology Specification Code 128). Bars that do not fit at 0.33 mm give way to the square. Absent: the text has no
/// code, or neither fits.
[[nodiscard]] std::optional<SizedCode> sizedCode(Symbology wished, std::string_view text, double width,
                                                 double squareWidth, double barHeight);

} // namespace holdfast::kiosk::reports
