#include "kiosk/screens/charts/trend_paint.hpp"

#include "kiosk/screens/charts/trend_brush.hpp"

#include <QPainter>

#include <algorithm>
#include <cmath>

namespace holdfast::kiosk::screens {
namespace {

void paintChartGround(const TrendBrush& brush, const TrendLayout& layout) {
    const QRectF& plot = layout.plot;
    if (layout.proofY) {
        brush.fill(QRectF(plot.left(), *layout.proofY, plot.width(), plot.bottom() - *layout.proofY), brush.ink().tint);
    }
    for (const QRectF& stretch : layout.stretches) {
        brush.fill(stretch, brush.ink().tint);
        brush.hatch(stretch);
        brush.fill(QRectF(stretch.left(), stretch.top(), brush.px(2.0), stretch.height()), brush.ink().ink);
        brush.fill(QRectF(stretch.right() - brush.px(2.0), stretch.top(), brush.px(2.0), stretch.height()),
                   brush.ink().ink);
    }
    for (const double y : layout.gridY) {
        brush.fill(QRectF(plot.left(), std::round(y), plot.width(), brush.hair()), brush.ink().rule);
    }
    for (const QPolygonF& band : layout.bands) {
        brush.painter.setPen(QPen(brush.ink().ink2, brush.hair()));
        brush.painter.setBrush(brush.ink().tint);
        brush.painter.drawPolygon(band);
    }
    if (!layout.plot.isEmpty() && !layout.proofY) {
        brush.fill(QRectF(plot.left(), plot.bottom() - brush.px(1.0), plot.width(), brush.px(2.0)), brush.ink().ink);
    }
}

QPen penOf(const TrendBrush& brush, TrendStroke stroke) {
    const auto line = [&](const QColor& colour, double width) {
        return QPen(colour, std::max(1.0, brush.px(width)), Qt::SolidLine, Qt::FlatCap, Qt::RoundJoin);
    };
    QPen pen = line(brush.ink().ink, 3.0);
    switch (stroke) {
    case TrendStroke::Limit:
        pen = line(brush.ink().ink2, 2.0);
        pen.setDashPattern({4.0, 3.0}); // of the width: 8 and 6 px
        break;
    case TrendStroke::Outlook:
        pen.setDashPattern({3.0, 2.0});
        break;
    case TrendStroke::Centre:
        return line(brush.ink().ink2, 1.0);
    case TrendStroke::Average:
        return line(brush.ink().ink, 2.0);
    case TrendStroke::Proof:
    case TrendStroke::Fit:
        break;
    }
    return pen;
}

void paintCurves(const TrendBrush& brush, const TrendLayout& layout) {
    brush.painter.setBrush(Qt::NoBrush);
    for (const TrendCurve& curve : layout.curves) {
        QPen pen = penOf(brush, curve.stroke);
        for (const QPolygonF& part : curve.parts) {
            const bool level = part.size() == 2 && part.first().y() == part.last().y();
            brush.painter.setPen(pen);
            if (level && pen.style() == Qt::SolidLine) { // on whole pixels
                const double width = pen.widthF();
                brush.fill(QRectF(part.first().x(), std::round(part.first().y() - width / 2.0),
                                  part.last().x() - part.first().x(), std::max(1.0, std::round(width))),
                           pen.color());
            } else {
                brush.painter.drawPolyline(part);
            }
        }
    }
}

void paintEvents(const TrendBrush& brush, const TrendLayout& layout) {
    for (const QLineF& event : layout.events) {
        brush.fill(QRectF(std::round(event.x1() - brush.px(0.75)), event.y1(), brush.px(1.5), event.y2() - event.y1()),
                   brush.ink().ink);
    }
    brush.painter.setBrush(Qt::NoBrush);
    for (const QPolygonF& bracket : layout.brackets) {
        brush.painter.setPen(brush.pen(2.0));
        brush.painter.drawPolyline(bracket);
    }
    for (const TrendBeam& beam : layout.beams) {
        const double half = brush.px(8.0);
        const double thick = brush.px(4.0);
        brush.fill(QRectF(beam.from, beam.y - thick / 2.0, std::max(thick, beam.to - beam.from), thick),
                   brush.ink().ink);
        for (const double x : {beam.from, std::max(beam.from, beam.to - thick)}) {
            brush.fill(QRectF(x, beam.y - half, thick, 2.0 * half), brush.ink().ink);
        }
    }
}

void paintBars(const TrendBrush& brush, const TrendLayout& layout) {
    for (const TrendBlock& bar : layout.bars) {
        if (!bar.missed.isEmpty()) {
            brush.fill(bar.missed, brush.ink().paper);
            brush.hatch(bar.missed);
            brush.frame(bar.missed, 1.5);
        }
        if (bar.strong) {
            brush.fill(bar.box, brush.ink().ink);
        } else if (bar.box.height() > brush.px(1.0)) {
            brush.fill(bar.box, brush.ink().paper);
            brush.frame(bar.box, 2.0);
        }
    }
}

/// The limits as a whisker; over what is filled it is paper.
void paintShares(const TrendBrush& brush, const TrendLayout& layout) {
    for (const double y : layout.rulesY) {
        brush.fill(QRectF(0.0, std::round(y), layout.width, brush.hair()), brush.ink().rule);
    }
    for (const TrendShareBar& share : layout.shares) {
        const QRectF& box = share.box;
        brush.fill(box, share.filled ? brush.ink().ink : brush.ink().paper);
        if (!share.filled) {
            brush.frame(box, 2.0);
        }
        if (share.low >= share.high) {
            continue;
        }
        const double middle = box.center().y();
        const double split = std::clamp(box.right(), share.low, share.high);
        const auto whisker = [&](double from, double to, double cap, const QColor& colour) {
            const double cut = brush.px(2.0);
            brush.fill(QRectF(from, middle - brush.px(1.0), to - from, cut), colour);
            brush.fill(QRectF(cap - brush.px(1.0), middle - brush.px(5.0), cut, brush.px(10.0)), colour);
        };
        const bool lowInside = share.filled && share.low < box.right();
        whisker(share.low, split, share.low, lowInside ? brush.ink().paper : brush.ink().ink);
        const bool highInside = share.filled && share.high <= box.right();
        whisker(split, share.high, share.high, highInside ? brush.ink().paper : brush.ink().ink);
    }
}

void paintWords(const TrendBrush& brush, const TrendLayout& layout) {
    for (const TrendWord& word : layout.words) {
        brush.word(word);
    }
    for (const TrendWord& number : layout.numbers) {
        if (!number.onPaper) {
            brush.frame(number.box, 2.0);
        }
        brush.word(number);
    }
}

} // namespace

void paintTrendChart(QPainter& painter, const TrendLayout& layout, const ChartStyle& style) {
    const TrendBrush brush{painter, style};
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    paintChartGround(brush, layout);
    paintBars(brush, layout);
    paintEvents(brush, layout);
    if (layout.columns.isEmpty()) {
        paintCurves(brush, layout);
        paintTrendMarks(brush, layout);
    } else { // a cloud of points would hide the lines
        paintTrendMarks(brush, layout);
        paintCurves(brush, layout);
    }
    paintShares(brush, layout);
    paintWords(brush, layout);
    painter.restore();
}

void paintTrendFocus(QPainter& painter, const TrendLayout& layout, const ChartStyle& style, int target, bool pressed) {
    if (target < 0 || target >= layout.targets.size()) {
        return;
    }
    const TrendBrush brush{painter, style};
    const TrendTarget& at = layout.targets[target];
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    const double out = style.px(layout.rulesY.isEmpty() ? 6.0 : 0.0);
    const QRectF all(0.0, 0.0, layout.width, layout.height);
    const QRectF ring = at.box.adjusted(-out, -out, out, out).intersected(all);
    brush.frame(ring, pressed ? 6.0 : 3.0);
    if (!at.spoken.isEmpty() && layout.rulesY.isEmpty()) {
        const QFontMetricsF metrics(style.font(false));
        const double wide = std::min(layout.width, metrics.horizontalAdvance(at.spoken) + style.px(18.0));
        const double high = style.px(36.0);
        const double left = std::clamp(ring.center().x() - wide / 2.0, 0.0, std::max(0.0, layout.width - wide));
        const double over = ring.top() - high - style.px(4.0);
        const QRectF box(left, over >= 0.0 ? over : std::min(ring.bottom() + style.px(4.0), layout.height - high), wide,
                         high);
        brush.fill(box, style.palette.paper);
        brush.frame(box, 2.0);
        brush.word({.text = metrics.elidedText(at.spoken, Qt::ElideRight, wide - style.px(16.0)),
                    .box = box.adjusted(style.px(8.0), 0.0, -style.px(8.0), 0.0),
                    .align = Qt::AlignLeft});
    }
    painter.restore();
}

InkPalette blackPalette() {
    InkPalette palette = lightPalette();
    palette.paper = palette.clear = Qt::white;
    palette.tint = QColor(0xEE, 0xEE, 0xEE);
    palette.rule = QColor(0xBB, 0xBB, 0xBB);
    palette.ink = palette.ink2 = Qt::black;
    palette.cured = palette.underCured = palette.overheated = Qt::black;
    return palette;
}

} // namespace holdfast::kiosk::screens
