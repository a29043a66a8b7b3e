#pragma once

#include "kiosk/screens/charts/trend_layout.hpp"

#include <QFontMetricsF>
#include <QStringList>

/// The inside of trend_layout.hpp: one laying out, in the order of its files.
namespace holdfast::kiosk::screens {

inline constexpr double kTrendLine = 28.0; ///< a line of text
inline constexpr double kTrendLead = 36.0;
inline constexpr double kTrendAir = 12.0; ///< between words that stand beside one another

struct TrendDraft {
    const TrendChartState& state;
    const ChartStyle& style;
    TrendLayout& layout;

    [[nodiscard]] double px(double design) const { return style.px(design); }
    [[nodiscard]] QFontMetricsF metrics(bool bold, bool lead = false) const {
        return QFontMetricsF(style.font(bold, lead ? 28.0 : 21.0));
    }
    /// Two pixels of room: advances are rounded when they are drawn.
    [[nodiscard]] double textWidth(const QString& text, bool bold) const {
        return metrics(bold).horizontalAdvance(text) + 2.0;
    }
    /// Cut with "…" if it is wider than `room`.
    [[nodiscard]] QString fitted(const QString& text, bool bold, double room) const {
        return metrics(bold).elidedText(text, Qt::ElideRight, room);
    }
    [[nodiscard]] bool isFree(const QRectF& box) const {
        const auto touches = [&](const TrendWord& word) { return word.box.intersects(box); };
        return std::none_of(layout.words.begin(), layout.words.end(), touches) &&
               std::none_of(layout.numbers.begin(), layout.numbers.end(), touches);
    }
};

/// Lines as wide as `room`, broken at blanks; a word that is wider is cut.
[[nodiscard]] QStringList wrappedWords(const QString& text, const QFontMetricsF& metrics, double room);
/// Sets a text in lines; gives back where they end.
double putLines(const TrendDraft& draft, const QString& text, const TrendWord& like, const QRectF& room);

/// Cuts a segment at the box; false if none of it lies inside.
[[nodiscard]] bool cutSegment(QPointF& a, QPointF& b, const QRectF& box); // trend_curves.cpp

[[nodiscard]] bool isDrawn(const TrendPoint& point);
[[nodiscard]] bool isDrawn(const TrendBar& bar);
/// How far the points of a group are shifted, −0.5 to 0.5: the same at each drawing, neighbours far apart.
[[nodiscard]] double jitterOf(int group);
/// Half of a bar, in the unit of x.
[[nodiscard]] double halfBar(const TrendChartState& state);

void placeRanges(const TrendDraft& draft);                           // trend_ranges.cpp
void placeLanes(const TrendDraft& draft, double top);                // trend_lanes.cpp; plot.top is under them then
void placeTicks(const TrendDraft& draft);                            // trend_axes.cpp
void placeNames(const TrendDraft& draft);                            // trend_axes.cpp
void placeCurves(const TrendDraft& draft);                           // trend_curves.cpp
void placePoints(const TrendDraft& draft);                           // trend_points.cpp
void placeBars(const TrendDraft& draft);                             // trend_bars.cpp
void placeNotes(const TrendDraft& draft);                            // trend_notes.cpp
[[nodiscard]] double placeRows(const TrendDraft& draft, double top); // trend_rows.cpp

} // namespace holdfast::kiosk::screens
