#pragma once

#include "kiosk/screens/parts/palette.hpp"

#include <QFont>
#include <QRectF>
#include <QString>

#include <algorithm>
#include <cmath>

namespace holdfast::kiosk::screens {

/// How a chart is set: on a screen or on paper.
struct ChartStyle {
    InkPalette palette;
    double unit = 1.0; ///< what 1 px at 1280×800 measures here
    QString family = QStringLiteral("B612");

    [[nodiscard]] double px(double design) const { return design * unit; }
    /// The text size of look.md, 21.
    [[nodiscard]] QFont font(bool bold) const {
        QFont font(family);
        font.setPixelSize(std::max(1, static_cast<int>(std::lround(px(21.0)))));
        font.setBold(bold);
        font.setLetterSpacing(QFont::AbsoluteSpacing, -0.2 * unit);
        return font;
    }
};

/// A text and where it stands.
struct ChartWord {
    QString text;
    QRectF box;
    bool bold = false;
};

} // namespace holdfast::kiosk::screens
