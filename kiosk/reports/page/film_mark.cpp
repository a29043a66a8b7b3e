#include "kiosk/reports/page/film_mark.hpp"

#include <QPainterPathStroker>
#include <QTransform>

#include <algorithm>
#include <initializer_list>

namespace holdfast::kiosk::reports {

namespace {

// Everything here counts in units of the mark's box, 20 wide and 16 high; the film lies at x 2–18, y 5–13.
constexpr double kStroke = 0.75;
constexpr QRectF kFilm{2, 5, 16, 8};

void addRect(QPainterPath& path, double x, double y, double width, double height) {
    path.addRect(QRectF(x, y, width, height));
}

QPainterPath line(std::initializer_list<QPointF> points) {
    QPainterPath path(*points.begin());
    for (const auto* point = points.begin() + 1; point != points.end(); ++point) {
        path.lineTo(*point);
    }
    QPainterPathStroker pen;
    pen.setWidth(kStroke);
    pen.setCapStyle(Qt::FlatCap);
    pen.setJoinStyle(Qt::MiterJoin);
    return pen.createStroke(path);
}

/// The upper half in outline, parted by two cracks that close downwards.
QPainterPath crackedFilm() {
    constexpr double top = 5 + kStroke / 2;
    QPainterPath upper;
    upper.setFillRule(Qt::WindingFill);
    upper.addPath(
        line({{7.3, 9.2}, {6.3, 7.4}, {6.95, 6.4}, {6.0, top}, {2 + kStroke / 2, top}, {2 + kStroke / 2, 9.2}}));
    upper.addPath(
        line({{7.4, 9.2}, {7.6, 7.2}, {8.6, 6.4}, {7.9, top}, {11.7, top}, {11.3, 6.6}, {12.3, 7.45}, {12.25, 9.2}}));
    upper.addPath(
        line({{12.35, 9.2}, {13.4, 7.4}, {12.95, 6.4}, {13.9, top}, {18 - kStroke / 2, top}, {18 - kStroke / 2, 9.2}}));
    QPainterPath film;
    film.addRect(kFilm);
    auto out = upper.intersected(film);
    addRect(out, 2, 9, 16, 4);
    out.setFillRule(Qt::WindingFill);
    return out;
}

QPainterPath bump(double x0, double peakX, double x1, double base, double peak) {
    QPainterPath path(QPointF(x0, base));
    path.cubicTo(x0 + (peakX - x0) * 0.42, base, x0 + (peakX - x0) * 0.45, peak, peakX, peak);
    path.cubicTo(x1 - (x1 - peakX) * 0.45, peak, x1 - (x1 - peakX) * 0.42, base, x1, base);
    path.closeSubpath();
    return path;
}

QPainterPath buckledFilm() {
    QPainterPath path;
    path.setFillRule(Qt::WindingFill);
    path.addRect(kFilm);
    path.addPath(bump(2, 6, 10, 5.05, 1));
    path.addPath(bump(10, 13.8, 18, 5.05, 2.2));
    return path;
}

/// What lies under the buckles is paper.
QPainterPath slivers() {
    auto path = bump(3.5, 6, 8.7, 5.55, 3.15);
    path.addPath(bump(11.5, 13.8, 16.4, 5.55, 3.95));
    return path;
}

/// Four dashes along, two up, every corner closed.
QPainterPath brokenFilm() {
    constexpr double gap = 1.2;
    constexpr double along = (16 - 3 * gap) / 4;
    constexpr double up = (8 - gap) / 2;
    QPainterPath path;
    path.setFillRule(Qt::WindingFill);
    for (int i = 0; i < 4; ++i) {
        addRect(path, 2 + i * (along + gap), 5, along, kStroke);
        addRect(path, 2 + i * (along + gap), 13 - kStroke, along, kStroke);
    }
    for (const double x : {2.0, 18 - kStroke}) {
        addRect(path, x, 5, kStroke, up);
        addRect(path, x, 13 - up, kStroke, up);
    }
    return path;
}

QPainterPath filmOf(FilmMark mark) {
    QPainterPath path;
    switch (mark) {
    case FilmMark::cured:
        path.addRect(kFilm);
        break;
    case FilmMark::underCured:
        return crackedFilm();
    case FilmMark::overheated:
        return buckledFilm();
    case FilmMark::notProven:
        return brokenFilm();
    case FilmMark::blank:
        break;
    }
    return path;
}

} // namespace

void putMark(PlacedPage& page, FilmMark mark, const Box& box) {
    const double unit = std::min(box.width / 20, box.height / 16);
    QTransform place;
    place.translate(box.x + (box.width - 20 * unit) / 2, box.y + (box.height - 16 * unit) / 2);
    place.scale(unit, unit);
    auto drawn = filmOf(mark);
    addRect(drawn, 0, 14, 20, 2);
    addRect(drawn, 0, 5, 1.4, 0.5);
    addRect(drawn, 18.6, 5, 1.4, 0.5);
    drawn.setFillRule(Qt::WindingFill);
    page.shapes.push_back({place.map(drawn), 1.0});
    if (mark == FilmMark::overheated) {
        page.shapes.push_back({place.map(slivers()), 0.0});
    }
}

} // namespace holdfast::kiosk::reports
