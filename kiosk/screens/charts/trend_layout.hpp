#pragma once

#include "kiosk/screens/charts/trend_state.hpp"
#include "kiosk/screens/parts/chart_style.hpp"

#include <QLineF>
#include <QPolygonF>
#include <QSizeF>

/// Where everything of a chart stands. Pure: the painter only draws what stands here.
namespace holdfast::kiosk::screens {

struct TrendWord {
    QString text{};
    QRectF box{};
    Qt::Alignment align = Qt::AlignLeft;
    bool bold = false;
    bool lead = false;    ///< 28 instead of 21
    bool second = false;  ///< in second ink
    bool onPaper = false; ///< over lines: they are interrupted
};

/// Figures to pixels.
struct TrendScale {
    QRectF inner; ///< of the plot, less the room that marks at its ends need
    double x0 = 0.0;
    double x1 = 1.0;
    double y0 = 0.0;
    double y1 = 1.0;

    [[nodiscard]] double x(double figure) const { return inner.left() + (figure - x0) / (x1 - x0) * inner.width(); }
    [[nodiscard]] double y(double figure) const { return inner.bottom() - (figure - y0) / (y1 - y0) * inner.height(); }
};

enum class TrendSize { Full, Small, Dot }; ///< of points: 16 high, 10 high, 4 px

struct TrendMark {
    QPointF at;
    MarkKind mark = MarkKind::Blank;
    TrendSize size = TrendSize::Full;
    int rule = 0;
    int beyond = 0;      ///< 1: it stands over the upper edge, −1: under the lower one
    bool beam = false;   ///< a strip, from `top` to `bottom`
    double top = 0.0;    ///< its upper end
    double bottom = 0.0; ///< its lower end
    bool openTop = false;
    bool openBottom = false;
};

/// Many points in one column of pixels: from the highest to the lowest.
struct TrendColumn {
    double x = 0.0;
    double top = 0.0;
    double bottom = 0.0;
};

struct TrendCurve {
    TrendStroke stroke = TrendStroke::Centre;
    QList<QPolygonF> parts; ///< inside the plot
};

struct TrendBlock {
    QRectF box;
    QRectF missed{}; ///< over it, hatched; empty: none
    bool strong = false;
};

struct TrendBeam {
    double from = 0.0;
    double to = 0.0;
    double y = 0.0;
};

/// A share with its limits.
struct TrendShareBar {
    QRectF box;
    double low = 0.0;
    double high = 0.0; ///< not above `low`: no limits
    bool filled = false;
};

/// What can be pressed.
struct TrendTarget {
    QString id;
    QString spoken{};
    QPointF at{};
    QRectF box; ///< of a bar its column, of a row the row; of a point its mark
    bool ruled = false;
};

struct TrendLayout {
    double width = 0.0;
    double height = 0.0;
    QRectF plot;
    TrendScale scale;
    QList<TrendWord> words;
    std::optional<double> proofY;
    QList<double> gridY;
    QList<QPolygonF> bands;
    QList<QRectF> stretches;
    QList<TrendBeam> beams;
    QList<TrendCurve> curves;
    QList<QLineF> events;
    QList<QPolygonF> brackets;
    QList<TrendBlock> bars;
    QList<TrendColumn> columns;
    QList<TrendMark> marks;
    QList<QRectF> ruleBoxes;  ///< around points a rule speaks of; neighbours that would touch share one
    QList<TrendWord> numbers; ///< of rules
    QList<TrendShareBar> shares;
    QList<double> rulesY;       ///< between rows
    QList<TrendTarget> targets; ///< in the order of the keys: along the axis, rows downwards
    int leftOut = 0;            ///< points and bars that are no numbers
    int thinned = 0;            ///< points that stand in a column without being drawn themselves
    int unsaid = 0;             ///< words that found no room
};

/// A height of 0: as high as it needs. Else the plot takes what the words leave, 60 px at the least.
[[nodiscard]] TrendLayout layoutTrendChart(const TrendChartState& state, const ChartStyle& style, const QSizeF& size);

/// The target at that place, or the nearest within half of 15 mm; −1: none.
[[nodiscard]] int targetAt(const TrendLayout& layout, const QPointF& place, double pxPerUnit);

/// The target `steps` further along; from −1 the first or the last one.
[[nodiscard]] int targetAfter(const TrendLayout& layout, int target, int steps);
/// The next one forwards (1) or backwards (−1) that a rule speaks of; `target` if there is none.
[[nodiscard]] int ruledAfter(const TrendLayout& layout, int target, int direction);

} // namespace holdfast::kiosk::screens
