#include "kiosk/screens/charts/trend_draft.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace holdfast::kiosk::screens {
namespace {

bool overlap(const QRectF& a, const QRectF& b, double airX, double airY) {
    return a.adjusted(-airX, -airY, airX, airY).intersects(b);
}

/// Every k-th and all bold ones, with the least k at which none touch: a row stays even where it is thinned.
QList<TrendWord> thinned(const QList<TrendWord>& words, double airX, double airY) {
    QList<TrendWord> bold;
    for (const TrendWord& word : words) {
        const bool free = std::none_of(
            bold.begin(), bold.end(), [&](const TrendWord& other) { return overlap(word.box, other.box, airX, airY); });
        if (word.bold && free) {
            bold.append(word);
        }
    }
    for (qsizetype step = 1; step <= words.size(); ++step) {
        QList<TrendWord> kept = bold;
        bool fits = true;
        for (qsizetype i = 0; i < words.size() && fits; i += step) {
            const auto touches = [&](const TrendWord& other) { return overlap(words[i].box, other.box, airX, airY); };
            if (words[i].bold || std::any_of(bold.begin(), bold.end(), touches)) {
                continue;
            }
            fits = std::none_of(kept.begin(), kept.end(), touches);
            kept.append(words[i]);
        }
        if (fits) {
            return kept;
        }
    }
    return bold;
}

QList<TrendWord> figuresUnder(const TrendDraft& draft) {
    const TrendLayout& layout = draft.layout;
    QList<TrendWord> words;
    for (const TrendTick& tick : draft.state.x.ticks) {
        if (!std::isfinite(tick.at) || tick.at < layout.scale.x0 || tick.at > layout.scale.x1) {
            continue;
        }
        const QString text = draft.fitted(tick.text, tick.bold, layout.width * 0.4);
        const double wide = draft.textWidth(text, tick.bold);
        const double left = std::clamp(layout.scale.x(tick.at) - wide / 2.0, 0.0, std::max(0.0, layout.width - wide));
        words.append({.text = text,
                      .box = QRectF(left, layout.plot.bottom() + draft.px(4.0), wide, draft.px(kTrendLine)),
                      .align = Qt::AlignHCenter,
                      .bold = tick.bold,
                      .second = !tick.bold});
    }
    return words;
}

QList<TrendWord> figuresBeside(const TrendDraft& draft) {
    TrendLayout& layout = draft.layout;
    QList<TrendWord> words;
    const double room = layout.plot.left() - draft.px(8.0);
    for (const TrendTick& tick : draft.state.y.ticks) {
        if (!std::isfinite(tick.at) || tick.at < layout.scale.y0 || tick.at > layout.scale.y1) {
            continue;
        }
        const double middle = layout.scale.y(tick.at);
        if (draft.state.bars.isEmpty()) {
            layout.gridY.append(middle);
        }
        const QString text = draft.fitted(tick.text, tick.bold, room);
        const double wide = std::min(room, draft.textWidth(text, tick.bold));
        words.append({.text = text,
                      .box = QRectF(room - wide, middle - draft.px(kTrendLine) / 2.0, wide, draft.px(kTrendLine)),
                      .align = Qt::AlignRight,
                      .bold = tick.bold});
    }
    return words;
}

/// Where a line ends at the right, in the plot.
double endOf(const TrendLine& line, const TrendLayout& layout) {
    for (auto point = line.points.rbegin(); point != line.points.rend(); ++point) {
        if (std::isfinite(point->y())) {
            return std::clamp(layout.scale.y(point->y()), layout.plot.top(), layout.plot.bottom());
        }
    }
    return std::numeric_limits<double>::quiet_NaN();
}

/// Moves names apart, downwards and then back from the lower edge.
void spread(QList<TrendWord>& names, double top, double bottom) {
    std::stable_sort(names.begin(), names.end(),
                     [](const TrendWord& a, const TrendWord& b) { return a.box.top() < b.box.top(); });
    double free = top;
    for (TrendWord& name : names) {
        name.box.moveTop(std::max(name.box.top(), free));
        free = name.box.bottom();
    }
    free = bottom;
    for (auto name = names.rbegin(); name != names.rend(); ++name) {
        name->box.moveBottom(std::min(name->box.bottom(), free));
        free = name->box.top();
    }
}

} // namespace

void placeTicks(const TrendDraft& draft) {
    TrendLayout& layout = draft.layout;
    layout.words.append(thinned(figuresBeside(draft), 0.0, -draft.px(4.0)));
    QList<TrendWord> under = thinned(figuresUnder(draft), draft.px(kTrendAir) / 2.0, 0.0);
    const QString& name = draft.state.x.name;
    if (!name.isEmpty()) {
        const QString text = draft.fitted(name, false, layout.width * 0.5);
        const double wide = draft.textWidth(text, false);
        const QRectF box(layout.width - wide, layout.plot.bottom() + draft.px(4.0), wide, draft.px(kTrendLine));
        under.removeIf([&](const TrendWord& word) { return overlap(word.box, box, draft.px(kTrendAir), 0.0); });
        layout.words.append({.text = text, .box = box, .align = Qt::AlignRight, .second = true});
    }
    layout.words.append(under);
}

void placeNames(const TrendDraft& draft) {
    TrendLayout& layout = draft.layout;
    const double half = draft.px(kTrendLine) / 2.0;
    const double left = layout.plot.right() + draft.px(8.0);
    QList<TrendWord> names;
    for (const TrendLine& line : draft.state.lines) {
        const double end = endOf(line, layout);
        const bool bold = line.stroke == TrendStroke::Proof;
        if (line.name.isEmpty() || !std::isfinite(end)) {
            continue;
        }
        const QString text = draft.fitted(line.name, bold, layout.width - left);
        names.append(
            {.text = text,
             .box = QRectF(left, end - half, std::min(layout.width - left, draft.textWidth(text, bold)), 2.0 * half),
             .bold = bold,
             .second = !bold});
    }
    const auto most = static_cast<qsizetype>((layout.plot.height() + 2.0 * half) / (2.0 * half));
    while (names.size() > most) {
        names.removeLast();
        ++layout.unsaid;
    }
    spread(names, layout.plot.top() - half, layout.plot.bottom() + half);
    layout.words.append(names);
}

} // namespace holdfast::kiosk::screens
