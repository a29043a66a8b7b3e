#pragma once

#include <optional>
#include <string_view>
#include <vector>

/// Codes as dark and light modules; what draws them is kiosk/reports/page.
namespace holdfast::kiosk::reports {

enum class Symbology {
    code128, ///< bars, ISO/IEC 15417
    qr,      ///< square, ISO/IEC 18004
};

struct CodeModules final {
    Symbology symbology = Symbology::code128;
    int width = 0;          ///< modules, without the quiet zone
    int height = 0;         ///< modules; of bars 1
    std::vector<bool> dark; ///< row by row

    [[nodiscard]] bool at(int column, int row) const {
        return dark[static_cast<std::size_t>(row) * static_cast<std::size_t>(width) + static_cast<std::size_t>(column)];
    }
};

/// Light modules that must stand around it: 10 at either end of the bars (ISO/IEC 15417, quiet zone), 4 on all sides of
/// the square (ISO/IEC 18004, quiet zone).
[[nodiscard]] constexpr int quietModules(Symbology symbology) noexcept {
    return symbology == Symbology::code128 ? 10 : 4;
}

/// Of printable ASCII; absent for an empty text, other signs, or more than fits (80 signs for bars is common practice).
/// The square bears a quarter of its signs damaged (level Q).
[[nodiscard]] std::optional<CodeModules> modulesOf(Symbology symbology, std::string_view text);

} // namespace holdfast::kiosk::reports
