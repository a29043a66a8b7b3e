#pragma once

#include "kiosk/screens/parts/heat_scale_state.hpp"

#include <QPointF>
#include <QRectF>

namespace holdfast::kiosk::screens {

/// Full: with axis and words. Home: with the trace, no words. List: 112 × 56, a bar at the peak.
enum class HeatScaleForm { Full, Home, List };

/// Temperature and time to pixels. Temperature: the part below the knee is pressed into the bottom fifth (List: tenth),
/// above it is straight up to 8 °F over the highest line or peak. Monotone and finite for every finite input.
struct HeatScaleMapping {
    QRectF plot;
    double footShown = 0.0;
    double kneeShown = 0.0;
    double topShown = 0.0;
    double kneeY = 0.0;
    double spanSeconds = 1.0;

    /// Clamped to the plot; a non-finite temperature lies at the foot.
    [[nodiscard]] double y(double shown) const;
    /// Clamped to the plot; a non-finite time lies at the start.
    [[nodiscard]] double x(double seconds) const;
    [[nodiscard]] QPointF at(const TracePoint& point) const { return {x(point.seconds), y(point.atShown)}; }

    bool operator==(const HeatScaleMapping&) const = default;
};

/// The highest cure, the window's foot; nothing without cures.
[[nodiscard]] std::optional<CureLine> lowerLimit(const HeatScaleState& state);
/// The lower of the two ceilings; nothing without any.
[[nodiscard]] std::optional<CeilingLine> upperLimit(const HeatScaleState& state);

/// Knee at gel − 8 °F; without gel at cure − 40 °F; List always at cure − 18 °F. The knee lies above the foot even if
/// the room is hotter. Trace samples further than 100 °F over the highest line do not stretch the scale.
[[nodiscard]] HeatScaleMapping mapHeatScale(const HeatScaleState& state, const QRectF& plot, HeatScaleForm form);

} // namespace holdfast::kiosk::screens
