#pragma once

#include "analytics/cure/verdict.hpp"
#include "kiosk/screens/parts/kinds.hpp"
#include "kiosk/wording/sentences.hpp"

#include <QString>

namespace holdfast::kiosk::screens {

[[nodiscard]] inline QString toQString(const std::string& text) {
    return QString::fromStdString(text);
}

/// A temperature as a number in the shown unit, for drawing only.
[[nodiscard]] inline double shown(analytics::Temperature t, const wording::Speech& speech) {
    return t.in(speech.figures.unit);
}
[[nodiscard]] inline double shown(analytics::TemperatureDifference d, const wording::Speech& speech) {
    return d.in(speech.figures.unit);
}

[[nodiscard]] MarkKind markOf(analytics::Word word) noexcept;

/// "Black" for "black"; other first letters stay.
[[nodiscard]] QString withLargeFirst(const std::string& text);

} // namespace holdfast::kiosk::screens
