#include "kiosk/screens/charts/trend_draft.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace holdfast::kiosk::screens {
namespace {

bool crosses(const QPolygonF& line, const QRectF& box) {
    for (qsizetype i = 1; i < line.size(); ++i) {
        QPointF a = line[i - 1];
        QPointF b = line[i];
        if (cutSegment(a, b, box)) {
            return true;
        }
    }
    return false;
}

/// How much of a place is taken: by numbers most, by marks, by lines least.
int faultsOf(const TrendDraft& draft, const QRectF& box) {
    const TrendLayout& layout = draft.layout;
    int faults = 0;
    for (const TrendMark& mark : layout.marks) {
        const QRectF at = mark.beam ? QRectF(mark.at.x() - 2.0, mark.top, 4.0, mark.bottom - mark.top)
                                    : QRectF(mark.at.x() - 8.0, mark.at.y() - 6.0, 16.0, 12.0);
        faults += at.intersects(box) ? 2 : 0;
    }
    for (const TrendWord& number : layout.numbers) {
        faults += number.box.intersects(box) ? 4 : 0;
    }
    for (const TrendCurve& curve : layout.curves) {
        for (const QPolygonF& part : curve.parts) {
            faults += crosses(part, box) ? 1 : 0;
        }
    }
    for (const QLineF& event : layout.events) {
        faults += event.x1() > box.left() && event.x1() < box.right() ? 1 : 0;
    }
    return faults;
}

/// Left, right, over (2) or under it (3), from `first` on, where it covers the least; inside the plot and off all other
/// words.
void putBeside(const TrendDraft& draft, const QString& text, const QPointF& at, double gap, int first = 0) {
    TrendLayout& layout = draft.layout;
    const QString said = draft.fitted(text, false, layout.plot.width());
    const double wide = draft.textWidth(said, false);
    const double line = draft.px(kTrendLine);
    const double middle = std::clamp(at.x() - wide / 2.0, layout.plot.left(), layout.plot.right() - wide);
    const std::array<QRectF, 4> places{QRectF(at.x() - gap - wide, at.y() - line / 2.0, wide, line),
                                       QRectF(at.x() + gap, at.y() - line / 2.0, wide, line),
                                       QRectF(middle, at.y() - gap - line, wide, line),
                                       QRectF(middle, at.y() + gap, wide, line)};
    int best = -1;
    int least = 0;
    for (int i = first; i < 4; ++i) {
        const QRectF& box = places[static_cast<std::size_t>(i)];
        const bool inside = layout.plot.adjusted(-1.0, -1.0, 1.0, 1.0).contains(box);
        if (!inside || !draft.isFree(box)) {
            continue;
        }
        const int faults = faultsOf(draft, box);
        if (best < 0 || faults < least) {
            best = i;
            least = faults;
        }
    }
    if (best < 0) {
        ++layout.unsaid;
        return;
    }
    layout.words.append({.text = said, .box = places[static_cast<std::size_t>(best)], .onPaper = least > 0});
}

} // namespace

void placeNotes(const TrendDraft& draft) {
    TrendLayout& layout = draft.layout;
    for (const TrendStretch& stretch : draft.state.stretches) {
        if (stretch.y && !stretch.text.isEmpty() && std::isfinite(stretch.from) && std::isfinite(stretch.to) &&
            std::isfinite(*stretch.y)) {
            const double from = std::max(layout.plot.left(), layout.scale.x(std::min(stretch.from, stretch.to)));
            const double to = std::min(layout.plot.right(), layout.scale.x(std::max(stretch.from, stretch.to)));
            const double y = layout.scale.y(*stretch.y);
            putBeside(draft, stretch.text, {(from + to) / 2.0, y}, draft.px(8.0), 2);
        }
    }
    for (const TrendNote& note : draft.state.notes) {
        if (std::isfinite(note.x) && std::isfinite(note.y)) {
            const double y = std::clamp(layout.scale.y(note.y), layout.plot.top(), layout.plot.bottom());
            putBeside(draft, note.text, {layout.scale.x(note.x), y}, draft.px(16.0));
        }
    }
    if (layout.marks.isEmpty() && layout.bars.isEmpty() && !draft.state.none.isEmpty()) {
        const QRectF room = layout.plot.adjusted(draft.px(16.0), draft.px(12.0), -draft.px(16.0), 0.0);
        putLines(draft, draft.state.none, {.onPaper = true}, room);
    }
}

} // namespace holdfast::kiosk::screens
