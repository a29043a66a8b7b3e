#pragma once

#include "kiosk/screens/parts/heat_scale_mapping.hpp"

#include <QLineF>
#include <QList>

namespace holdfast::kiosk::screens {

/// A trace as few lines as its picture needs: of all samples in one pixel column the first, lowest, highest and last.
/// Non-finite samples draw nothing and part the line, as breaks do. One sample alone is a line of no length.
[[nodiscard]] QList<QLineF> traceLines(const QList<TracePoint>& trace, const HeatScaleMapping& mapping);

/// The last sample that can be drawn.
[[nodiscard]] std::optional<TracePoint> lastDrawn(const QList<TracePoint>& trace);

} // namespace holdfast::kiosk::screens
