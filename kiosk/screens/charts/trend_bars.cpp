#include "kiosk/screens/charts/trend_draft.hpp"

#include <algorithm>
#include <cmath>

namespace holdfast::kiosk::screens {
namespace {

constexpr double kWidestBar = 48.0;
constexpr double kLeastBar = 3.0;

void placeText(const TrendDraft& draft, const TrendBar& bar, const QRectF& box, double spacing) {
    TrendLayout& layout = draft.layout;
    if (bar.text.isEmpty()) {
        return;
    }
    const double wide = draft.textWidth(bar.text, bar.strong);
    const double line = draft.px(kTrendLine);
    const double left = std::clamp(box.center().x() - wide / 2.0, 0.0, std::max(0.0, layout.width - wide));
    const QRectF at(left, std::max(layout.plot.top() - line / 2.0, box.top() - line), wide, line);
    if (bar.strong || (wide < spacing && draft.isFree(at))) {
        layout.words.append({.text = bar.text,
                             .box = at,
                             .align = Qt::AlignHCenter,
                             .bold = bar.strong,
                             .second = !bar.strong,
                             .onPaper = true});
        return;
    }
    ++layout.unsaid;
}

} // namespace

void placeBars(const TrendDraft& draft) {
    TrendLayout& layout = draft.layout;
    const TrendScale& scale = layout.scale;
    const double step = (scale.x(halfBar(draft.state)) - scale.x(0.0)) / 0.28;
    const double wide = step > 0.0 ? std::clamp(step * 0.56, draft.px(kLeastBar), draft.px(kWidestBar))
                                   : draft.px(kLeastBar); // they stand at one place
    const auto inside = [&](double y) { return std::clamp(y, layout.plot.top(), layout.plot.bottom()); };
    const double foot = inside(scale.y(std::max(0.0, scale.y0)));
    QList<TrendBar> bars = draft.state.bars;
    std::stable_sort(bars.begin(), bars.end(),
                     [](const TrendBar& a, const TrendBar& b) { return a.strong > b.strong; });
    for (const TrendBar& bar : bars) {
        if (!isDrawn(bar) || bar.x < scale.x0 || bar.x > scale.x1) {
            continue;
        }
        const double middle =
            std::clamp(scale.x(bar.x), layout.plot.left() + wide / 2.0, layout.plot.right() - wide / 2.0);
        const double top = inside(scale.y(bar.value));
        TrendBlock block{.box = QRectF(middle - wide / 2.0, std::min(top, foot), wide, std::abs(foot - top)),
                         .missed = {},
                         .strong = bar.strong};
        const double upTo = bar.upTo && std::isfinite(*bar.upTo) ? inside(scale.y(*bar.upTo)) : top;
        if (upTo < top - 0.5) {
            block.missed = QRectF(middle - wide / 2.0, upTo, wide, top - upTo);
        }
        const QRectF whole = block.missed.isEmpty() ? block.box : block.box.united(block.missed);
        layout.bars.append(block);
        placeText(draft, bar, whole, step);
        if (!bar.id.isEmpty()) {
            layout.targets.append({.id = bar.id,
                                   .spoken = bar.spoken,
                                   .at = QPointF(middle, std::min(top, upTo)),
                                   .box = QRectF(middle - step / 2.0, layout.plot.top(), step, layout.plot.height()),
                                   .ruled = bar.strong});
        }
    }
}

} // namespace holdfast::kiosk::screens
