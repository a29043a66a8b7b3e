#include "kiosk/screens/charts/trend_draft.hpp"

#include <algorithm>
#include <cmath>
#include <map>

namespace holdfast::kiosk::screens {
namespace {

constexpr double kFullSpacing = 14.0; // px a point: marks of 16 may overlap by a third
constexpr double kSmallSpacing = 5.0;
constexpr int kMostMarked = 4096;    // beyond so many even marked points are thinned by column
constexpr double kOpenArm = 36.0;    // of a strip whose one end is open
constexpr double kBeyondSign = 10.0; // between the plot's edge and a point that lies beyond it

struct PlacedPoint {
    int index = 0; ///< in the state
    TrendMark mark;
};

double markWidth(TrendSize size) {
    switch (size) {
    case TrendSize::Full:
        return 20.0;
    case TrendSize::Small:
        return 12.5;
    case TrendSize::Dot:
        break;
    }
    return 4.0;
}

double markHeight(TrendSize size) {
    switch (size) {
    case TrendSize::Full:
        return 16.0;
    case TrendSize::Small:
        return 10.0;
    case TrendSize::Dot:
        break;
    }
    return 4.0;
}

TrendSize sizeFor(const TrendDraft& draft, qsizetype count) {
    const double spacing =
        draft.layout.plot.width() / draft.px(1.0) / static_cast<double>(std::max<qsizetype>(1, count));
    if (spacing >= kFullSpacing) {
        return TrendSize::Full;
    }
    return spacing >= kSmallSpacing ? TrendSize::Small : TrendSize::Dot;
}

void setBeam(const TrendDraft& draft, const TrendSpan& span, TrendMark& mark) {
    const TrendLayout& layout = draft.layout;
    const auto inside = [&](double y) { return std::clamp(y, layout.plot.top(), layout.plot.bottom()); };
    mark.beam = true;
    mark.openTop = span.openHigh;
    mark.openBottom = span.openLow;
    const double arm = draft.px(kOpenArm);
    const double high = span.openHigh ? layout.scale.y(span.low) - arm : layout.scale.y(span.high);
    const double low = span.openLow ? layout.scale.y(span.high) + arm : layout.scale.y(span.low);
    mark.top = inside(high);
    mark.bottom = inside(low);
    mark.at.setY((mark.top + mark.bottom) / 2.0);
}

TrendMark markOf(const TrendDraft& draft, const TrendPoint& point, TrendSize size) {
    const TrendLayout& layout = draft.layout;
    TrendMark mark{.at = QPointF(layout.scale.x(point.x), 0.0), .mark = point.mark, .size = size, .rule = point.rule};
    if (point.span) {
        setBeam(draft, *point.span, mark);
        return mark;
    }
    const double y = layout.scale.y(point.y + draft.state.jitter * jitterOf(point.group));
    mark.beyond = y < layout.plot.top() ? 1 : y > layout.plot.bottom() ? -1 : 0;
    const double edge = draft.px(markHeight(size) / 2.0 + kBeyondSign);
    mark.at.setY(mark.beyond == 0 ? y : mark.beyond > 0 ? layout.plot.top() + edge : layout.plot.bottom() - edge);
    return mark;
}

QList<PlacedPoint> allPlaced(const TrendDraft& draft, TrendSize size) {
    const TrendChartState& state = draft.state;
    const TrendScale& scale = draft.layout.scale;
    QList<PlacedPoint> placed;
    placed.reserve(state.points.size());
    for (qsizetype i = 0; i < state.points.size(); ++i) {
        const TrendPoint& point = state.points[i];
        if (isDrawn(point) && point.x >= scale.x0 && point.x <= scale.x1) {
            placed.append({static_cast<int>(i), markOf(draft, point, size)});
        }
    }
    return placed;
}

bool isFailure(MarkKind kind) {
    return kind == MarkKind::UnderCured || kind == MarkKind::Overheated;
}

/// What stays of one column of pixels: highest and lowest, of all and of the failures.
struct Column {
    int high = -1;
    int low = -1;
    int failedHigh = -1;
    int failedLow = -1;
    int count = 0;

