#include "kiosk/screens/parts/heat_scale_paint.hpp"

#include "kiosk/screens/parts/mark_paint.hpp"
#include "kiosk/screens/parts/trace_columns.hpp"

#include <QPainter>
#include <QPainterPath>

#include <algorithm>
#include <array>
#include <cmath>

namespace holdfast::kiosk::screens {
namespace {

QColor withAlpha(QColor colour, double alpha) {
    colour.setAlphaF(static_cast<float>(alpha));
    return colour;
}

/// One painting: the arguments every step shares.
struct ScaleSheet {
    QPainter& painter;
    const HeatScaleState& state;
    const HeatScaleStyle& style;
    const HeatScaleLayout& layout;

    [[nodiscard]] const HeatScaleMapping& map() const { return layout.mapping; }
    [[nodiscard]] const QRectF& plot() const { return layout.mapping.plot; }
    [[nodiscard]] const InkPalette& ink() const { return style.palette; }
    [[nodiscard]] double px(double value) const { return value * style.unit; }
    [[nodiscard]] bool full() const { return style.form == HeatScaleForm::Full; }
    [[nodiscard]] QRectF band(double top, double bottom) const {
        return {plot().left(), top, plot().width(), std::max(0.0, bottom - top)};
    }
    void line(double y, double width, Qt::PenStyle pen = Qt::SolidLine) const {
        painter.setPen(QPen(ink().ink, px(width), pen, Qt::FlatCap));
        painter.drawLine(QPointF(plot().left(), y), QPointF(plot().right(), y));
    }
};

/// The lowest line that may lie under the clear paper: the highest cure not over the ceiling.
std::optional<double> clearFoot(const HeatScaleState& state) {
    const std::optional<CeilingLine> upper = upperLimit(state);
    std::optional<double> foot;
    for (const CureLine& cure : state.cures) {
        if (!upper || cure.atShown <= upper->atShown) {
            foot = std::max(foot.value_or(cure.atShown), cure.atShown);
        }
    }
    return foot;
}

void paintGrounds(const ScaleSheet& sheet) {
    const HeatScaleMapping& map = sheet.map();
    const std::optional<CeilingLine> upper = upperLimit(sheet.state);
    const std::optional<CureLine> lower = lowerLimit(sheet.state);
    const std::optional<double> foot = clearFoot(sheet.state);
    sheet.painter.fillRect(sheet.plot(), sheet.ink().tint);
    const double ceiling = upper ? map.y(upper->atShown) : sheet.plot().top();
    if (foot) {
        sheet.painter.fillRect(sheet.band(ceiling, map.y(*foot)), sheet.ink().clear);
    }
    if (!upper) {
        return;
    }
    const QColor hatch = withAlpha(sheet.ink().ink, sheet.ink().hatchAlpha);
    const double step = sheet.px(sheet.full() ? 12.0 : 6.0);
    const double width = sheet.px(sheet.full() ? 1.25 : 1.0);
    const double crossed = lower && lower->atShown > upper->atShown ? map.y(lower->atShown) : ceiling;
    paintHatch(sheet.painter, sheet.band(sheet.plot().top(), crossed), hatch, step, width, false);
    paintHatch(sheet.painter, sheet.band(crossed, ceiling), hatch, step, width, true);
}

/// Dots as wide as the guard: both sides of each cure, inside the ceiling. Overlapping guards are dotted once.
void paintGuards(const ScaleSheet& sheet) {
    const HeatScaleMapping& map = sheet.map();
    const std::optional<CeilingLine> upper = upperLimit(sheet.state);
    QPainterPath area;
    area.setFillRule(Qt::WindingFill);
    for (const CureLine& cure : sheet.state.cures) {
        if (cure.guardShown > 0.0 && (!upper || cure.atShown <= upper->atShown)) {
            area.addRect(sheet.band(map.y(cure.atShown + cure.guardShown), map.y(cure.atShown - cure.guardShown)));
        }
    }
    if (upper && upper->guardShown > 0.0 && !sheet.state.closed) {
        area.addRect(sheet.band(map.y(upper->atShown), map.y(upper->atShown - upper->guardShown)));
    }
    if (area.isEmpty()) {
        return;
    }
    const double top = upper ? map.y(upper->atShown) : sheet.plot().top();
    const double step = sheet.px(sheet.full() ? 8.0 : 5.0);
    const double row = sheet.px(sheet.full() ? 5.5 : 4.0);
    QList<QPointF> dots;
    bool shifted = false;
    for (double y = top + row / 2.0; y < sheet.plot().bottom(); y += row, shifted = !shifted) {
        for (double x = sheet.plot().left() + (shifted ? step : step / 2.0); x < sheet.plot().right(); x += step) {
            if (area.contains(QPointF(x, y))) {
                dots.append({x, y});
            }
        }
    }
    sheet.painter.setPen(QPen(withAlpha(sheet.ink().ink, sheet.ink().dotAlpha), sheet.px(sheet.full() ? 2.3 : 1.4),
                              Qt::SolidLine, Qt::RoundCap));
    sheet.painter.drawPoints(dots.constData(), static_cast<int>(dots.size()));
}

void paintLimits(const ScaleSheet& sheet) {
    const HeatScaleMapping& map = sheet.map();
    const double strong = sheet.full() ? 3.0 : 2.0;
    const double weak = sheet.full() ? 2.0 : 1.0;
    const std::optional<CureLine> lower = lowerLimit(sheet.state);
    for (const CureLine& cure : sheet.state.cures) {
        const bool marked = cure.atShown == lower->atShown;
        sheet.line(map.y(cure.atShown), marked ? strong : weak);
    }
    const std::optional<CeilingLine> upper = upperLimit(sheet.state);
    for (const std::optional<CeilingLine>& line : {sheet.state.hardCeiling, sheet.state.bleedCeiling}) {
        if (line) {
            sheet.line(map.y(line->atShown), line->atShown == upper->atShown ? strong : weak);
        }
    }
    if (!sheet.full()) {
        return;
    }
    const auto dashed = [&](double shown, double width, double on, double off) {
        QPen pen(sheet.ink().ink, sheet.px(width), Qt::SolidLine, Qt::FlatCap);
        pen.setDashPattern({on / width, off / width});
        sheet.painter.setPen(pen);
        sheet.painter.drawLine(QPointF(sheet.plot().left(), map.y(shown)), QPointF(sheet.plot().right(), map.y(shown)));
    };
    if (sheet.state.gel) {
        dashed(sheet.state.gel->atShown, 1.5, 9.0, 7.0);
    }
    if (sheet.state.aim) {
        dashed(sheet.state.aim->atShown, 2.0, 14.0, 6.0);
    }
}

void paintText(const ScaleSheet& sheet, const QRectF& box, Qt::Alignment align, const QString& text, double size,
               bool bold, const QColor& colour) {
    sheet.painter.setFont(sheet.style.font(size, bold));
    sheet.painter.setPen(colour);
    sheet.painter.drawText(box, static_cast<int>(align) | Qt::TextDontClip | Qt::TextSingleLine, text);
}

void paintLabel(const ScaleSheet& sheet, const ScaleLabel& label) {
    const InkPalette& ink = sheet.ink();
    const double pad = sheet.px(8.0);
    QColor colour = ink.ink;
    if (label.kind == ScaleLabelKind::Block) {
        sheet.painter.fillRect(label.box, ink.ink);
        colour = ink.paper;
    } else if (label.ground != LabelGround::Bare) {
        sheet.painter.fillRect(label.box, label.ground == LabelGround::Paper ? ink.paper : ink.clear);
    }
    if (label.kind == ScaleLabelKind::Framed) {
        const double width = sheet.px(3.0);
        sheet.painter.setPen(QPen(ink.ink, width, Qt::SolidLine, Qt::FlatCap, Qt::MiterJoin));
        sheet.painter.setBrush(Qt::NoBrush);
        sheet.painter.drawRect(label.box.adjusted(width / 2, width / 2, -width / 2, -width / 2));
    }
    const bool figure = label.kind == ScaleLabelKind::Figure;
    if (figure || (label.kind == ScaleLabelKind::Note && label.ground != LabelGround::Bare)) {
        colour = ink.of(sheet.state.verdict);
    }
    paintText(sheet, label.box.adjusted(pad, 0.0, 0.0, 0.0), Qt::AlignLeft | Qt::AlignVCenter, label.text, label.size,
              label.kind != ScaleLabelKind::Word, colour);
}

double timeStep(double span, double width, double unit) {
    for (const double step : {5.0, 10.0, 20.0, 30.0, 60.0, 120.0, 300.0, 600.0, 1800.0}) {
        if (step / span * width >= 72.0 * unit) {
            return step;
        }
    }
    return 3600.0;
}

void paintTimeAxis(const ScaleSheet& sheet) {
    const double span = sheet.map().spanSeconds;
    const double step = timeStep(span, sheet.plot().width(), sheet.style.unit);
    const double bottom = sheet.plot().bottom();
    for (double s = 0.0; s <= span; s += step) {
        const double x = sheet.map().x(s);
        sheet.painter.fillRect(QRectF(x - sheet.px(1.0), bottom, sheet.px(2.0), sheet.px(7.0)), sheet.ink().ink);
        const QString figure = QString::number(static_cast<qint64>(s));
        const QString text = s == 0.0 ? figure + u' ' + sheet.state.secondsUnit : figure;
        const double left = s == 0.0 ? x - sheet.px(1.0) : x - sheet.px(40.0);
        const Qt::Alignment align = (s == 0.0 ? Qt::AlignLeft : Qt::AlignHCenter) | Qt::AlignVCenter;
        const QRectF box(left, bottom + sheet.px(8.0), sheet.px(80.0), sheet.px(28.0));
        if (s == 0.0 || x + sheet.px(20.0) <= sheet.plot().right() + sheet.px(12.0)) {
            paintText(sheet, box, align, text, 21.0, false, sheet.ink().ink2);
        }
    }
}

void paintAxis(const ScaleSheet& sheet) {
    const QRectF& plot = sheet.plot();
    const double two = sheet.px(2.0);
    sheet.painter.fillRect(QRectF(plot.left() - two, plot.top(), two, plot.height()), sheet.ink().ink);
    sheet.painter.fillRect(QRectF(plot.left() - two, plot.bottom(), plot.width() + two, two), sheet.ink().ink);
    for (const AxisFigure& figure : sheet.layout.axis) {
        const double width = sheet.layout.axisWidth - sheet.px(12.0);
        const QRectF box(plot.left() - sheet.px(12.0) - width, figure.y - sheet.px(14.0), width, sheet.px(28.0));
        paintText(sheet, box, Qt::AlignRight | Qt::AlignVCenter, figure.text, 21.0, figure.bold,
                  figure.bold ? sheet.ink().ink : sheet.ink().ink2);
    }
    if (sheet.layout.timeAxis) {
        paintTimeAxis(sheet);
    }
}

/// The torn strip at the knee, through trace and axis, and the two strokes that say the scale changes.
void paintKnee(const ScaleSheet& sheet) {
    const QRectF& plot = sheet.plot();
    const double y = sheet.map().kneeY;
    const double half = sheet.px(4.0);
    sheet.painter.fillRect(QRectF(plot.left() - sheet.px(3.0), y - half, plot.width() + sheet.px(3.0), 2.0 * half),
                           sheet.ink().paper);
    sheet.painter.setPen(QPen(sheet.ink().ink, sheet.px(2.0), Qt::SolidLine, Qt::FlatCap));
    for (const double at : {y - half, y + half}) {
        sheet.painter.drawLine(QPointF(plot.left() - sheet.px(10.0), at + sheet.px(4.0)),
                               QPointF(plot.left() + sheet.px(8.0), at - sheet.px(4.0)));
    }
}

bool judged(MarkKind kind) {
    return kind == MarkKind::Cured || kind == MarkKind::UnderCured || kind == MarkKind::Overheated ||
           kind == MarkKind::NotProven;
}

void paintTrace(const ScaleSheet& sheet) {
    const QList<QLineF> lines = traceLines(sheet.state.trace, sheet.map());
    const double thin = sheet.full() ? 3.0 : 2.0;
    sheet.painter.setPen(QPen(sheet.ink().ink, sheet.px(thin), Qt::SolidLine, Qt::RoundCap));
    sheet.painter.drawLines(lines);
    const std::optional<CureLine> lower = lowerLimit(sheet.state);
    if (!lower || !judged(sheet.state.verdict)) {
        return;
    }
    const QRectF over = sheet.band(sheet.plot().top(), sheet.map().y(lower->atShown));
    sheet.painter.save();
    sheet.painter.setClipRect(over, Qt::IntersectClip);
    sheet.painter.setPen(
        QPen(sheet.ink().of(sheet.state.verdict), sheet.px(sheet.full() ? 8.0 : 4.0), Qt::SolidLine, Qt::RoundCap));
    sheet.painter.drawLines(lines);
    sheet.painter.restore();
}

void paintRing(const ScaleSheet& sheet, const QPointF& at) {
    sheet.painter.setPen(QPen(sheet.ink().ink, sheet.px(3.5)));
    sheet.painter.setBrush(sheet.ink().paper);
    sheet.painter.drawEllipse(at, sheet.px(6.25), sheet.px(6.25));
}

void paintTraceEnd(const ScaleSheet& sheet) {
    const std::optional<TracePoint> last = lastDrawn(sheet.state.trace);
    if (last && sheet.state.traceEnd == TraceEnd::Lost) {
        paintRing(sheet, sheet.map().at(*last));
    }
    if (last && sheet.state.traceEnd == TraceEnd::Running) {
        sheet.painter.setPen(Qt::NoPen);
        sheet.painter.setBrush(sheet.ink().ink);
        sheet.painter.drawEllipse(sheet.map().at(*last), sheet.px(8.0), sheet.px(8.0));
    }
    if (sheet.state.peak && !sheet.state.trace.isEmpty()) {
        paintRing(sheet, {sheet.map().x(sheet.state.peak->seconds), sheet.map().y(sheet.state.peak->atShown)});
    }
}

void paintArrow(const ScaleSheet& sheet, double x, double y, double direction, const QColor& colour) {
    const double wing = sheet.px(sheet.full() ? 9.0 : 4.0);
    QPainterPath head(QPointF(x, y));
    head.lineTo(x - wing, y - direction * 1.4 * wing);
    head.lineTo(x + wing, y - direction * 1.4 * wing);
    head.closeSubpath();
    sheet.painter.setPen(Qt::NoPen);
    sheet.painter.setBrush(colour);
    sheet.painter.drawPath(head);
}

/// The I-beam of a strip; an open end is an arrow. A gun's bar with its arrow down: at most this.
void paintInterval(const ScaleSheet& sheet) {
    if (!sheet.state.strip && !sheet.state.gun) {
        return;
    }
    const QColor colour = sheet.ink().of(sheet.state.verdict);
    const double x = sheet.full() ? sheet.layout.intervalX : sheet.plot().center().x();
    const double wide = sheet.full() ? sheet.layout.intervalHalf : sheet.px(12.0);
    const double width = sheet.px(sheet.full() ? 4.0 : 2.0);
    std::optional<double> low;
    std::optional<double> high;
    if (sheet.state.strip) {
        low = sheet.state.strip->lowShown;
        high = sheet.state.strip->highShown;
    } else {
        high = sheet.state.gun->atShown;
    }
    const double top = high ? sheet.map().y(*high) : sheet.plot().top() + sheet.px(2.0);
    const double openFoot = sheet.state.gun
                                ? std::min(top + sheet.px(sheet.full() ? 56.0 : 16.0), sheet.plot().bottom())
                                : sheet.map().kneeY - sheet.px(8.0);
    const double bottom = low ? sheet.map().y(*low) : openFoot;
    sheet.painter.fillRect(QRectF(x - width / 2.0, top, width, bottom - top), colour);
    if (high) {
        sheet.painter.fillRect(QRectF(x - wide, top - width / 2.0, 2.0 * wide, width), colour);
    } else {
        paintArrow(sheet, x, top, -1.0, colour);
    }
    if (low) {
        sheet.painter.fillRect(QRectF(x - wide, bottom - width / 2.0, 2.0 * wide, width), colour);
    } else {
        paintArrow(sheet, x, bottom, 1.0, colour);
    }
}

void paintListBar(const ScaleSheet& sheet) {
    if (!sheet.state.peak) {
        return;
    }
    const double width = sheet.plot().width() * 0.4;
    const double y = std::round(sheet.map().y(sheet.state.peak->atShown) - sheet.px(2.5));
    sheet.painter.fillRect(QRectF(std::round(sheet.plot().left() + sheet.plot().width() * 0.3), y, std::round(width),
                                  std::round(sheet.px(5.0))),
                           sheet.ink().of(sheet.state.verdict));
}

} // namespace

void paintHeatScaleGround(QPainter& painter, const HeatScaleState& state, const HeatScaleStyle& style,
                          const HeatScaleLayout& layout) {
    const ScaleSheet sheet{painter, state, style, layout};
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    paintGrounds(sheet);
    paintGuards(sheet);
    paintLimits(sheet);
    if (sheet.full()) {
        paintAxis(sheet);
        for (const ScaleLabel& label : layout.labels) {
            paintLabel(sheet, label);
        }
    }
    painter.restore();
}

void paintHeatScaleReading(QPainter& painter, const HeatScaleState& state, const HeatScaleStyle& style,
                           const HeatScaleLayout& layout) {
    const ScaleSheet sheet{painter, state, style, layout};
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    if (style.form == HeatScaleForm::List) {
        paintListBar(sheet);
    } else {
        paintTrace(sheet);
    }
    paintInterval(sheet);
    if (sheet.full()) {
        paintKnee(sheet);
        paintTraceEnd(sheet);
        for (const ScaleLabel& label : layout.reading) {
            paintLabel(sheet, label);
        }
    }
    painter.restore();
}

void paintHeatScale(QPainter& painter, const HeatScaleState& state, const HeatScaleStyle& style, const QRectF& rect) {
    const HeatScaleLayout layout = layoutHeatScale(state, style, rect);
    paintHeatScaleGround(painter, state, style, layout);
    paintHeatScaleReading(painter, state, style, layout);
}

} // namespace holdfast::kiosk::screens
