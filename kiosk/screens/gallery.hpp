#pragma once

#include "kiosk/screens/kiosk_model.hpp"

#include <QSize>
#include <QString>

#include <functional>
#include <vector>

namespace holdfast::kiosk::screens {

/// One designed state of one page. The texts are invented; DEMO stands in the head.
struct GalleryState {
    QString name; ///< file name without size and theme, "run-cured"
    std::function<void(KioskModel&)> fill;
};

/// Every page in every state it is designed for.
[[nodiscard]] std::vector<GalleryState> gallery();

/// A picture of every state at every size, light and dark: FOLDER/run-cured-1280x800-light.png. Needs a QGuiApplication
/// (offscreen will do). Returns the first thing that went wrong, empty if nothing did.
[[nodiscard]] QString renderGallery(const QString& folder, const std::vector<QSize>& sizes);

/// The sizes the kiosk is made for.
[[nodiscard]] std::vector<QSize> gallerySizes();

} // namespace holdfast::kiosk::screens
