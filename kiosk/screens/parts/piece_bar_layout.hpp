#pragma once

#include "kiosk/screens/parts/chart_states.hpp"
#include "kiosk/screens/parts/chart_style.hpp"

#include <QRectF>

namespace holdfast::kiosk::screens {

/// A stretch of the bar; `word` empty: it did not fit and is of no bracket.
struct BarPart {
    PieceKind kind = PieceKind::Waiting;
    QRectF box;
    ChartWord word;
    bool under = false; ///< its word stands under the bar, with a lead to it
};

struct BarMark {
    MarkKind mark = MarkKind::NotProven;
    QRectF box;
    double x = 0.0; ///< of the piece
};

struct PieceBarLayout {
    QRectF bar;
    QRectF made; ///< the part that stands already
    QList<BarPart> parts;
    QList<BarMark> marks;
    QList<ChartWord> figures; ///< first, last, read pieces, made: under the bar, apart from one another
    double height = 0.0;
};

/// Stretches that overlap are drawn in their order, the last on top; what lies outside of 1 to `pieces` is cut.
[[nodiscard]] PieceBarLayout layoutPieceBar(const PieceBarState& state, const ChartStyle& style, double width);

} // namespace holdfast::kiosk::screens
