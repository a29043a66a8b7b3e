#include "kiosk/screens/charts/trend_draft.hpp"

#include <algorithm>
#include <cmath>

/// Words over the plot: brackets nearest to it, events over them, the axis' name on top. A word that finds no lane is
/// left out and counted; its tick stays.
namespace holdfast::kiosk::screens {
namespace {

constexpr int kMostLanes = 4;
constexpr double kBracketLane = 40.0; // a line of text over the bracket

struct PlacedLane {
    int lane = -1;
    double left = 0.0;
    double right = 0.0;
    double tick = 0.0;
    QString text{};
    QString id{};
};

bool within(const TrendScale& scale, double figure) {
    return std::isfinite(figure) && figure >= scale.x0 && figure <= scale.x1;
}

/// Whether a word in a lane stands free of the words beside it and of the ticks that go through.
bool stands(const PlacedLane& word, const QList<PlacedLane>& others, double air, bool across) {
    for (const PlacedLane& other : others) {
        if (other.lane == word.lane && word.left < other.right + air && other.left < word.right + air) {
            return false;
        }
        const bool crossedByIt =
            word.lane > other.lane && other.lane >= 0 && word.tick > other.left - 2.0 && word.tick < other.right + 2.0;
        const bool crosses = other.lane > word.lane && other.tick > word.left - 2.0 && other.tick < word.right + 2.0;
        if (!across && (crossedByIt || crosses)) {
            return false;
        }
    }
    return true;
}

/// From the last event backwards, so that no tick goes through the words of a later one.
QList<PlacedLane> eventWords(const TrendDraft& draft, const TrendScale& scale) {
    QList<TrendEvent> events = draft.state.events;
    std::stable_sort(events.begin(), events.end(), [](const auto& a, const auto& b) { return a.x > b.x; });
    QList<PlacedLane> placed;
    const double width = draft.layout.width;
    const double gap = draft.px(6.0);
    for (const TrendEvent& event : events) {
        if (!within(scale, event.x)) {
            continue;
        }
        const double tick = scale.x(event.x);
        const double room = std::max(tick, width - tick) - gap;
        const QString text = draft.fitted(event.text, false, room - 2.0);
        const double wide = std::min(room, draft.textWidth(text, false));
        PlacedLane found{.tick = tick, .text = text, .id = event.id};
        // Rather in a higher lane than across a tick; rather across one, which it interrupts, than not at all.
        for (int turn = 0; turn < 2 * kMostLanes && found.lane < 0 && !text.isEmpty(); ++turn) {
            for (const double left : {tick + gap, tick - gap - wide}) {
                const PlacedLane word{.lane = turn % kMostLanes,
                                      .left = left,
                                      .right = left + wide,
                                      .tick = tick,
                                      .text = text,
                                      .id = event.id};
                if (left >= -0.01 && left + wide <= width + 0.01 && found.lane < 0 &&
                    stands(word, placed, draft.px(kTrendAir), turn >= kMostLanes)) {
                    found = word;
                }
            }
        }
        placed.append(found);
    }
    return placed;
}

/// Brackets over points, and the words of what stands over the whole height.
QList<TrendBracket> allBrackets(const TrendChartState& state) {
    QList<TrendBracket> brackets = state.brackets;
    for (const TrendStretch& stretch : state.stretches) {
        if (!stretch.y && !stretch.text.isEmpty()) {
            brackets.append({.from = stretch.from, .to = stretch.to, .text = stretch.text});
        }
    }
    return brackets;
}

QList<PlacedLane> bracketWords(const TrendDraft& draft, const TrendScale& scale, const QList<TrendBracket>& brackets) {
    QList<PlacedLane> placed;
    const double width = draft.layout.width;
    for (const TrendBracket& bracket : brackets) {
        const bool figures = std::isfinite(bracket.from) && std::isfinite(bracket.to);
        const double from = figures ? std::clamp(std::min(bracket.from, bracket.to), scale.x0, scale.x1) : scale.x0;
        const double to = figures ? std::clamp(std::max(bracket.from, bracket.to), scale.x0, scale.x1) : scale.x0;
        const QString text = draft.fitted(bracket.text, true, width - 2.0);
        const double wide = std::min(width, draft.textWidth(text, true));
        const double end = std::clamp(std::max(scale.x(to) + draft.px(8.0), wide), wide, width);
        PlacedLane word{.text = text};
        for (int lane = 0; lane < kMostLanes && figures; ++lane) {
            const PlacedLane trial{.lane = lane,
                                   .left = std::min(end - wide, scale.x(from)),
                                   .right = std::max(end, scale.x(to)),
                                   .tick = end,
                                   .text = text};
            const bool free = std::none_of(placed.begin(), placed.end(), [&](const PlacedLane& other) {
                return other.lane == lane && trial.left < other.right + draft.px(kTrendAir) &&
                       other.left < trial.right + draft.px(kTrendAir);
            });
            if (free) {
                word = trial;
                break;
            }
        }
        placed.append(word);
    }
    return placed;
}

int lanesOf(const QList<PlacedLane>& words) {
    int lanes = 0;
    for (const PlacedLane& word : words) {
        lanes = std::max(lanes, word.lane + 1);
    }
    return lanes;
}

void putBracket(const TrendDraft& draft, const TrendBracket& bracket, const PlacedLane& word, double bottom) {
    TrendLayout& layout = draft.layout;
    const double line = bottom - draft.px(10.0);
    const double from =
        layout.scale.x(std::clamp(std::min(bracket.from, bracket.to), layout.scale.x0, layout.scale.x1));
    const double to = layout.scale.x(std::clamp(std::max(bracket.from, bracket.to), layout.scale.x0, layout.scale.x1));
    const double side = std::max(draft.px(8.0), draft.px(12.0) - (to - from) / 2.0);
    const double foot = bottom - draft.px(2.0);
    layout.brackets.append(QPolygonF{QPointF(from - side, foot), QPointF(from - side, line), QPointF(to + side, line),
                                     QPointF(to + side, foot)});
    const double wide = std::min(layout.width, draft.textWidth(word.text, true));
    layout.words.append({.text = word.text,
                         .box = QRectF(word.tick - wide, line - draft.px(kTrendLine), wide, draft.px(kTrendLine)),
                         .align = Qt::AlignRight,
                         .bold = true,
                         .onPaper = true});
}

} // namespace

void placeLanes(const TrendDraft& draft, double top) {
    TrendLayout& layout = draft.layout;
    const QList<TrendBracket> brackets = allBrackets(draft.state);
    const QList<PlacedLane> events = eventWords(draft, layout.scale);
    const QList<PlacedLane> rules = bracketWords(draft, layout.scale, brackets);
    const double line = draft.px(kTrendLine);
    double y = top + draft.px(top > 0.0 ? 8.0 : 2.0);
    if (!draft.state.y.name.isEmpty()) {
        const QString name = draft.fitted(draft.state.y.name, false, layout.width);
        layout.words.append({.text = name, .box = QRectF(0.0, y, draft.textWidth(name, false), line), .second = true});
        y += line;
    }
    const double overRules = y + lanesOf(events) * line;
    const double plotTop = overRules + lanesOf(rules) * draft.px(kBracketLane) + draft.px(8.0);
    for (const PlacedLane& word : events) {
        const double wordTop = overRules - (word.lane + 1) * line;
        layout.unsaid += word.lane < 0 ? 1 : 0;
        if (word.lane >= 0) {
            layout.words.append(
                {.text = word.text, .box = QRectF(word.left, wordTop, word.right - word.left, line), .onPaper = true});
        }
        if (word.lane >= 0 && !word.id.isEmpty()) {
            layout.targets.append({.id = word.id,
                                   .spoken = word.text,
                                   .at = QPointF(word.tick, wordTop + line / 2.0),
                                   .box = layout.words.last().box});
        }
        layout.events.append(QLineF(word.tick, word.lane < 0 ? plotTop : wordTop + draft.px(4.0), word.tick, plotTop));
    }
    for (qsizetype i = 0; i < rules.size(); ++i) {
        if (rules[i].lane < 0) {
            ++layout.unsaid;
            continue;
        }
        putBracket(draft, brackets[i], rules[i], plotTop - draft.px(4.0) - rules[i].lane * draft.px(kBracketLane));
    }
    layout.plot.setTop(plotTop);
}

} // namespace holdfast::kiosk::screens
