#include "kiosk/screens/parts/grade_chart_layout.hpp"

#include <QFontMetricsF>
#include <QLineF>
#include <QMap>

#include <algorithm>
#include <array>
#include <cmath>

namespace holdfast::kiosk::screens {
namespace {

constexpr double kGradeLine = 28.0; // a line of text
constexpr double kEdge = 40.0;      // half a picture, so that pictures stand under their cycles
constexpr double kNameGap = 20.0;   // from the last point to the names
constexpr double kWidestStep = 160.0;
constexpr double kFarthest = 50; // cycles, job.md "How prints are tested"
constexpr qsizetype kMostLines = 4;

bool isGrade(double grade) {
    return grade >= 1.0 && grade <= 5.0 && std::abs(grade * 2.0 - std::round(grade * 2.0)) < 1e-9;
}

/// By cycle; of two at a cycle the later one.
QMap<int, double> pointsOf(const GradeSeries& series) {
    QMap<int, double> points;
    for (const GradePoint& point : series.points) {
        if (isGrade(point.grade) && point.cycle >= 0 && point.cycle <= kFarthest) {
            points.insert(point.cycle, point.grade);
        }
    }
    return points;
}

QList<GradeSeries> drawn(const GradeChartState& state) {
    QList<GradeSeries> series;
    for (const GradeSeries& each : state.series) {
        if (series.size() < kMostLines && !pointsOf(each).isEmpty()) {
            series.append(each);
        }
    }
    return series;
}

int lastGraded(const GradeChartState& state) {
    int last = 0;
    for (const GradeSeries& series : drawn(state)) {
        last = std::max(last, pointsOf(series).lastKey());
    }
    return last;
}

bool isKeyed(const GradeChartState& state, const GradeSeries& series) {
    return drawn(state).size() > 2 || pointsOf(series).lastKey() < lastGraded(state);
}

double widestName(const GradeChartState& state, const ChartStyle& style) {
    const QFontMetricsF metrics(style.font(true));
    double widest = 0.0;
    for (const GradeSeries& series : drawn(state)) {
        const double key = isKeyed(state, series) ? style.px(28.0) : 0.0;
        widest = std::max(widest, metrics.horizontalAdvance(series.name) + key);
    }
    return widest;
}

/// Everything of one laying out.
struct GradeDraft {
    const GradeChartState& state;
    const ChartStyle& style;
    GradeChartLayout& layout;

