#include "kiosk/screens/charts/trend_draft.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace holdfast::kiosk::screens {
namespace {

constexpr double kFarOff = 1e7; // px

/// Runs of points that are numbers.
QList<QPolygonF> runsOf(const QList<QPointF>& points, const TrendScale& scale) {
    QList<QPolygonF> runs;
    bool open = false;
    for (const QPointF& point : points) {
        if (!std::isfinite(point.x()) || !std::isfinite(point.y())) {
            open = false;
            continue;
        }
        if (!open) {
            runs.append(QPolygonF{});
            open = true;
        }
        // Far off the plot the cutting would lose its digits.
        runs.last().append(
            {std::clamp(scale.x(point.x()), -kFarOff, kFarOff), std::clamp(scale.y(point.y()), -kFarOff, kFarOff)});
    }
    return runs;
}

/// Where columns of pixels hold many points: of each the first, lowest, highest and last, in their order.
QPolygonF fewer(const QPolygonF& line, double width) {
    if (static_cast<double>(line.size()) < 4.0 * width) {
        return line;
    }
    QPolygonF few;
    for (qsizetype from = 0; from < line.size();) {
        qsizetype to = from;
        qsizetype low = from;
        qsizetype high = from;
        while (to < line.size() && std::floor(line[to].x()) == std::floor(line[from].x())) {
            low = line[to].y() > line[low].y() ? to : low;
            high = line[to].y() < line[high].y() ? to : high;
            ++to;
        }
        QList<qsizetype> kept{from, low, high, to - 1};
        std::sort(kept.begin(), kept.end());
        kept.erase(std::unique(kept.begin(), kept.end()), kept.end());
        for (const qsizetype index : kept) {
            few.append(line[index]);
        }
        from = to;
    }
    return few;
}

/// Cut at the edges of the plot: not every paper cuts what is drawn on it.
void addInside(QList<QPolygonF>& parts, const QPolygonF& line, const QRectF& box) {
    QPolygonF part;
    for (qsizetype i = 1; i < line.size(); ++i) {
        QPointF a = line[i - 1];
        QPointF b = line[i];
        if (!cutSegment(a, b, box)) {
            continue;
        }
        if (part.isEmpty() || part.last() != a) {
            if (part.size() > 1) {
                parts.append(part);
            }
            part = QPolygonF{a};
        }
        part.append(b);
    }
    if (part.size() > 1) {
        parts.append(part);
    }
}

/// Each level from half way before to half way after it; neighbours of one level are one dash.
void addSteps(QList<QPolygonF>& parts, const QPolygonF& run, const QRectF& box, double lone) {
    QPolygonF level;
    for (qsizetype i = 0; i < run.size(); ++i) {
        const double before = i > 0 ? (run[i].x() - run[i - 1].x()) / 2.0 : lone;
        const double after = i + 1 < run.size() ? (run[i + 1].x() - run[i].x()) / 2.0 : lone;
        const double left = run[i].x() - (i > 0 ? before : std::min(after, lone));
        const double right = run[i].x() + (i + 1 < run.size() ? after : std::min(before, lone));
        if (!level.isEmpty() && std::abs(level.last().y() - run[i].y()) < 0.01) {
            level.last().setX(right);
            continue;
        }
        if (!level.isEmpty()) {
            addInside(parts, level, box);
        }
        level = QPolygonF{QPointF(left, run[i].y()), QPointF(right, run[i].y())};
    }
    addInside(parts, level, box);
}

TrendCurve curveOf(const TrendDraft& draft, const TrendLine& line) {
    const TrendLayout& layout = draft.layout;
    TrendCurve curve{.stroke = line.stroke, .parts = {}};
    if (line.points.size() == 1) {
        const double y = layout.scale.y(line.points.first().y());
        if (std::isfinite(y)) {
            addInside(curve.parts, QPolygonF{QPointF(layout.plot.left(), y), QPointF(layout.plot.right(), y)},
                      layout.plot);
        }
        return curve;
    }
    for (const QPolygonF& run : runsOf(line.points, layout.scale)) {
        const bool many = static_cast<double>(run.size()) > layout.plot.width();
        if (line.stepped && !many) {
            addSteps(curve.parts, run, layout.plot, draft.px(28.0));
        } else {
            addInside(curve.parts, fewer(run, layout.plot.width()), layout.plot);
        }
    }
    return curve;
}

void placeBand(const TrendDraft& draft, const TrendBand& band) {
    TrendLayout& layout = draft.layout;
    const QRectF& plot = layout.plot;
    QPolygonF upper;
    QPolygonF lower;
    for (const TrendLimits& limits : band.limits) {
        const double x = layout.scale.x(limits.x);
        if (std::isfinite(x) && !std::isnan(limits.low) && !std::isnan(limits.high)) {
            const double at = std::clamp(x, plot.left(), plot.right());
            upper.append({at, std::clamp(layout.scale.y(limits.high), plot.top(), plot.bottom())});
            lower.prepend({at, std::clamp(layout.scale.y(limits.low), plot.top(), plot.bottom())});
        }
    }
    if (upper.size() > 1) {
        layout.bands.append(upper + lower);
    }
}

void placeStretch(const TrendDraft& draft, const TrendStretch& stretch) {
    TrendLayout& layout = draft.layout;
    if (!std::isfinite(stretch.from) || !std::isfinite(stretch.to)) {
        return;
    }
    const double a = layout.scale.x(std::clamp(std::min(stretch.from, stretch.to), layout.scale.x0, layout.scale.x1));
    const double b = layout.scale.x(std::clamp(std::max(stretch.from, stretch.to), layout.scale.x0, layout.scale.x1));
    if (!stretch.y) {
        const double least = draft.px(4.0);
        const double from = b - a < least ? (a + b - least) / 2.0 : a;
        layout.stretches.append(QRectF(from, layout.plot.top(), std::max(least, b - a), layout.plot.height()));
        return;
    }
    const double y = layout.scale.y(*stretch.y);
    if (std::isfinite(y) && y >= layout.plot.top() && y <= layout.plot.bottom()) {
        layout.beams.append({a, b, y});
    }
}

} // namespace

