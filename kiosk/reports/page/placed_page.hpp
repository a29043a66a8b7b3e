#pragma once

#include "kiosk/reports/codes/code_modules.hpp"

#include <QImage>
#include <QPainterPath>
#include <QString>
#include <vector>

/// A page as finished pieces, each with its place: what is painted is what was measured. All in mm from the upper left.
namespace holdfast::kiosk::reports {

struct Box final {
    double x = 0;
    double y = 0;
    double width = 0;
    double height = 0;

    [[nodiscard]] double right() const noexcept { return x + width; }
    [[nodiscard]] double bottom() const noexcept { return y + height; }
};

/// One line.
struct PlacedText final {
    Box box; ///< as wide as the line runs
    QString text;
    double size = 3; ///< em
    bool bold = false;
    bool onInk = false; ///< paper-white on a filled box
};

/// A code with its quiet zone; the modules fill the box less that zone.
struct PlacedCode final {
    Box box;
    double module = 0;
    CodeModules modules;
};

/// Filled with black of that strength: 1 ink, 0 paper. In mm from the page's upper left.
struct PlacedShape final {
    QPainterPath outline;
    double strength = 1.0;
};

/// How thick rules are, in mm.
inline constexpr double kHair = 0.2;
inline constexpr double kStrong = 0.5;

struct PlacedPicture final {
    Box box;
    QImage image;
};

/// Painted in the order shapes, ink, pictures, codes, texts.
struct PlacedPage final {
    double width = 0;
    double height = 0;
    std::vector<Box> ink; ///< filled: rules, frames, the ground of words on ink
    std::vector<PlacedCode> codes;
    std::vector<PlacedText> texts;
    std::vector<PlacedShape> shapes{};
    std::vector<PlacedPicture> pictures{};
};

} // namespace holdfast::kiosk::reports