    [[nodiscard]] double px(double design) const { return style.px(design); }
    [[nodiscard]] double textWidth(const QString& text, bool bold) const {
        return QFontMetricsF(style.font(bold)).horizontalAdvance(text);
    }
    [[nodiscard]] double x(int cycle) const { return layout.plot.left() + layout.axis.x(cycle); }
};

void placeScale(const GradeDraft& draft) {
    GradeChartLayout& layout = draft.layout;
    for (int grade = 5; grade >= 1; --grade) {
        const double middle = layout.y(grade);
        layout.grades.append({QString::number(grade),
                              QRectF(0.0, middle - draft.px(kGradeLine / 2.0), draft.px(18.0), draft.px(kGradeLine)),
                              false});
        if (!draft.state.limit || grade > *draft.state.limit) {
            layout.gridY.append(middle);
        }
    }
    if (draft.state.limit && *draft.state.limit >= 1.0 && *draft.state.limit <= 5.0) {
        layout.limitY = layout.y(*draft.state.limit);
    }
}

/// Of the cycles a 1-2-5 row that leaves each figure its room; the due one always, its neighbours only beside it.
void placeCycles(const GradeDraft& draft) {
    GradeChartLayout& layout = draft.layout;
    const double y = layout.plot.bottom() + draft.px(4.0);
    const auto word = [&](int cycle, bool bold) {
        const QString text = cycle == 0 ? draft.state.newWord : QString::number(cycle);
        const double wide = draft.textWidth(text, bold);
        return ChartWord{text, QRectF(draft.x(cycle) - wide / 2.0, y, wide, draft.px(kGradeLine)), bold};
    };
    const double need = draft.textWidth(QString::number(layout.axis.last), true) + draft.px(14.0);
    int every = 50;
    for (const int candidate : {25, 10, 5, 2, 1}) {
        every = candidate * layout.axis.step >= need ? candidate : every;
    }
    QList<ChartWord> first;
    if (draft.state.dueCycle && *draft.state.dueCycle >= 0 && *draft.state.dueCycle <= layout.axis.last) {
        first.append(word(*draft.state.dueCycle, true));
    }
    for (int cycle = 0; cycle <= layout.axis.last; cycle += every) {
        const ChartWord made = word(cycle, false);
        const QRectF air = made.box.adjusted(-draft.px(10.0), 0.0, draft.px(10.0), 0.0);
        const bool free =
            std::none_of(first.begin(), first.end(), [&](const ChartWord& other) { return other.box.intersects(air); });
        if (free) {
            first.append(made);
        }
    }
    layout.cycles = first;
}

void placeLines(const GradeDraft& draft) {
    GradeChartLayout& layout = draft.layout;
    const int last = lastGraded(draft.state);
    for (const GradeSeries& series : drawn(draft.state)) {
        GradeLine line{.shape = series.shape, .points = {}, .name = {series.name, {}, true}};
        const QMap<int, double> points = pointsOf(series);
        for (auto point = points.begin(); point != points.end(); ++point) {
            line.points.append({draft.x(point.key()), layout.y(point.value())});
        }
        line.keyed = isKeyed(draft.state, series);
        layout.lines.append(line);
    }
    layout.gridRight = layout.lines.isEmpty() ? layout.plot.right() : draft.x(last) + draft.px(kNameGap - 8.0);
}

/// Middles of the names from the top downwards, each at its own line's end as near as the others and the limit let it.
QList<double> spread(QList<double> wished, double line, double least, double most) {
    for (int round = 0; round < 8; ++round) {
        for (qsizetype i = 1; i < wished.size(); ++i) {
            const double lacking = line - (wished[i] - wished[i - 1]);
            if (lacking > 0.0) {
                wished[i - 1] -= lacking / 2.0;
                wished[i] += lacking / 2.0;
            }
        }
        for (double& each : wished) {
            each = std::clamp(each, least, most);
        }
    }
    for (qsizetype i = 1; i < wished.size(); ++i) {
        wished[i] = std::max(wished[i], wished[i - 1] + line);
    }
    for (qsizetype i = wished.size() - 1; i > 0; --i) {
        const double over = wished[i] - most;
        wished[i] -= std::max(0.0, over);
        wished[i - 1] = std::min(wished[i - 1], wished[i] - line);
    }
    return wished;
}

/// Names of lines that end over the limit stay over it, the others under it, as long as there is room for them.
QList<double> nameMiddles(const GradeDraft& draft, const QList<double>& ends) {
    const double line = draft.px(kGradeLine);
    const double top = line / 2.0;
    const double bottom = draft.layout.plot.bottom() - line / 2.0;
    if (!draft.layout.limitY) {
        return spread(ends, line, top, bottom);
    }
    const double limit = *draft.layout.limitY;
    const double air = line / 2.0 + draft.px(3.0);
    QList<double> over;
    QList<double> under;
    for (const double end : ends) {
        (end < limit - 0.5 ? over : under).append(end);
    }
    const bool fits = static_cast<double>(over.size()) * line <= limit - air - top + line &&
                      static_cast<double>(under.size()) * line <= bottom - limit - air + line;
    if (!fits) {
        return spread(ends, line, top, bottom);
    }
    return spread(over, line, top, limit - air) + spread(under, line, limit + air, bottom);
}

void placeNames(const GradeDraft& draft) {
    GradeChartLayout& layout = draft.layout;
    QList<qsizetype> order;
    for (qsizetype i = 0; i < layout.lines.size(); ++i) {
        order.append(i);
    }
    const auto end = [&](qsizetype i) { return layout.lines[i].points.last().y(); };
    std::stable_sort(order.begin(), order.end(), [&](qsizetype a, qsizetype b) { return end(a) < end(b); });
    QList<double> ends;
    for (const qsizetype i : order) {
        ends.append(end(i));
    }
    const QList<double> middles = nameMiddles(draft, ends);
    const double left = draft.x(lastGraded(draft.state)) + draft.px(kNameGap);
    for (qsizetype i = 0; i < order.size(); ++i) {
        GradeLine& line = layout.lines[order[i]];
        const double x = left + (line.keyed ? draft.px(28.0) : 0.0);
        line.name.box = QRectF(x, middles[i] - draft.px(kGradeLine / 2.0), draft.textWidth(line.name.text, true),
                               draft.px(kGradeLine));
    }
}

bool boxCrossed(const QRectF& box, QPointF a, QPointF b) {
    if (box.contains(a) || box.contains(b)) {
        return true;
    }
    const QLineF line(a, b);
    const std::array<QLineF, 4> sides{QLineF(box.topLeft(), box.topRight()), QLineF(box.topRight(), box.bottomRight()),
                                      QLineF(box.bottomRight(), box.bottomLeft()),
                                      QLineF(box.bottomLeft(), box.topLeft())};
    return std::any_of(sides.begin(), sides.end(), [&](const QLineF& side) {
        return line.intersects(side, nullptr) == QLineF::BoundedIntersection;
    });
}

bool isFree(const GradeDraft& draft, const QRectF& box) {
    for (const GradeLine& line : draft.layout.lines) {
        const QRectF wide = box.adjusted(-draft.px(12.0), -draft.px(10.0), draft.px(12.0), draft.px(10.0));
        if (line.name.box.intersects(box) || wide.contains(line.points.first())) {
            return false;
        }
        for (qsizetype i = 1; i < line.points.size(); ++i) {
            if (boxCrossed(wide, line.points[i - 1], line.points[i])) {
                return false;
            }
        }
    }
    return true;
}

QSizeF wordSize(const GradeDraft& draft, double room) {
    const QRectF asked(0.0, 0.0, room, 10.0 * draft.px(kGradeLine));
    const QRectF needs = QFontMetricsF(draft.style.font(false))
                             .boundingRect(asked, Qt::AlignLeft | Qt::TextWordWrap, draft.state.limitWord);
    const double lines = std::max(1.0, std::round(needs.height() / draft.px(kGradeLine)));
    return {std::min(room, needs.width() + 2.0), lines * draft.px(kGradeLine)};
}

/// A place in the tint clear of lines and names; a null box: there is none.
QRectF freeInTint(const GradeDraft& draft, const QRectF& tint, double room) {
    const QSizeF size = wordSize(draft, room);
    const double left = tint.left() + draft.px(16.0);
    const double right = tint.right() - draft.px(16.0) - size.width();
    const double high = tint.top() + draft.px(6.0);
    const double low = tint.bottom() - draft.px(2.0) - size.height();
    if (low < high) {
        return {};
    }
    for (const double y : {high, (high + low) / 2.0, low}) {
        for (const double x : {left, (left + right) / 2.0, right}) {
            if (isFree(draft, QRectF(QPointF(x, y), size))) {
                return {QPointF(x, y), size};
            }
        }
    }
    return {};
}

/// In the tint, in one line or wrapped before the names; under the cycles where there is no room.
void placeLimitWord(const GradeDraft& draft) {
    GradeChartLayout& layout = draft.layout;
    if (!layout.limitY || draft.state.limitWord.isEmpty()) {
        return;
    }
    const QRectF tint(layout.plot.left(), *layout.limitY, layout.plot.width(), layout.plot.bottom() - *layout.limitY);
    const double whole = tint.width() - draft.px(32.0);
    const double beforeNames = std::max(whole / 3.0, layout.gridRight - tint.left() - draft.px(32.0));
    QRectF box = freeInTint(draft, tint, whole);
    if (box.isNull()) {
        box = freeInTint(draft, tint, std::min(whole, beforeNames));
    }
    if (box.isNull()) {
        box = QRectF(QPointF(tint.left(), layout.height), wordSize(draft, tint.width()));
        layout.height = box.bottom() + draft.px(4.0);
    }
    layout.limitWord = {draft.state.limitWord, box, false};
}

void placeDue(const GradeDraft& draft) {
    GradeChartLayout& layout = draft.layout;
    if (!draft.state.dueCycle || draft.state.dueWord.isEmpty()) {
        return;
    }
    const double wide = std::max(draft.px(80.0), draft.textWidth(draft.state.dueWord, true) + draft.px(24.0));
    const double high = draft.px(40.0);
    const double middle = draft.x(std::clamp(*draft.state.dueCycle, 0, layout.axis.last));
    const double x = std::clamp(middle - wide / 2.0, 0.0, std::max(0.0, layout.plot.right() - wide));
    layout.due = {draft.state.dueWord, QRectF(x, layout.height + draft.px(4.0), wide, high), true};
    layout.height = layout.due.box.bottom() + draft.px(6.0);
}

} // namespace

CycleAxis cycleAxis(const GradeChartState& state, const ChartStyle& style, double width) {
    const int graded = lastGraded(state);
    const int asked = std::max({state.lastCycle, graded, state.dueCycle.value_or(0)});
    CycleAxis axis{.first = style.px(kEdge), .step = 0.0, .last = std::clamp(asked, 0, static_cast<int>(kFarthest))};
    const double ends = (width - style.px(2.0 * kEdge + 22.0)) / std::max(1, axis.last);
    const double names =
        graded == 0 ? ends : (width - style.px(kEdge + kNameGap + 4.0) - widestName(state, style)) / graded;
    axis.step = std::max(1.0, std::min({ends, names, style.px(kWidestStep)}));
    return axis;
}

GradeChartLayout layoutGradeChart(const GradeChartState& state, const ChartStyle& style, double width) {
    GradeChartLayout layout;
    const double left = style.px(kGradeAxisWidth);
    layout.top = style.px(20.0);
    layout.perGrade = style.px(36.0);
    layout.plot =
        QRectF(left, style.px(4.0), std::max(1.0, width - left), layout.top + 4.0 * layout.perGrade + style.px(6.0));
    layout.axis = cycleAxis(state, style, layout.plot.width());
    layout.pointScale = std::clamp(layout.axis.step / style.px(24.0), 0.5, 1.0);
    const GradeDraft draft{state, style, layout};
    placeScale(draft);
    placeCycles(draft);
    placeLines(draft);
    placeNames(draft);
    layout.height = layout.plot.bottom() + style.px(4.0 + kGradeLine);
    placeDue(draft);
    placeLimitWord(draft);
    if (layout.lines.isEmpty() && !state.noneWord.isEmpty()) {
        layout.none = {state.noneWord,
                       QRectF(layout.plot.left() + style.px(16.0), layout.y(4.5) - style.px(kGradeLine),
                              layout.plot.width() - style.px(32.0), style.px(2.0 * kGradeLine)),
                       false};
    }
    return layout;
}

} // namespace holdfast::kiosk::screens