// Y.-D. Liang and B. Barsky, "A new concept and method for line clipping", ACM
/// Transactions on Graphics 3, 1984.
bool cutSegment(QPointF& a, QPointF& b, const QRectF& box) {
    const QPointF d = b - a;
    double from = 0.0;
    double to = 1.0;
    const double p[] = {-d.x(), d.x(), -d.y(), d.y()};
    const double q[] = {a.x() - box.left(), box.right() - a.x(), a.y() - box.top(), box.bottom() - a.y()};
    for (int i = 0; i < 4; ++i) {
        if (p[i] == 0.0) {
            if (q[i] < 0.0) {
                return false;
            }
            continue;
        }
        const double r = q[i] / p[i];
        from = p[i] < 0.0 ? std::max(from, r) : from;
        to = p[i] > 0.0 ? std::min(to, r) : to;
    }
    if (from > to) {
        return false;
    }
    b = a + to * d;
    a = a + from * d;
    return true;
}

void placeCurves(const TrendDraft& draft) {
    TrendLayout& layout = draft.layout;
    for (const TrendBand& band : draft.state.bands) {
        placeBand(draft, band);
    }
    for (const TrendStretch& stretch : draft.state.stretches) {
        placeStretch(draft, stretch);
    }
    for (const TrendLine& line : draft.state.lines) {
        layout.curves.append(curveOf(draft, line));
        if (line.stroke == TrendStroke::Proof && !layout.curves.last().parts.isEmpty()) {
            layout.proofY = layout.curves.last().parts.first().first().y();
        }
    }
}

} // namespace holdfast::kiosk::screens
