#pragma once

#include "kiosk/screens/parts/grade_chart_layout.hpp"
#include "kiosk/screens/parts/piece_bar_layout.hpp"

class QPainter;

/// The drawings of tests and lots, for screens and paper alike. All ink: only a film mark has a colour.
namespace holdfast::kiosk::screens {

void paintGradeChart(QPainter& painter, const GradeChartState& state, const ChartStyle& style, double width);
void paintPieceBar(QPainter& painter, const PieceBarState& state, const ChartStyle& style, double width);

/// A pulled film on its cloth: whole, parted by fine lines, by gaps, or in crumbs.
void paintCrack(QPainter& painter, CrackKind kind, const QRectF& box, const ChartStyle& style);

/// What is due and not there yet.
void paintDashedBox(QPainter& painter, const QRectF& box, const ChartStyle& style);

} // namespace holdfast::kiosk::screens
