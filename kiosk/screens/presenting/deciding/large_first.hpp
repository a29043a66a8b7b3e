#pragma once

#include <QString>

#include <string>

namespace holdfast::kiosk::screens {

/// "Washed out" for "washed out": what stands at the beginning of a line.
[[nodiscard]] inline QString largeFirst(const std::string& text) {
    auto shown = QString::fromStdString(text);
    if (!shown.isEmpty()) {
        shown[0] = shown[0].toUpper();
    }
    return shown;
}

} // namespace holdfast::kiosk::screens
