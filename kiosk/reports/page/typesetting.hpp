#pragma once

#include "kiosk/reports/page/placed_page.hpp"

#include <QString>
#include <QStringList>
#include <string_view>

/// Lines of B612, measured. Needs a QGuiApplication with the kiosk's font rules.
namespace holdfast::kiosk::reports {

struct Type final {
    double size = 3; ///< em in mm
    bool bold = false;
};

/// Height of a line's box: room for the marks above and below of every writing that the fonts know.
[[nodiscard]] double lineHeight(const Type& type) noexcept;
[[nodiscard]] double advance(const QString& line, const Type& type);

/// One line of what people typed: control signs, line breaks and signs that turn the writing's direction become blanks
/// or go, blanks in a row become one, at most 400 signs are looked at. Broken UTF-8 becomes U+FFFD.
[[nodiscard]] QString tidy(std::string_view utf8);

/// At most `most` lines, broken at words, or within a word that is wider than a line; what does not fit is cut with
/// "…". An empty text has no lines.
[[nodiscard]] QStringList wrapped(const QString& text, double width, const Type& type, int most);
/// The line, cut with "…" if it is wider.
[[nodiscard]] QString fitted(const QString& line, double width, const Type& type);
/// The largest size up to `type.size` at which the line fits, not under `least`.
[[nodiscard]] double sizeToFit(const QString& line, double width, const Type& type, double least);

/// Sets the line at the upper left corner given.
void put(PlacedPage& page, double x, double y, const QString& line, const Type& type, bool onInk = false);
/// The same, ending at `right`.
void putRight(PlacedPage& page, double right, double y, const QString& line, const Type& type, bool onInk = false);
void putFrame(PlacedPage& page, const Box& box, double thickness);

} // namespace holdfast::kiosk::reports
