#pragma once

#include "kiosk/screens/parts/kinds.hpp"
#include "kiosk/screens/parts/palette.hpp"

#include <QRectF>

class QPainter;

/// The drawings of a film in section, for screens and paper alike. Geometry: look.md, "Verdict mark".
namespace holdfast::kiosk::screens {

struct MarkStyle {
    InkPalette palette;
    bool asPoint = false; ///< a chart's point: no ticks, a halo of paper
};

/// The whole mark, fitted into `box` at 20 : 16, centred. At a height of 16 it is drawn on whole pixels.
void paintVerdictMark(QPainter& painter, MarkKind kind, const QRectF& box, const MarkStyle& style);

/// One layer of the print's core: the film alone fills `cell`; buckles stay inside it. Blank is a planned layer, Closed
/// the layer that closes the window. `unit` is what 1 px at 1280×800 measures here.
void paintCoreLayer(QPainter& painter, MarkKind kind, const QRectF& cell, const InkPalette& palette, double unit);

/// A strip of weave, `box.height()` standing for 2 u.
void paintCloth(QPainter& painter, const QRectF& box, const InkPalette& palette);

/// Lines at 45° over `area`, in both directions if `cross`. `step` is measured along the edge.
void paintHatch(QPainter& painter, const QRectF& area, const QColor& colour, double step, double width, bool cross);

} // namespace holdfast::kiosk::screens
