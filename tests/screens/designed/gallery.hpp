#pragma once

#include "kiosk/screens/kiosk_model.hpp"

#include <QSize>
#include <QString>

#include <functional>
#include <vector>

namespace holdfast::kiosk::screens {

/// One designed state of one page, with invented texts: what the drawing must hold, whatever the presenters say today.
struct GalleryState {
    QString name; ///< file name without size and theme, "run-cured"
    std::function<void(KioskModel&)> fill;
};

/// Every page in every state it is designed for.
[[nodiscard]] std::vector<GalleryState> gallery();

/// The sizes the kiosk is made for.
[[nodiscard]] std::vector<QSize> gallerySizes();

} // namespace holdfast::kiosk::screens
