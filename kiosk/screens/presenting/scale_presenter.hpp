#pragma once

#include "analytics/cure/verdict.hpp"
#include "analytics/cure/window.hpp"
#include "drivers/link/link_state.hpp"
#include "kiosk/records/reading_records.hpp"
#include "kiosk/screens/parts/heat_scale_state.hpp"
#include "kiosk/shop/proving/recording.hpp"
#include "kiosk/wording/sentences.hpp"

#include <vector>

namespace holdfast::kiosk::screens {

/// The run's own heat scale without a reading: limits, guards, aim, gel, room. `instrument` names whose guard the dots
/// show; empty: no instrument, no dots.
[[nodiscard]] HeatScaleState scaleOf(const analytics::RunPlan& plan, const analytics::RunWindow& window,
                                     const std::string& instrument, const wording::Speech& speech);

/// Draws a ride: lines only where samples are joined; with a verdict the ring at its sustained peak and the seconds
/// over the window's foot.
void drawRide(HeatScaleState& scale, const std::vector<shop::DrawnSample>& drawn, const analytics::Verdict* verdict,
              const analytics::RunWindow& window, TraceEnd end, const wording::Speech& speech);

/// The limits of a window and a kept reading's peak or interval, for the small pictures in lists.
[[nodiscard]] HeatScaleState smallScale(const records::ReadingTaken& reading, const wording::Speech& speech);

/// Draws a kept reading that is no trace: a strip's interval, a spot as the interval its peak lies in, a gun's shot as
/// a bar that says "at most". Needs its verdict.
void drawShown(HeatScaleState& scale, const records::ReadingTaken& reading, const wording::Speech& speech);

/// Draws a strip's interval; an end that is absent is open.
void drawStrip(HeatScaleState& scale, std::optional<analytics::Temperature> low,
               std::optional<analytics::Temperature> high, analytics::Word word, const wording::Speech& speech);

} // namespace holdfast::kiosk::screens
