#pragma once

#include "kiosk/screens/parts/chart_states.hpp"
#include "kiosk/screens/parts/chart_style.hpp"

#include <QPointF>
#include <QRectF>

namespace holdfast::kiosk::screens {

inline constexpr double kGradeAxisWidth = 32.0; ///< room for 5 to 1 left of the plot, px at 1280×800

/// Cycles along the plot; 0 stands half a picture in from its left edge.
struct CycleAxis {
    double first = 0.0; ///< x of cycle 0, from the plot's left edge
    double step = 0.0;  ///< px a cycle
    int last = 0;

    [[nodiscard]] double x(int cycle) const { return first + step * cycle; }
};

/// `width` is the plot's. The axis reaches the last cycle asked for, graded or due, and leaves the names their room.
[[nodiscard]] CycleAxis cycleAxis(const GradeChartState& state, const ChartStyle& style, double width);

/// One line, its points in the order of the cycles.
struct GradeLine {
    PointShape shape = PointShape::Disc;
    QList<QPointF> points;
    ChartWord name;
    bool keyed = false; ///< its shape stands before its name: it ends before another, or they are many
};

struct GradeChartLayout {
    QRectF plot;
    CycleAxis axis;
    double pointScale = 1.0; ///< smaller where the cycles stand close
    std::optional<double> limitY;
    QList<double> gridY;     ///< grades over the limit
    double gridRight = 0.0;  ///< where the names begin
    QList<ChartWord> grades; ///< 5 to 1
    QList<ChartWord> cycles; ///< under the axis, thinned so that they stand apart
    QList<GradeLine> lines;
    ChartWord limitWord; ///< clear of lines and names where there is room
    ChartWord none;
    ChartWord due;       ///< in its dashed box
    double height = 0.0; ///< what it all takes

    /// The middle of a grade.
    [[nodiscard]] double y(double grade) const { return top + (5.0 - grade) * perGrade; }
    double top = 0.0; ///< of grade 5
    double perGrade = 0.0;
};

/// `width` holds the figures of the grades too.
[[nodiscard]] GradeChartLayout layoutGradeChart(const GradeChartState& state, const ChartStyle& style, double width);

} // namespace holdfast::kiosk::screens
