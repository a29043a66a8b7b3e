#pragma once

#include <array>
#include <string_view>

namespace holdfast::kiosk::reports {

/// A sheet or label as it leaves the printer, upright unless it is a card. All in mm.
struct Paper final {
    std::string_view key; ///< as settings keep it
    double width = 0;
    double height = 0;
    double margin = 0; ///< what printers leave white, and a little more
    double text = 0;   ///< em of the running text; never under 2.6 mm, 7.4 pt
};

/// Labels: usual rolls of label printers (common practice). Sheets: ISO 216 and ANSI. The card: ISO/IEC 7810 ID-1.
inline constexpr std::array<Paper, 8> kPapers{{
    {"label-50x80", 50, 80, 2.5, 2.6},
    {"label-62x100", 62, 100, 3, 2.8},
    {"label-100x150", 100, 150, 4, 4.1},
    {"a6", 105, 148, 6, 4.0},
    {"half-letter", 139.7, 215.9, 8, 4.6},
    {"a4", 210, 297, 12, 5.2},
    {"letter", 215.9, 279.4, 12, 5.2},
    {"card", 85.6, 53.98, 3, 3.0},
}};

/// The paper of that key; anything else: A4.
[[nodiscard]] constexpr Paper paperOf(std::string_view key) noexcept {
    for (const auto& paper : kPapers) {
        if (paper.key == key) {
            return paper;
        }
    }
    return kPapers[5];
}

} // namespace holdfast::kiosk::reports
