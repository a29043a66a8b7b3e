#pragma once

#include "tests/screens/kiosk_view.hpp"

#include <string>

/// What may be wrong with a page as it is drawn, as sentences for whoever has to mend it.
namespace holdfast::tests {

[[nodiscard]] std::string describe(const QQuickItem& item);

/// Shows a text that is not empty.
[[nodiscard]] bool isText(const QQuickItem& item);

/// Where ink stands, in the text's own coordinates: its extent without the air of its line.
[[nodiscard]] QRectF inkOf(const QQuickItem& text);

/// Texts cut short, clipped, off the page or over one another. `scrolls`: what a scrolling part hides is no fault.
[[nodiscard]] QStringList textFaults(KioskView& view, bool scrolls);

/// Targets under 15 mm or under 3 mm apart, as far as they are in sight; a row half scrolled away may be smaller.
[[nodiscard]] QStringList touchFaults(const KioskView& view);

/// The state of the gallery with that name; the test fails if there is none.
[[nodiscard]] kiosk::screens::GalleryState stateNamed(const QString& name);

/// Whether the state's page has parts that scroll.
[[nodiscard]] bool scrolls(const kiosk::screens::GalleryState& state);

void requireNone(const QStringList& faults);

} // namespace holdfast::tests
