#include "kiosk/screens/parts/piece_bar_layout.hpp"

#include <QFontMetricsF>

#include <algorithm>

namespace holdfast::kiosk::screens {
namespace {

constexpr double kBarLine = 28.0;
constexpr double kBar = 56.0;

struct BarDraft {
    const PieceBarState& state;
    const ChartStyle& style;
    PieceBarLayout& layout;
    double width;

    [[nodiscard]] double px(double design) const { return style.px(design); }
    [[nodiscard]] int pieces() const { return std::max(1, state.pieces); }
    /// Left edge of a piece; of the one after the last the right end.
    [[nodiscard]] double left(int piece) const {
        const double share = static_cast<double>(std::clamp(piece, 1, pieces() + 1) - 1) / pieces();
        return layout.bar.left() + share * layout.bar.width();
    }
    [[nodiscard]] double textWidth(const QString& text, bool bold) const {
        return QFontMetricsF(style.font(bold)).horizontalAdvance(text);
    }
};

void placeParts(const BarDraft& draft) {
    for (const PieceStretch& stretch : draft.state.stretches) {
        const int first = std::max(1, stretch.first);
        const int last = std::min(draft.pieces(), stretch.last);
        if (last < first) {
            continue;
        }
        const double from = draft.left(first);
        const double wide = std::max(draft.left(last + 1) - from, draft.px(4.0));
        BarPart part{.kind = stretch.kind,
                     .box = QRectF(std::min(from, draft.layout.bar.right() - wide), draft.layout.bar.top(), wide,
                                   draft.layout.bar.height()),
                     .word = {}};
        const bool bold = stretch.kind == PieceKind::Bracket;
        const double need = draft.textWidth(stretch.text, bold);
        if (!stretch.text.isEmpty() && need + draft.px(28.0) <= wide) {
            part.word = {stretch.text,
                         QRectF(part.box.center().x() - need / 2.0, part.box.center().y() - draft.px(kBarLine / 2.0),
                                need, draft.px(kBarLine)),
                         bold};
        } else if (bold && !stretch.text.isEmpty()) {
            part.under = true;
            part.word = {stretch.text, QRectF(0.0, 0.0, need, draft.px(kBarLine)), true};
        }
        draft.layout.parts.append(part);
    }
}

/// Large where they stand apart, small where they crowd; small ones may cover each other.
void placeMarks(const BarDraft& draft) {
    QList<double> middles;
    for (const PieceRead& read : draft.state.reads) {
        middles.append((draft.left(read.piece) + draft.left(read.piece + 1)) / 2.0);
    }
    QList<double> sorted = middles;
    std::sort(sorted.begin(), sorted.end());
    bool apart = true;
    for (qsizetype i = 1; i < sorted.size(); ++i) {
        apart = apart && sorted[i] - sorted[i - 1] >= draft.px(46.0);
    }
    const double high = draft.px(apart ? 32.0 : 20.0);
    const double wide = high * 1.25;
    for (qsizetype i = 0; i < middles.size(); ++i) {
        const double x = std::clamp(middles[i] - wide / 2.0, 0.0, std::max(0.0, draft.width - wide));
        draft.layout.marks.append(
            {draft.state.reads[i].mark, QRectF(x, draft.px(36.0) - high, wide, high), middles[i]});
    }
}

/// The first row under the bar that has room for it.
QRectF freeBox(const BarDraft& draft, QList<QRectF>& taken, double middle, double wide, int mostRows) {
    const double x = std::clamp(middle - wide / 2.0, 0.0, std::max(0.0, draft.width - wide));
    for (int row = 0; row < mostRows; ++row) {
        const QRectF box(x, draft.layout.bar.bottom() + draft.px(8.0 + kBarLine * row), wide, draft.px(kBarLine));
        const QRectF air = box.adjusted(-draft.px(12.0), 1.0, draft.px(12.0), -1.0);
        if (std::none_of(taken.begin(), taken.end(), [&](const QRectF& other) { return other.intersects(air); })) {
            taken.append(box);
            return box;
        }
    }
    return {};
}

void placeFigures(const BarDraft& draft) {
    PieceBarLayout& layout = draft.layout;
    QList<QRectF> taken;
    const auto figure = [&](const QString& text, double middle, bool bold, int mostRows) {
        if (text.isEmpty()) {
            return;
        }
        const QRectF box = freeBox(draft, taken, middle, draft.textWidth(text, bold), mostRows);
        if (!box.isNull()) {
            layout.figures.append({text, box, bold});
        }
    };
    for (BarPart& part : layout.parts) {
        if (part.under) {
            part.word.box = freeBox(draft, taken, part.box.center().x(), part.word.box.width(), 99);
        }
    }
    figure(draft.state.firstText, layout.bar.left(), false, 1);
    figure(draft.state.lastText, layout.bar.right(), false, 1);
    figure(draft.state.madeText, layout.made.right(), true, 99);
    for (qsizetype i = 0; i < draft.state.reads.size(); ++i) {
        figure(draft.state.reads[i].text, layout.marks[i].x, false, 1);
    }
    layout.height = layout.bar.bottom() + draft.px(4.0);
    for (const QRectF& box : taken) {
        layout.height = std::max(layout.height, box.bottom() + draft.px(4.0));
    }
}

} // namespace

PieceBarLayout layoutPieceBar(const PieceBarState& state, const ChartStyle& style, double width) {
    PieceBarLayout layout;
    const double top = style.px(state.reads.isEmpty() ? 8.0 : 48.0);
    layout.bar = QRectF(0.0, top, std::max(1.0, width), style.px(kBar));
    const BarDraft draft{state, style, layout, std::max(1.0, width)};
    layout.made = layout.bar;
    layout.made.setRight(draft.left(std::clamp(state.made, 0, draft.pieces()) + 1));
    placeParts(draft);
    placeMarks(draft);
    placeFigures(draft);
    return layout;
}

} // namespace holdfast::kiosk::screens
