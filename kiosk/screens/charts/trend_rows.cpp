#include "kiosk/screens/charts/trend_draft.hpp"

#include <algorithm>
#include <cmath>

namespace holdfast::kiosk::screens {
namespace {

// complaint.png and trends.png, "What failures share".
constexpr double kIndent = 28.0;
constexpr double kBar = 14.0;
constexpr double kWidestShare = 560.0;

double partOf(double share) {
    return std::isfinite(share) ? std::clamp(share, 0.0, 1.0) : 0.0;
}

void placeShare(const TrendDraft& draft, const TrendShare& share, double top, bool filled) {
    TrendLayout& layout = draft.layout;
    const double left = draft.px(kIndent);
    const double whole = std::min(layout.width - left - draft.px(8.0), draft.px(kWidestShare));
    const double wide = std::max(draft.px(2.0), partOf(share.share) * whole);
    const bool limits = std::isfinite(share.low) && std::isfinite(share.high) && share.low < share.high;
    layout.shares.append({.box = QRectF(left, top, wide, draft.px(kBar)),
                          .low = limits ? left + partOf(share.low) * whole : 0.0,
                          .high = limits ? left + partOf(share.high) * whole : 0.0,
                          .filled = filled});
}

/// Name and word share a line; where they do not fit beside one another, the word stands under the name.
double placeHead(const TrendDraft& draft, const TrendRow& row, double top) {
    TrendLayout& layout = draft.layout;
    const double line = draft.px(kTrendLine);
    const double left = row.rank.isEmpty() ? 0.0 : draft.px(kIndent);
    if (!row.rank.isEmpty()) {
        layout.words.append({.text = row.rank, .box = QRectF(0.0, top, left, line), .bold = true});
    }
    const double word = row.word.isEmpty() ? 0.0 : draft.textWidth(row.word, row.strong);
    const bool beside = left + draft.textWidth(row.name, true) + draft.px(kTrendAir) + word <= layout.width;
    const double room = layout.width - left - (beside ? word : 0.0);
    double bottom = putLines(draft, row.name, {.bold = true}, QRectF(left, top, room, line));
    if (row.word.isEmpty()) {
        return bottom;
    }
    const double wordTop = beside ? top : bottom;
    const double wordLeft = beside ? layout.width - word : left;
    layout.words.append({.text = draft.fitted(row.word, row.strong, layout.width - wordLeft),
                         .box = QRectF(wordLeft, wordTop, std::min(word, layout.width - wordLeft), line),
                         .align = beside ? Qt::AlignRight : Qt::AlignLeft,
                         .bold = row.strong,
                         .second = !row.strong});
    return std::max(bottom, wordTop + line);
}

} // namespace

double placeRows(const TrendDraft& draft, double top) {
    TrendLayout& layout = draft.layout;
    double y = top + draft.px(top > 0.0 ? 6.0 : 0.0);
    for (qsizetype i = 0; i < draft.state.rows.size(); ++i) {
        const TrendRow& row = draft.state.rows[i];
        const double rowTop = y;
        layout.rulesY.append(y);
        y = placeHead(draft, row, y + draft.px(12.0)) + draft.px(6.0);
        placeShare(draft, row.with, y, true);
        placeShare(draft, row.without, y + draft.px(kBar + 4.0), false);
        y += draft.px(2.0 * kBar + 10.0);
        if (!row.counts.isEmpty()) {
            const QRectF room(draft.px(kIndent), y, layout.width - draft.px(kIndent), 0.0);
            y = putLines(draft, row.counts, {.second = true}, room);
        }
        y += draft.px(10.0);
        if (!row.id.isEmpty()) {
            layout.targets.append({.id = row.id,
                                   .spoken = row.spoken,
                                   .at = QPointF(layout.width / 2.0, (rowTop + y) / 2.0),
                                   .box = QRectF(0.0, rowTop, layout.width, y - rowTop),
                                   .ruled = row.strong});
        }
    }
    layout.rulesY.append(y);
    return y + draft.px(4.0);
}

} // namespace holdfast::kiosk::screens
