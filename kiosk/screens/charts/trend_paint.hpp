#pragma once

#include "kiosk/screens/charts/trend_layout.hpp"

class QPainter;

/// One painter for screen, PNG, SVG and PDF. It makes no words and colours nothing but films.
namespace holdfast::kiosk::screens {

/// Everything as it stands in `layout`, from the painter's origin. Nothing is drawn outside of it.
void paintTrendChart(QPainter& painter, const TrendLayout& layout, const ChartStyle& style);

/// The target that has the focus: a box around it, and what it is in words beside it. `pressed` fills the box's frame.
void paintTrendFocus(QPainter& painter, const TrendLayout& layout, const ChartStyle& style, int target, bool pressed);

/// Black on white, films too: for printers that have no other ink.
[[nodiscard]] InkPalette blackPalette();

} // namespace holdfast::kiosk::screens
