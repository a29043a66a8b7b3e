#pragma once

#include "analytics/cure/verdict.hpp"
#include "kiosk/screens/parts/kinds.hpp"
#include "kiosk/wording/sentences.hpp"

#include <QString>

#include <cstddef>
#include <cstdint>
#include <string>

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

/// As people name a run: its number; its title where it has none.
[[nodiscard]] inline std::string runName(std::int64_t number, const std::string& title) {
    return number > 0 ? std::to_string(number) : title;
}

/// Reasons said beside a verdict that is not kept yet.
inline constexpr std::size_t kMostPreviewReasons = 2;

/// "Black" for "black"; other first letters stay.
[[nodiscard]] QString withLargeFirst(const std::string& text);

} // namespace holdfast::kiosk::screens
