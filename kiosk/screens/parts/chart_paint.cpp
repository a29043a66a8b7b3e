#include "kiosk/screens/parts/chart_paint.hpp"

#include "kiosk/screens/parts/mark_paint.hpp"

#include <QPainter>
#include <QPainterPath>
#include <QPolygonF>

#include <cmath>

namespace holdfast::kiosk::screens {
namespace {

constexpr int kSingle = static_cast<int>(Qt::TextSingleLine) | static_cast<int>(Qt::TextDontClip);
constexpr int kCentre = static_cast<int>(Qt::AlignCenter) | kSingle;

struct ChartSheet {
    QPainter& painter;
    const ChartStyle& style;

    [[nodiscard]] const InkPalette& ink() const { return style.palette; }
    [[nodiscard]] double px(double design) const { return style.px(design); }
    [[nodiscard]] QPen pen(double width, Qt::PenCapStyle cap = Qt::FlatCap) const {
        return QPen(ink().ink, px(width), Qt::SolidLine, cap, Qt::MiterJoin);
    }
    void word(const ChartWord& word, int flags, const QColor& colour) const {
        painter.setFont(style.font(word.bold));
        painter.setPen(colour);
        painter.drawText(word.box, flags, word.text);
    }
};

/// Sizes so that of several points at one place each is seen around the next.
void paintPoint(const ChartSheet& sheet, PointShape shape, QPointF at, double scale) {
    const double r = sheet.px(10.0) * scale;
    sheet.painter.setPen(sheet.pen(3.0 * scale));
    sheet.painter.setBrush(shape == PointShape::Disc ? sheet.ink().ink : sheet.ink().paper);
    switch (shape) {
    case PointShape::Disc:
        sheet.painter.setPen(Qt::NoPen);
        sheet.painter.drawEllipse(at, r, r);
        break;
    case PointShape::Square:
        sheet.painter.drawRect(QRectF(at.x() - 0.65 * r, at.y() - 0.65 * r, 1.3 * r, 1.3 * r));
        break;
    case PointShape::Triangle:
        sheet.painter.drawPolygon(
            QPolygonF{at + QPointF(0.0, -1.05 * r), at + QPointF(1.0 * r, 0.75 * r), at + QPointF(-1.0 * r, 0.75 * r)});
        break;
    case PointShape::Diamond:
        sheet.painter.drawPolygon(QPolygonF{at + QPointF(0.0, -0.9 * r), at + QPointF(0.9 * r, 0.0),
                                            at + QPointF(0.0, 0.9 * r), at + QPointF(-0.9 * r, 0.0)});
        break;
    }
}

int depthOf(PointShape shape) {
    switch (shape) {
    case PointShape::Disc:
        return 1;
    case PointShape::Triangle:
        return 0;
    case PointShape::Diamond:
        return 2;
    case PointShape::Square:
        break;
    }
    return 3;
}

void paintGradeGround(const ChartSheet& sheet, const GradeChartLayout& layout) {
    const QRectF& plot = layout.plot;
    sheet.painter.setRenderHint(QPainter::Antialiasing, false);
    if (layout.limitY) {
        sheet.painter.fillRect(QRectF(plot.left(), *layout.limitY, plot.width(), plot.bottom() - *layout.limitY),
                               sheet.ink().tint);
    }
    for (const double y : layout.gridY) {
        sheet.painter.fillRect(
            QRectF(plot.left(), std::round(y), layout.gridRight - plot.left(), std::max(1.0, sheet.px(1.0))),
            sheet.ink().rule);
    }
    if (layout.limitY) {
        const double thick = std::max(1.0, std::round(sheet.px(3.0)));
        sheet.painter.fillRect(QRectF(plot.left(), std::round(*layout.limitY - thick / 2.0), plot.width(), thick),
                               sheet.ink().ink);
    }
    sheet.painter.setRenderHint(QPainter::Antialiasing);
}

void paintGradeLines(const ChartSheet& sheet, const GradeChartLayout& layout) {
    for (const GradeLine& line : layout.lines) {
        sheet.painter.setPen(QPen(sheet.ink().ink, sheet.px(3.0), Qt::SolidLine, Qt::FlatCap, Qt::RoundJoin));
        sheet.painter.setBrush(Qt::NoBrush);
        sheet.painter.drawPolyline(QPolygonF(line.points));
    }
    for (int depth = 0; depth < 4; ++depth) {
        for (const GradeLine& line : layout.lines) {
            if (depthOf(line.shape) != depth) {
                continue;
            }
            for (const QPointF& point : line.points) {
                paintPoint(sheet, line.shape, point, layout.pointScale);
            }
        }
    }
    for (const GradeLine& line : layout.lines) {
        const bool crossed = layout.limitY && line.name.box.top() < *layout.limitY - 1.0 &&
                             line.name.box.bottom() > *layout.limitY + 1.0;
        if (crossed) {
            sheet.painter.fillRect(line.name.box, sheet.ink().paper);
        }
        sheet.word(line.name, static_cast<int>(Qt::AlignVCenter) | kSingle, sheet.ink().ink);
        if (line.keyed) {
            paintPoint(sheet, line.shape, QPointF(line.name.box.left() - sheet.px(16.0), line.name.box.center().y()),
                       0.7);
        }
    }
}

void paintPart(const ChartSheet& sheet, const BarPart& part) {
    const QRectF& box = part.box;
    QColor hatch = sheet.ink().ink;
    hatch.setAlphaF(static_cast<float>(sheet.ink().hatchAlpha));
    switch (part.kind) {
    case PieceKind::Proven:
        sheet.painter.fillRect(box, sheet.ink().clear);
        break;
    case PieceKind::Waiting:
        sheet.painter.fillRect(box, sheet.ink().tint);
        break;
    case PieceKind::Bracket:
        sheet.painter.fillRect(box, sheet.ink().tint);
        paintHatch(sheet.painter, box, hatch, sheet.px(12.0), sheet.px(1.75), false);
        break;
    case PieceKind::Gone:
        sheet.painter.fillRect(box, sheet.ink().paper);
        break;
    }
}

void paintPartEdges(const ChartSheet& sheet, const BarPart& part) {
    const QRectF& box = part.box;
    const bool bracket = part.kind == PieceKind::Bracket;
    const double width = sheet.px(bracket ? 4.0 : 2.0);
    if (part.kind == PieceKind::Gone) {
        paintDashedBox(sheet.painter, box, sheet.style);
    } else {
        sheet.painter.setBrush(Qt::NoBrush);
        sheet.painter.setPen(QPen(sheet.ink().ink, width, Qt::SolidLine, Qt::FlatCap, Qt::MiterJoin));
        const double half = std::min(width / 2.0, box.width() / 2.0);
        sheet.painter.drawRect(box.adjusted(half, width / 2.0, -half, -width / 2.0));
    }
    if (part.word.text.isEmpty()) {
        return;
    }
    if (part.under) {
        sheet.painter.fillRect(QRectF(box.center().x() - sheet.px(1.0), box.bottom(), sheet.px(2.0),
                                      part.word.box.top() - box.bottom() + sheet.px(2.0)),
                               sheet.ink().ink);
        return;
    }
    if (bracket) {
        sheet.painter.fillRect(part.word.box.adjusted(-sheet.px(8.0), 0.0, sheet.px(8.0), 0.0), sheet.ink().paper);
    }
    sheet.word(part.word, kCentre, sheet.ink().ink);
}

void paintReadMark(const ChartSheet& sheet, const PieceBarLayout& layout, const BarMark& mark) {
    const double foot = mark.box.bottom() + sheet.px(2.0);
    sheet.painter.fillRect(QRectF(mark.x - sheet.px(1.0), foot, sheet.px(2.0), layout.bar.top() - foot),
                           sheet.ink().ink);
    paintVerdictMark(sheet.painter, mark.mark, mark.box, {.palette = sheet.ink(), .asPoint = true});
}

/// Wavy lines from edge to edge of a film, `gap` wide, in the ground's colour.
void paintCracks(const ChartSheet& sheet, const QRectF& film, int count, double gap) {
    sheet.painter.save();
    sheet.painter.setClipRect(film);
    sheet.painter.setPen(QPen(sheet.ink().tint, gap, Qt::SolidLine, Qt::FlatCap, Qt::RoundJoin));
    sheet.painter.setBrush(Qt::NoBrush);
    for (int i = 1; i <= count; ++i) {
        const double x = film.left() + film.width() * (i - 0.5) / count;
        const double sway = film.width() / 30.0;
        QPolygonF line;
        for (int step = 0; step <= 6; ++step) {
            line.append({x + (step % 2 == 0 ? -sway : sway), film.top() + film.height() * step / 6.0});
        }
        sheet.painter.drawPolyline(line);
    }
    sheet.painter.restore();
}

/// Crumbs that grow fewer from left to right; the same at each drawing.
void paintCrumbs(const ChartSheet& sheet, const QRectF& film) {
    const double cell = film.height() / 6.0;
    const int columns = std::max(1, static_cast<int>(film.width() / cell));
    sheet.painter.setPen(Qt::NoPen);
    sheet.painter.setBrush(sheet.ink().ink);
    unsigned seed = 12345;
    for (int column = 0; column < columns; ++column) {
        for (int row = 0; row < 6; ++row) {
            seed = seed * 1103515245U + 12345U;
            const double chance = static_cast<double>((seed >> 16U) & 0x3FFU) / 1023.0;
            const double size = cell * (0.35 + 0.55 * chance);
            if (chance > 0.45) {
                sheet.painter.drawRect(QRectF(film.left() + column * cell + (cell - size) * chance,
                                              film.top() + row * cell + (cell - size) / 2.0, size, size));
            }
        }
    }
}

} // namespace

void paintDashedBox(QPainter& painter, const QRectF& box, const ChartStyle& style) {
    const double width = style.px(2.0);
    QPen pen(style.palette.ink, width, Qt::CustomDashLine, Qt::FlatCap, Qt::MiterJoin);
    pen.setDashPattern({4.0, 3.0});
    painter.setBrush(Qt::NoBrush);
    painter.setPen(pen);
    const double half = width / 2.0;
    const QRectF line = box.adjusted(half, half, -half, -half);
    painter.drawLine(line.topLeft(), line.topRight());
    painter.drawLine(line.bottomLeft(), line.bottomRight());
    painter.drawLine(line.topLeft(), line.bottomLeft());
    painter.drawLine(line.topRight(), line.bottomRight());
}

void paintGradeChart(QPainter& painter, const GradeChartState& state, const ChartStyle& style, double width) {
    const GradeChartLayout layout = layoutGradeChart(state, style, width);
    const ChartSheet sheet{painter, style};
    const InkPalette& ink = style.palette;
    painter.save();
    paintGradeGround(sheet, layout);
    for (const ChartWord& grade : layout.grades) {
        sheet.word(grade, static_cast<int>(Qt::AlignRight | Qt::AlignVCenter) | kSingle, ink.ink);
    }
    for (const ChartWord& cycle : layout.cycles) {
        sheet.word(cycle, kCentre, cycle.bold ? ink.ink : ink.ink2);
    }
    const int wrapped = static_cast<int>(Qt::AlignLeft | Qt::AlignVCenter) | static_cast<int>(Qt::TextWordWrap);
    sheet.word(layout.limitWord, wrapped | static_cast<int>(Qt::TextDontClip), ink.ink2);
    sheet.word(layout.none, wrapped, ink.ink2);
    paintGradeLines(sheet, layout);
    if (!layout.due.text.isEmpty()) {
        paintDashedBox(painter, layout.due.box, style);
        sheet.word(layout.due, kCentre, ink.ink);
    }
    painter.restore();
}

void paintPieceBar(QPainter& painter, const PieceBarState& state, const ChartStyle& style, double width) {
    const PieceBarLayout layout = layoutPieceBar(state, style, width);
    const ChartSheet sheet{painter, style};
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.fillRect(layout.bar, style.palette.rule);
    painter.fillRect(layout.bar.adjusted(style.px(1.0), style.px(1.0), -style.px(1.0), -style.px(1.0)),
                     style.palette.paper);
    painter.fillRect(layout.made, style.palette.tint);
    for (const BarPart& part : layout.parts) {
        paintPart(sheet, part);
    }
    // Brackets last: no neighbour's edge runs over theirs.
    for (const bool brackets : {false, true}) {
        for (const BarPart& part : layout.parts) {
            if ((part.kind == PieceKind::Bracket) == brackets) {
                paintPartEdges(sheet, part);
            }
        }
    }
    if (state.made > 0 && state.made < state.pieces) {
        painter.fillRect(QRectF(layout.made.right() - style.px(2.0), layout.bar.top() - style.px(4.0), style.px(4.0),
                                layout.bar.height() + style.px(10.0)),
                         style.palette.ink);
    }
    // What is not cured stands over what is.
    for (const bool cured : {true, false}) {
        for (const BarMark& mark : layout.marks) {
            if ((mark.mark == MarkKind::Cured) == cured) {
                paintReadMark(sheet, layout, mark);
            }
        }
    }
    QList<ChartWord> under = layout.figures;
    for (const BarPart& part : layout.parts) {
        if (part.under) {
            under.append(part.word);
        }
    }
    for (const ChartWord& word : under) { // on paper: a lead to a row below ends behind them
        painter.fillRect(word.box, style.palette.paper);
        sheet.word(word, kCentre, word.bold ? style.palette.ink : style.palette.ink2);
    }
    painter.restore();
}

void paintCrack(QPainter& painter, CrackKind kind, const QRectF& box, const ChartStyle& style) {
    const ChartSheet sheet{painter, style};
    const double inset = box.height() / 8.0;
    const QRectF film = box.adjusted(inset, inset, -inset, -inset);
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.fillRect(box, style.palette.tint);
    if (kind == CrackKind::Powders) {
        paintCrumbs(sheet, film);
    } else {
        painter.fillRect(film, style.palette.ink);
    }
    if (kind == CrackKind::Hairline) {
        paintCracks(sheet, film, 4, film.height() / 22.0);
    } else if (kind == CrackKind::Breaks) {
        paintCracks(sheet, film, 5, film.height() / 6.0);
    }
    painter.restore();
}

} // namespace holdfast::kiosk::screens
