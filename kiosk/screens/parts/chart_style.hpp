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
    /// 21, the text size of look.md, or its 28 for what leads.
    [[nodiscard]] QFont font(bool bold, double size = 21.0) const {
        QFont font(family);
        font.setPixelSize(std::max(1, static_cast<int>(std::lround(px(size)))));
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
