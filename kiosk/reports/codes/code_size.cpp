#include "kiosk/reports/codes/code_size.hpp"

#include <algorithm>
#include <array>

namespace holdfast::kiosk::reports {

namespace {

// Whole dots: 4 and 3 of 203 an inch, 4 of 300.
constexpr std::array<double, 3> kBarModules{4 * 25.4 / 203, 3 * 25.4 / 203, 4 * 25.4 / 300};
// 8, 7, 6, 5 of 203, 6 of 300.
constexpr std::array<double, 5> kSquareModules{8 * 25.4 / 203, 7 * 25.4 / 203, 6 * 25.4 / 203, 5 * 25.4 / 203,
                                               6 * 25.4 / 300};
static_assert(kBarModules.back() >= kLeastBarModule && kSquareModules.back() >= kLeastSquareModule);

double modulesAcross(const CodeModules& modules) {
    return modules.width + 2 * quietModules(modules.symbology);
}

template <class Widths>
std::optional<double> widestThatFits(const Widths& widths, double across, double width) {
    const auto found =
        std::find_if(widths.begin(), widths.end(), [&](double module) { return module * across <= width; });
    return found == widths.end() ? std::nullopt : std::optional{*found};
}

} // namespace

std::optional<SizedCode> sizedCode(Symbology wished, std::string_view text, double width, double squareWidth,
                                   double barHeight) {
    auto modules = modulesOf(wished, text);
    if (!modules) {
        return std::nullopt;
    }
    const double across = modulesAcross(*modules);
    if (wished == Symbology::qr) {
        const auto module = widestThatFits(kSquareModules, across, std::min(width, squareWidth));
        return module ? std::optional{SizedCode{*std::move(modules), *module, across * *module, across * *module}}
                      : std::nullopt;
    }
    if (const auto module = widestThatFits(kBarModules, across, width)) {
        const double high = std::max(barHeight, 0.15 * modules->width * *module);
        return SizedCode{*std::move(modules), *module, across * *module, high};
    }
    return sizedCode(Symbology::qr, text, width, squareWidth, barHeight);
}

} // namespace holdfast::kiosk::reports
