#include "kiosk/screens/parts/mark_paint.hpp"

#include <QPainter>
#include <QPainterPath>
#include <QPolygonF>

#include <array>
#include <cmath>
#include <numbers>

namespace holdfast::kiosk::screens {
namespace {

constexpr double kPixelHeight = 16.0; // at this height the mark is set pixel by pixel

double strokeUnits(double height) {
    if (height < 32.0) {
        return 1.0;
    }
    return height < 96.0 ? 0.75 : 0.5;
}

/// Maps film units (16 wide, 8 high, buckles above at negative y) into a rectangle.
struct FilmMap {
    QRectF film;
    [[nodiscard]] QPointF at(double x, double y) const {
        return {film.left() + x / 16.0 * film.width(), film.top() + y / 8.0 * film.height()};
    }
};

void strokeInside(QPainter& painter, const QPolygonF& line, const QColor& colour, double width) {
    painter.setPen(QPen(colour, width, Qt::SolidLine, Qt::FlatCap, Qt::MiterJoin));
    painter.setBrush(Qt::NoBrush);
    painter.drawPolyline(line);
}

void paintCracked(QPainter& painter, const QRectF& film, const QColor& colour, double width) {
    painter.save();
    painter.setClipRect(film);
    const FilmMap map{film};
    const double h = width / 2.0;
    const double top = film.top() + h;
    const auto edge = [&](double x) { return QPointF(map.at(x, 0.0).x(), top); };
    const QPointF leftTop(film.left() + h, top);
    const QPointF rightTop(film.right() - h, top);
    strokeInside(painter,
                 QPolygonF{map.at(5.25, 4.3), map.at(4.3, 2.4), map.at(4.95, 1.45), edge(4.0), leftTop,
                           QPointF(leftTop.x(), map.at(0.0, 4.3).y())},
                 colour, width);
    strokeInside(painter,
                 QPolygonF{map.at(5.4, 4.3), map.at(5.6, 2.2), map.at(6.6, 1.4), edge(5.8), edge(9.7), map.at(9.3, 1.6),
                           map.at(10.3, 2.45), map.at(10.25, 4.3)},
                 colour, width);
    strokeInside(painter,
                 QPolygonF{map.at(10.35, 4.3), map.at(11.4, 2.4), map.at(10.95, 1.4), edge(11.9), rightTop,
                           QPointF(rightTop.x(), map.at(0.0, 4.3).y())},
                 colour, width);
    painter.restore();
    painter.fillRect(QRectF(map.at(0.0, 4.0), film.bottomRight()), colour);
}

/// A bump from (x0, base) over (peakX, peakY) to (x1, base), with a flat foot on both sides.
QPainterPath bump(const FilmMap& map, double x0, double peakX, double x1, double base, double peak) {
    QPainterPath path(map.at(x0, base));
    path.cubicTo(map.at(x0 + (peakX - x0) * 0.42, base), map.at(x0 + (peakX - x0) * 0.45, peak), map.at(peakX, peak));
    path.cubicTo(map.at(x1 - (x1 - peakX) * 0.45, peak), map.at(x1 - (x1 - peakX) * 0.42, base), map.at(x1, base));
    path.closeSubpath();
    return path;
}

/// `buckles` scales the bumps: 1 is 4 u over the line.
void paintBuckled(QPainter& painter, const QRectF& film, const InkPalette& palette, double buckles, bool slivers) {
    const FilmMap map{film};
    painter.setPen(Qt::NoPen);
    painter.fillRect(film, palette.overheated);
    painter.setBrush(palette.overheated);
    painter.drawPath(bump(map, 0.0, 4.0, 8.0, 0.05, -4.0 * buckles));
    painter.drawPath(bump(map, 8.0, 11.8, 16.0, 0.05, -2.8 * buckles));
    if (slivers) {
        painter.setBrush(palette.paper);
        painter.drawPath(bump(map, 1.5, 4.0, 6.7, 0.55, -1.85 * buckles));
        painter.drawPath(bump(map, 9.5, 11.8, 14.4, 0.55, -1.05 * buckles));
    }
}

/// Four dashes along, two up, every corner closed, 1.2 u of gap.
void paintBroken(QPainter& painter, const QRectF& film, const QColor& colour, double width, double unit) {
    const double gap = 1.2 * unit;
    const double along = (film.width() - 3.0 * gap) / 4.0;
    const double up = (film.height() - gap) / 2.0;
    for (int i = 0; i < 4; ++i) {
        const double x = film.left() + i * (along + gap);
        painter.fillRect(QRectF(x, film.top(), along, width), colour);
        painter.fillRect(QRectF(x, film.bottom() - width, along, width), colour);
    }
    for (const double x : {film.left(), film.right() - width}) {
        painter.fillRect(QRectF(x, film.top(), width, up), colour);
        painter.fillRect(QRectF(x, film.bottom() - up, width, up), colour);
    }
}

void paintWeave(QPainter& painter, const QRectF& cloth, const QColor& ink) {
    const double u = cloth.height() / 2.0;
    const double middle = cloth.top() + u;
    QPainterPath wave(QPointF(cloth.left(), middle));
    for (double x = 0.0; x <= cloth.width(); x += 1.0) {
        wave.lineTo(cloth.left() + x, middle - 0.75 * u * std::sin(x / (4.0 * u) * 2.0 * std::numbers::pi));
    }
    painter.save();
    painter.setClipRect(cloth.adjusted(0.0, -u, 0.0, u));
    painter.setPen(QPen(ink, 0.5 * u, Qt::SolidLine, Qt::FlatCap));
    painter.setBrush(Qt::NoBrush);
    painter.drawPath(wave);
    painter.setPen(Qt::NoPen);
    painter.setBrush(ink);
    for (double x = u; x < cloth.width(); x += 2.0 * u) {
        painter.drawEllipse(QPointF(cloth.left() + x, middle + 0.05 * u), 0.42 * u, 0.42 * u);
    }
    painter.restore();
}

void paintThreads(QPainter& painter, const QRectF& cloth, const QColor& ink) {
    const double u = cloth.height() / 2.0;
    const double line = std::round(0.7 * u);
    painter.fillRect(QRectF(cloth.left(), cloth.top(), cloth.width(), line), ink);
    const double y = std::round(cloth.bottom() - line);
    for (double x = u / 3.0; x < cloth.width() - 0.5 * u; x += 3.0 * u) {
        const double from = std::round(cloth.left() + x);
        painter.fillRect(QRectF(from, y, std::min(std::round(1.4 * u), cloth.right() - from), line), ink);
    }
}

void paintClosedSign(QPainter& painter, const QRectF& box, const InkPalette& palette) {
    const double u = box.height() / 16.0;
    const QRectF sign(box.left(), box.top() + 4.5 * u, box.width(), 9.0 * u);
    paintHatch(painter, sign.adjusted(u, u, -u, -u), palette.ink, 2.0 * u, 0.42 * u, true);
    painter.fillRect(QRectF(sign.left(), sign.top(), sign.width(), u), palette.ink);
    painter.fillRect(QRectF(sign.left(), sign.bottom() - u, sign.width(), u), palette.ink);
}

/// 16 px: rows of whole pixels, x from 0 to 19, as look.md asks.
void paintPixelFilm(QPainter& painter, MarkKind kind, QPointF origin, const InkPalette& palette) {
    const QColor colour = palette.of(kind);
    const auto run = [&](int x, int y, int width, int height = 1) {
        painter.fillRect(QRectF(origin.x() + x, origin.y() + y, width, height), colour);
    };
    if (kind == MarkKind::Cured) {
        run(2, 5, 16, 8);
    } else if (kind == MarkKind::UnderCured) {
        run(2, 9, 16, 4);
        run(2, 5, 4), run(8, 5, 4), run(14, 5, 4);
        run(2, 6, 1, 3), run(17, 6, 1, 3), run(6, 6, 1), run(13, 6, 1);
        run(7, 7, 1, 2), run(12, 7, 1, 2);
    } else if (kind == MarkKind::NotProven) {
        for (const int y : {5, 12}) {
            run(2, y, 3), run(6, y, 3), run(11, y, 3), run(15, y, 3);
        }
        for (const int x : {2, 17}) {
            run(x, 5, 1, 3), run(x, 10, 1, 3);
        }
    } else if (kind == MarkKind::Overheated) {
        paintBuckled(painter, QRectF(origin.x() + 2, origin.y() + 5, 16, 8), palette, 1.0, false);
    }
}

void paintFilm(QPainter& painter, MarkKind kind, const QRectF& film, const InkPalette& palette, double unit,
               double height) {
    const double width = strokeUnits(height) * unit;
    switch (kind) {
    case MarkKind::Cured:
        painter.fillRect(film, palette.cured);
        break;
    case MarkKind::UnderCured:
        paintCracked(painter, film, palette.underCured, width);
        break;
    case MarkKind::Overheated:
        paintBuckled(painter, film, palette, 1.0, height >= 32.0);
        break;
    case MarkKind::NotProven:
        paintBroken(painter, film, palette.ink, width, unit);
        break;
    case MarkKind::Blank:
    case MarkKind::Closed:
        break;
    }
}

void paintMarkGround(QPainter& painter, const QRectF& box, double height, const MarkStyle& style) {
    const double u = height / 16.0;
    const QColor& ink = style.palette.ink;
    if (!style.asPoint) {
        const double width = height == kPixelHeight ? 1.0 : std::max(1.0, 0.5 * u);
        const double tick = height == kPixelHeight ? 1.0 : 1.4 * u;
        painter.fillRect(QRectF(box.left(), box.top() + 5.0 * u, tick, width), ink);
        painter.fillRect(QRectF(box.right() - tick, box.top() + 5.0 * u, tick, width), ink);
    }
    const QRectF cloth(box.left(), box.top() + 14.0 * u, box.width(), 2.0 * u);
    if (height >= 96.0) {
        paintWeave(painter, cloth, ink);
    } else if (height >= 32.0) {
        paintThreads(painter, cloth, ink);
    } else {
        painter.fillRect(cloth, ink);
    }
}

} // namespace

void paintHatch(QPainter& painter, const QRectF& area, const QColor& colour, double step, double width, bool cross) {
    if (area.isEmpty() || step <= 0.0) {
        return;
    }
    QList<QLineF> lines;
    const double reach = area.height();
    const double from = std::floor((area.left() - reach) / step) * step;
    for (double x = from; x < area.right() + reach; x += step) {
        lines.append(QLineF(x, area.bottom(), x + reach, area.top()));
        if (cross) {
            lines.append(QLineF(x, area.top(), x + reach, area.bottom()));
        }
    }
    painter.save();
    painter.setClipRect(area, Qt::IntersectClip);
    painter.setPen(QPen(colour, width, Qt::SolidLine, Qt::FlatCap));
    painter.drawLines(lines);
    painter.restore();
}

void paintCloth(QPainter& painter, const QRectF& box, const InkPalette& palette) {
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    paintWeave(painter, box, palette.ink);
    painter.restore();
}

void paintVerdictMark(QPainter& painter, MarkKind kind, const QRectF& box, const MarkStyle& style) {
    const double height = std::min(box.height(), box.width() * 0.8);
    const double u = height / 16.0;
    const QRectF fitted(box.center().x() - 10.0 * u, box.center().y() - 8.0 * u, 20.0 * u, height);
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    if (style.asPoint) {
        painter.fillRect(QRectF(fitted.left() - u, fitted.top() + 4.0 * u, 22.0 * u, 13.0 * u), style.palette.paper);
    }
    if (kind == MarkKind::Closed) {
        paintClosedSign(painter, fitted, style.palette);
    } else {
        const QRectF film(fitted.left() + 2.0 * u, fitted.top() + 5.0 * u, 16.0 * u, 8.0 * u);
        if (height == kPixelHeight) {
            paintPixelFilm(painter, kind, fitted.topLeft(), style.palette);
        } else {
            paintFilm(painter, kind, film, style.palette, u, height);
        }
        paintMarkGround(painter, fitted, height, style);
    }
    painter.restore();
}

void paintCoreLayer(QPainter& painter, MarkKind kind, const QRectF& cell, const InkPalette& palette, double unit) {
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    const double line = 3.0 * unit;
    const auto frame = [&](double width) {
        painter.setPen(QPen(palette.ink, width, Qt::SolidLine, Qt::FlatCap, Qt::MiterJoin));
        painter.setBrush(Qt::NoBrush);
        const double h = width / 2.0;
        painter.drawRect(cell.adjusted(h, h, -h, -h));
    };
    switch (kind) {
    case MarkKind::Blank:
        painter.fillRect(cell, palette.clear);
        frame(2.0 * unit);
        break;
    case MarkKind::Closed:
        painter.fillRect(cell, palette.clear);
        paintHatch(painter, cell, palette.ink, 9.0 * unit, 1.75 * unit, true);
        frame(4.0 * unit);
        break;
    case MarkKind::Cured:
        painter.fillRect(cell, palette.cured);
        break;
    case MarkKind::UnderCured:
        paintCracked(painter, cell, palette.underCured, line);
        break;
    case MarkKind::Overheated: {
        const QRectF film = cell.adjusted(0.0, cell.height() / 3.0, 0.0, 0.0);
        paintBuckled(painter, film, palette, (cell.height() / 3.0) / (film.height() / 2.0), true);
        break;
    }
    case MarkKind::NotProven:
        paintBroken(painter, cell.adjusted(0.0, 2.0 * unit, 0.0, -2.0 * unit), palette.ink, line, 7.0 * unit);
        break;
    }
    painter.restore();
}

} // namespace holdfast::kiosk::screens
