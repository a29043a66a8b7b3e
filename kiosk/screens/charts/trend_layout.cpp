#include "kiosk/screens/charts/trend_layout.hpp"

#include "kiosk/screens/charts/trend_draft.hpp"

#include <algorithm>
#include <cmath>

namespace holdfast::kiosk::screens {
namespace {

constexpr double kLeastPlot = 60.0;
constexpr double kTargetMm = 15.0;
constexpr double kPxPerMm = 3.809; // of look.md's panel

double linesHeight(const TrendDraft& draft, const QString& text, double room) {
    return static_cast<double>(wrappedWords(text, draft.metrics(false), room).size()) * draft.px(kTrendLine);
}

double footHeight(const TrendDraft& draft) {
    const TrendChartState& state = draft.state;
    const double width = draft.layout.width;
    double height = 0.0;
    for (const TrendRule& rule : state.rules) {
        height += std::max(draft.px(32.0), linesHeight(draft, rule.text, width - draft.px(40.0)) + draft.px(4.0));
    }
    if (!state.note.isEmpty()) {
        height += draft.px(8.0) + linesHeight(draft, state.note, width);
    }
    return height;
}

double placeFoot(const TrendDraft& draft, double top) {
    TrendLayout& layout = draft.layout;
    for (const TrendRule& rule : draft.state.rules) {
        const double line = draft.px(kTrendLine);
        layout.numbers.append({.text = QString::number(rule.number),
                               .box = QRectF(draft.px(1.0), top + draft.px(1.0), draft.px(28.0), line - draft.px(2.0)),
                               .align = Qt::AlignHCenter,
                               .bold = true});
        const QRectF room(draft.px(40.0), top, layout.width - draft.px(40.0), line);
        top = std::max(putLines(draft, rule.text, {}, room), top + line) + draft.px(4.0);
    }
    if (!draft.state.note.isEmpty()) {
        top = putLines(draft, draft.state.note, {.second = true}, QRectF(0.0, top + draft.px(8.0), layout.width, 0.0));
    }
    return top;
}

double placeTitle(const TrendDraft& draft) {
    double y = 0.0;
    if (!draft.state.title.isEmpty()) {
        y = putLines(draft, draft.state.title, {.bold = true, .lead = true}, QRectF(0.0, y, draft.layout.width, 0.0));
    }
    if (!draft.state.detail.isEmpty()) {
        y = putLines(draft, draft.state.detail, {}, QRectF(0.0, y, draft.layout.width, 0.0));
    }
    return y;
}

double widest(const TrendDraft& draft, const QList<TrendTick>& ticks) {
    double width = 0.0;
    for (const TrendTick& tick : ticks) {
        width = std::max(width, draft.textWidth(tick.text, tick.bold));
    }
    return width;
}

/// Left and right edge: the figures of the axis and the names of the lines have their room.
void placeSides(const TrendDraft& draft) {
    TrendLayout& layout = draft.layout;
    double names = 0.0;
    for (const TrendLine& line : draft.state.lines) {
        names = std::max(names, draft.textWidth(line.name, line.stroke == TrendStroke::Proof));
    }
    const double figures = std::min(widest(draft, draft.state.y.ticks), layout.width * 0.25);
    const double left = figures > 0.0 ? figures + draft.px(8.0) : 0.0;
    const double right = names > 0.0 ? std::min(names + draft.px(8.0), layout.width * 0.3) : 0.0;
    layout.plot.setLeft(left);
    layout.plot.setRight(std::max(left + draft.px(kLeastPlot), layout.width - right));
}

/// Less the room that marks at the ends need, and words over bars.
void placeInner(const TrendDraft& draft) {
    TrendLayout& layout = draft.layout;
    const bool marked = !draft.state.points.isEmpty();
    const double side = marked ? draft.px(16.0) : 0.0;
    const bool said = std::any_of(draft.state.bars.begin(), draft.state.bars.end(),
                                  [](const TrendBar& bar) { return !bar.text.isEmpty(); });
    const double over = said ? std::min(draft.px(kTrendLine), layout.plot.height() / 3.0) : 0.0;
    layout.scale.inner = layout.plot.adjusted(side, over, -side, 0.0);
}

void placePlot(const TrendDraft& draft, double top, double height) {
    TrendLayout& layout = draft.layout;
    placeSides(draft);
    placeInner(draft);
    placeRanges(draft);
    placeLanes(draft, top);
    const bool underAxis = !draft.state.x.ticks.isEmpty() || !draft.state.x.name.isEmpty();
    const double below = (underAxis ? draft.px(36.0) : 0.0) + footHeight(draft);
    const double plotTop = layout.plot.top();
    const double free = height > 0.0 ? height - plotTop - below : draft.px(draft.state.plotHeight);
    layout.plot.setBottom(plotTop + std::max(draft.px(kLeastPlot), free));
    for (QLineF& event : layout.events) {
        event.setP2({event.x2(), layout.plot.bottom()});
    }
    placeInner(draft);
    placeTicks(draft);
    placeCurves(draft);
    placeNames(draft);
    placePoints(draft);
    placeBars(draft);
    placeNotes(draft);
    layout.height = placeFoot(draft, layout.plot.bottom() + (underAxis ? draft.px(36.0) : 0.0));
    layout.height = std::max(layout.height, layout.plot.bottom() + draft.px(2.0));
}

void sortTargets(TrendLayout& layout) {
    std::stable_sort(layout.targets.begin(), layout.targets.end(),
                     [](const TrendTarget& a, const TrendTarget& b) { return a.at.x() < b.at.x(); });
}

double distanceTo(const TrendTarget& target, const QPointF& place) {
    if (target.box.contains(place)) {
        return 0.0;
    }
    const double dx = std::max({0.0, target.box.left() - place.x(), place.x() - target.box.right()});
    const double dy = std::max({0.0, target.box.top() - place.y(), place.y() - target.box.bottom()});
    return std::hypot(dx, dy);
}

} // namespace

TrendLayout layoutTrendChart(const TrendChartState& state, const ChartStyle& style, const QSizeF& size) {
    TrendLayout layout;
    layout.width = std::max(size.width(), style.px(kLeastPlot));
    const TrendDraft draft{state, style, layout};
    const double top = placeTitle(draft);
    if (!state.rows.isEmpty()) {
        layout.height = placeFoot(draft, placeRows(draft, top));
        return layout;
    }
    placePlot(draft, top, size.height());
    sortTargets(layout);
    layout.leftOut = leftOut(state);
    return layout;
}

int targetAt(const TrendLayout& layout, const QPointF& place, double pxPerUnit) {
    const double reach = kTargetMm / 2.0 * kPxPerMm * pxPerUnit;
    int best = -1;
    double bestBox = reach;
    double bestMiddle = 0.0;
    for (int i = 0; i < layout.targets.size(); ++i) {
        const TrendTarget& target = layout.targets[i];
        const double box = distanceTo(target, place);
        const double middle = std::hypot(target.at.x() - place.x(), target.at.y() - place.y());
        if (box <= reach && (best < 0 || box < bestBox || (box == bestBox && middle < bestMiddle))) {
            best = i;
            bestBox = box;
            bestMiddle = middle;
        }
    }
    return best;
}

int targetAfter(const TrendLayout& layout, int target, int steps) {
    const int count = static_cast<int>(layout.targets.size());
    if (count == 0) {
        return -1;
    }
    if (target < 0) {
        return steps < 0 ? count - 1 : 0;
    }
    return std::clamp(target + steps, 0, count - 1);
}

int ruledAfter(const TrendLayout& layout, int target, int direction) {
    for (int i = target + direction; i >= 0 && i < layout.targets.size(); i += direction) {
        if (layout.targets[i].ruled) {
            return i;
        }
    }
    return target;
}

} // namespace holdfast::kiosk::screens
