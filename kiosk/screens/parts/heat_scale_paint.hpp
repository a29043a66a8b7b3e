#pragma once

#include "kiosk/screens/parts/heat_scale_layout.hpp"

class QPainter;

/// The heat scale as ink on paper, for screens, pictures and PDF alike (look.md, "Heat scale"). All that is not proven
/// is inked over; the clear paper is the window.
namespace holdfast::kiosk::screens {

/// Everything, in one call.
void paintHeatScale(QPainter& painter, const HeatScaleState& state, const HeatScaleStyle& style, const QRectF& rect);

/// The part that stands still while a trace runs: grounds, textures, lines, axis, words.
void paintHeatScaleGround(QPainter& painter, const HeatScaleState& state, const HeatScaleStyle& style,
                          const HeatScaleLayout& layout);
/// The part that moves: trace, ring, interval, their figures.
void paintHeatScaleReading(QPainter& painter, const HeatScaleState& state, const HeatScaleStyle& style,
                           const HeatScaleLayout& layout);

} // namespace holdfast::kiosk::screens
