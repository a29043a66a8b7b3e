#pragma once

#include "kiosk/screens/tour/tour.hpp"

#include <QSize>

namespace holdfast::kiosk::screens {

/// The sizes the kiosk is made for.
[[nodiscard]] std::vector<QSize> pictureSizes();

/// A picture of every stop of the tour at every size, light and dark, in English with °F and in Spanish with °C:
/// FOLDER/en/run-cured-1280x800-light.png. Needs a QGuiApplication (offscreen will do). Returns the first thing that
/// went wrong, empty if nothing did.
[[nodiscard]] QString drawTour(const QString& folder, const std::vector<QSize>& sizes);

} // namespace holdfast::kiosk::screens
