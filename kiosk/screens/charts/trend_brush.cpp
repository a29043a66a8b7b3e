#include "kiosk/screens/charts/trend_brush.hpp"

#include "kiosk/screens/parts/mark_paint.hpp"

#include <QPainter>

#include <cmath>

namespace holdfast::kiosk::screens {
namespace {

constexpr double kHatchStep = 12.0; // tokens.json, "texture"
constexpr double kHatchWidth = 1.25;

void paintBeam(const TrendBrush& brush, const TrendMark& mark) {
    const double x = mark.at.x();
    const double thick = brush.px(mark.size == TrendSize::Full ? 4.0 : 2.0);
    const double arm = brush.px(mark.size == TrendSize::Full ? 8.0 : 5.0);
    const QColor& ink = brush.ink().ink;
    brush.fill(QRectF(x - thick / 2.0, mark.top, thick, mark.bottom - mark.top), ink);
    const auto end = [&](double y, bool open, double into) {
        if (!open) {
            const double top = into > 0.0 ? y : y - thick;
            brush.fill(QRectF(x - arm, top, 2.0 * arm, thick), ink);
            return;
        }
        brush.painter.setPen(Qt::NoPen);
        brush.painter.setBrush(ink);
        brush.painter.drawPolygon(
            QPolygonF{QPointF(x, y), QPointF(x - arm, y + into * arm * 1.4), QPointF(x + arm, y + into * arm * 1.4)});
    };
    end(mark.top, mark.openTop, 1.0);
    end(mark.bottom, mark.openBottom, -1.0);
}

void paintDot(const TrendBrush& brush, const TrendMark& mark) {
    const bool plain = mark.mark == MarkKind::Blank || mark.mark == MarkKind::Closed;
    const double r = brush.px(mark.size == TrendSize::Full ? 5.0 : mark.size == TrendSize::Small ? 3.5 : 1.5);
    if (plain && mark.size != TrendSize::Dot) {
        brush.painter.setPen(Qt::NoPen);
        brush.painter.setBrush(brush.ink().paper);
        brush.painter.drawEllipse(mark.at, r + brush.px(1.5), r + brush.px(1.5));
    }
    brush.painter.setPen(Qt::NoPen);
    brush.painter.setBrush(brush.ink().of(mark.mark));
    if (plain) {
        brush.painter.drawEllipse(mark.at, r, r);
    } else {
        brush.fill(QRectF(mark.at.x() - r, mark.at.y() - r, 2.0 * r, 2.0 * r), brush.ink().of(mark.mark));
    }
}

/// The film's middle stands at the value, on whole pixels where a pixel is one.
void paintTrendFilm(const TrendBrush& brush, const TrendMark& mark) {
    const double high = brush.px(mark.size == TrendSize::Full ? 16.0 : 10.0);
    const double wide = high * 1.25;
    const double filmMiddle = high * 9.0 / 16.0;
    const QRectF box(std::round(mark.at.x() - wide / 2.0), std::round(mark.at.y() - filmMiddle), wide, high);
    paintVerdictMark(brush.painter, mark.mark, box, {.palette = brush.ink(), .asPoint = true});
}

void paintBeyond(const TrendBrush& brush, const TrendMark& mark, const QRectF& plot) {
    const double r = brush.px(7.0);
    const double tip = mark.beyond > 0 ? plot.top() : plot.bottom();
    const double base = tip + mark.beyond * r * 1.3;
    brush.painter.setPen(Qt::NoPen);
    brush.painter.setBrush(brush.ink().ink);
    brush.painter.drawPolygon(
        QPolygonF{QPointF(mark.at.x(), tip), QPointF(mark.at.x() - r, base), QPointF(mark.at.x() + r, base)});
}

} // namespace

void TrendBrush::fill(const QRectF& box, const QColor& colour) const {
    painter.fillRect(box, colour);
}

void TrendBrush::frame(const QRectF& box, double width) const {
    const double half = px(width) / 2.0;
    painter.setPen(pen(width));
    painter.setBrush(Qt::NoBrush);
    painter.drawRect(box.adjusted(half, half, -half, -half));
}

void TrendBrush::hatch(const QRectF& box) const {
    QColor colour = ink().ink;
    colour.setAlphaF(static_cast<float>(ink().hatchAlpha));
    QList<QLineF> lines;
    const double step = px(kHatchStep);
    const double reach = box.height();
    // Along x + y = c, from the left and lower edge to the right and upper one.
    for (double x = std::floor((box.left() - reach) / step) * step; x < box.right(); x += step) {
        const double from = std::max(x, box.left());
        const double to = std::min(x + reach, box.right());
        if (to > from) {
            lines.append(QLineF(from, box.bottom() - (from - x), to, box.bottom() - (to - x)));
        }
    }
    painter.setPen(QPen(colour, px(kHatchWidth), Qt::SolidLine, Qt::FlatCap));
    painter.drawLines(lines);
}

void TrendBrush::word(const TrendWord& word) const {
    if (word.onPaper) {
        fill(word.box.adjusted(-px(2.0), px(2.0), px(2.0), -px(2.0)), ink().paper);
    }
    painter.setFont(style.font(word.bold, word.lead ? 28.0 : 21.0));
    painter.setPen(word.second ? ink().ink2 : ink().ink);
    const int flags = static_cast<int>(word.align | Qt::AlignVCenter) | static_cast<int>(Qt::TextSingleLine) |
                      static_cast<int>(Qt::TextDontClip);
    painter.drawText(word.box, flags, word.text);
}

void paintTrendMarks(const TrendBrush& brush, const TrendLayout& layout) {
    for (const TrendColumn& column : layout.columns) {
        brush.fill(QRectF(column.x - brush.hair() / 2.0, column.top, brush.hair(), column.bottom - column.top),
                   brush.ink().ink2);
    }
    for (const TrendMark& mark : layout.marks) {
        const bool film = mark.mark != MarkKind::Blank && mark.mark != MarkKind::Closed;
        if (mark.beam) {
            paintBeam(brush, mark);
        } else if (film && mark.size != TrendSize::Dot) {
            paintTrendFilm(brush, mark);
        } else {
            paintDot(brush, mark);
        }
        if (mark.beyond != 0) {
            paintBeyond(brush, mark, layout.plot);
        }
    }
    for (const QRectF& box : layout.ruleBoxes) {
        brush.frame(box, 2.0);
    }
}

} // namespace holdfast::kiosk::screens