    void add(int i, const QList<PlacedPoint>& placed) {
        const auto y = [&](int index) { return placed[index].mark.at.y(); };
        ++count;
        high = high < 0 || y(i) < y(high) ? i : high;
        low = low < 0 || y(i) > y(low) ? i : low;
        if (isFailure(placed[i].mark.mark)) {
            failedHigh = failedHigh < 0 || y(i) < y(failedHigh) ? i : failedHigh;
            failedLow = failedLow < 0 || y(i) > y(failedLow) ? i : failedLow;
        }
    }
};

QList<PlacedPoint> decimated(const TrendDraft& draft, const QList<PlacedPoint>& placed) {
    std::map<int, Column> columns;
    std::map<int, Column> marked;
    const double pixel = std::max(1.0, draft.px(1.0));
    const auto ruled =
        std::count_if(placed.begin(), placed.end(), [](const PlacedPoint& each) { return each.mark.rule > 0; });
    QList<bool> kept(placed.size(), false);
    for (int i = 0; i < placed.size(); ++i) {
        const int column = static_cast<int>(placed[i].mark.at.x() / pixel);
        columns[column].add(i, placed);
        if (placed[i].mark.rule > 0 && ruled <= kMostMarked) {
            kept[i] = true;
        } else if (placed[i].mark.rule > 0) {
            marked[column].add(i, placed);
        }
    }
    for (const auto* group : {&columns, &marked}) {
        for (const auto& [x, column] : *group) {
            for (const int index : {column.high, column.low, column.failedHigh, column.failedLow}) {
                if (index >= 0) {
                    kept[index] = true;
                }
            }
        }
    }
    for (const auto& [x, column] : columns) {
        if (column.count > 1 && draft.state.jitter <= 0.0) { // what is jittered is no series
            draft.layout.columns.append(
                {(x + 0.5) * pixel, placed[column.high].mark.at.y(), placed[column.low].mark.at.y()});
        }
    }
    QList<PlacedPoint> few;
    for (int i = 0; i < placed.size(); ++i) {
        if (kept[i]) {
            few.append(placed[i]);
        }
    }
    draft.layout.thinned += static_cast<int>(placed.size() - few.size());
    return few;
}

QRectF boxOf(const TrendDraft& draft, const TrendMark& mark) {
    const double wide = draft.px(markWidth(mark.size));
    if (mark.beam) {
        return {mark.at.x() - wide / 2.0, mark.top, wide, mark.bottom - mark.top};
    }
    const double high = draft.px(markHeight(mark.size));
    return {mark.at.x() - wide / 2.0, mark.at.y() - high / 2.0, wide, high};
}

/// One box for neighbours of one rule whose boxes would touch, with the rule's number over it if that stands free.
void placeRules(const TrendDraft& draft, const QList<PlacedPoint>& placed) {
    TrendLayout& layout = draft.layout;
    const double air = draft.px(5.0);
    int before = 0;
    for (const PlacedPoint& each : placed) {
        const int rule = each.mark.rule;
        const QRectF box = boxOf(draft, each.mark).adjusted(-air, -air, air, air).intersected(layout.plot);
        const bool joins = rule > 0 && rule == before && layout.ruleBoxes.last().right() > box.left();
        if (joins) {
            layout.ruleBoxes.last() = layout.ruleBoxes.last().united(box);
        } else if (rule > 0) {
            layout.ruleBoxes.append(box);
            layout.numbers.append(
                {.text = QString::number(rule), .box = {}, .align = Qt::AlignHCenter, .bold = true, .onPaper = true});
        }
        before = rule;
    }
}

void placeNumbers(const TrendDraft& draft) {
    TrendLayout& layout = draft.layout;
    const QList<TrendWord> wanted = layout.numbers;
    layout.numbers.clear();
    for (qsizetype i = 0; i < wanted.size(); ++i) {
        TrendWord number = wanted[i];
        const QRectF& box = layout.ruleBoxes[i];
        const double wide = draft.textWidth(number.text, true);
        const double high = draft.px(22.0);
        const double left = std::clamp(box.center().x() - wide / 2.0, 0.0, layout.width - wide);
        for (const double top : {box.top() - high, box.bottom()}) {
            number.box = QRectF(left, top, wide, high);
            if (top >= layout.plot.top() && top + high <= layout.plot.bottom() && draft.isFree(number.box)) {
                layout.numbers.append(number);
                break;
            }
        }
    }
}

} // namespace

void placePoints(const TrendDraft& draft) {
    TrendLayout& layout = draft.layout;
    const TrendSize size = sizeFor(draft, draft.state.points.size());
    QList<PlacedPoint> placed = allPlaced(draft, size);
    std::stable_sort(placed.begin(), placed.end(),
                     [](const PlacedPoint& a, const PlacedPoint& b) { return a.mark.at.x() < b.mark.at.x(); });
    if (size == TrendSize::Dot) {
        placed = decimated(draft, placed);
    }
    for (PlacedPoint& each : placed) {
        // A failure stays readable as a film among dots.
        if (size == TrendSize::Dot && (isFailure(each.mark.mark) || each.mark.rule > 0) && placed.size() < 4000) {
            each.mark.size = TrendSize::Small;
        }
    }
    placeRules(draft, placed);
    placeNumbers(draft);
    for (const PlacedPoint& each : placed) {
        layout.marks.append(each.mark);
        const TrendPoint& point = draft.state.points[each.index];
        if (!point.id.isEmpty()) {
            layout.targets.append({.id = point.id,
                                   .spoken = point.spoken,
                                   .at = each.mark.at,
                                   .box = boxOf(draft, each.mark),
                                   .ruled = each.mark.rule > 0});
        }
    }
}

} // namespace holdfast::kiosk::screens
