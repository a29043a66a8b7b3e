#pragma once

#include "tests/screens/designed/gallery.hpp"

/// Pieces of the invented states that more than one page uses.
namespace holdfast::kiosk::screens::invented {

[[nodiscard]] QString q(const char* text);
[[nodiscard]] ActionState action(const char* id, const char* label, bool primary = false, const char* shortLabel = "");
[[nodiscard]] HeaderState header(const char* due, const char* dueHow, const char* holds, const char* clock);
[[nodiscard]] KioskState frame(const char* place, const HeaderState& head);

/// The run's window: cure 285, cloth 300, gel 255, g 5 °F; the aim is the middle of 290 to 295.
[[nodiscard]] HeatScaleState windowScale();
[[nodiscard]] QList<TracePoint> ride(double peakShown, double untilSeconds = 84.0);
[[nodiscard]] HeatScaleState judgedScale(double peakShown, MarkKind verdict, const char* text, const char* secondsOver,
                                         double from, double to);
[[nodiscard]] RefusalState unknownCode();

[[nodiscard]] std::vector<GalleryState> runStates();
[[nodiscard]] std::vector<GalleryState> sheetStates();
[[nodiscard]] std::vector<GalleryState> testStates();
[[nodiscard]] std::vector<GalleryState> trendStates();

} // namespace holdfast::kiosk::screens::invented
