#include "kiosk/screens/parts/heat_scale_layout.hpp"

#include "kiosk/screens/parts/trace_columns.hpp"

#include <QFontMetricsF>

#include <algorithm>
#include <cmath>

namespace holdfast::kiosk::screens {
namespace {

constexpr double kAxisWidth = 56.0;
constexpr double kTimeAxisHeight = 38.0;
constexpr double kTextPx = 21.0;
constexpr double kFigurePx = 40.0;
constexpr double kSmallFigurePx = 28.0; // where 40 would cover the trace
constexpr double kPad = 8.0;            // label ground beside its text
constexpr double kWordInset = 24.0;     // words start here, right of the axis

bool lineCrosses(const QLineF& line, const QRectF& box) {
    if (box.contains(line.p1()) || box.contains(line.p2())) {
        return true;
    }
    const QRectF around = QRectF(line.p1(), line.p2()).normalized().adjusted(-0.5, -0.5, 0.5, 0.5);
    if (!around.intersects(box)) {
        return false;
    }
    const QLineF edges[] = {{box.topLeft(), box.topRight()},
                            {box.topRight(), box.bottomRight()},
                            {box.bottomRight(), box.bottomLeft()},
                            {box.bottomLeft(), box.topLeft()}};
    return std::any_of(std::begin(edges), std::end(edges), [&](const QLineF& edge) {
        return line.intersects(edge, nullptr) == QLineF::BoundedIntersection;
    });
}

/// Finds room for one label after the other.
class Placer {
public:
    Placer(const HeatScaleState& state, const HeatScaleStyle& style, HeatScaleMapping mapping)
        : m_state(state), m_style(style), m_map(std::move(mapping)), m_unit(style.unit) {
        if (state.traceEnd != TraceEnd::Running) {
            m_trace = traceLines(state.trace, m_map);
            blockRing();
        }
        blockInterval();
    }

    void placeAll(HeatScaleLayout& layout) {
        layout.intervalX = m_intervalX;
        layout.intervalHalf = m_intervalHalf;
        placeFigure(layout.reading);
        placeCeilings(layout.labels);
        placeCures(layout.labels);
        placeSeconds(layout.reading);
        placeAim(layout.labels);
        placeGel(layout.labels);
        placeWindowNote(layout.labels);
        placeIntervalText(layout.reading);
    }

private:
    [[nodiscard]] double px(double value) const { return value * m_unit; }

    [[nodiscard]] QSizeF sizeOf(const QString& text, ScaleLabelKind kind, double size = kTextPx) const {
        const QFont font = m_style.font(size, kind != ScaleLabelKind::Word);
        const double width = std::ceil(QFontMetricsF(font).horizontalAdvance(text)) + px(2.0 * kPad);
        return {width, px(size > kTextPx ? size + 6.0 : 30.0)};
    }

    [[nodiscard]] bool isFree(const QRectF& box) const {
        const QRectF& plot = m_map.plot;
        if (box.top() < plot.top() - 0.5 || box.bottom() > plot.bottom() + 0.5 || box.right() > plot.right() + 0.5 ||
            box.left() < plot.left()) {
            return false;
        }
        const auto taken = [&](const QRectF& other) { return other.intersects(box); };
        if (std::any_of(m_taken.begin(), m_taken.end(), taken)) {
            return false;
        }
        const QRectF wide = box.adjusted(-px(6.0), -px(2.0), px(6.0), px(2.0));
        return std::none_of(m_trace.begin(), m_trace.end(),
                            [&](const QLineF& line) { return lineCrosses(line, wide); });
    }

    /// Takes the first free candidate; with `always` the first one if none is free.
    bool place(QList<ScaleLabel>& labels, ScaleLabel label, const QList<QPointF>& corners, bool always) {
        if (label.text.isEmpty() || corners.isEmpty()) {
            return true;
        }
        const QSizeF size = sizeOf(label.text, label.kind, label.size);
        for (const QPointF& corner : corners) {
            label.box = QRectF(corner, size);
            if (isFree(label.box)) {
                take(labels, label);
                return true;
            }
        }
        if (always) {
            label.box = QRectF(corners.first(), size);
            label.box.moveRight(std::min(label.box.right(), m_map.plot.right()));
            take(labels, label);
        }
        return always;
    }

    void take(QList<ScaleLabel>& labels, const ScaleLabel& label) {
        m_taken.append(label.box);
        labels.append(label);
    }

    [[nodiscard]] double left() const { return m_map.plot.left() + px(kWordInset - kPad); }
    [[nodiscard]] double right(double width) const { return m_map.plot.right() - px(kPad) - width; }
    [[nodiscard]] double middle(double width) const { return m_map.plot.center().x() - width / 2.0; }

    [[nodiscard]] QList<QPointF> across(double y, double width) const {
        return {{left(), y}, {right(width), y}, {middle(width), y}};
    }

    void blockRing() {
        if (m_state.peak) {
            const QPointF ring(m_map.x(m_state.peak->seconds), m_map.y(m_state.peak->atShown));
            m_taken.append(QRectF(ring.x() - px(10.0), ring.y() - px(10.0), px(20.0), px(20.0)));
        }
    }

    void blockInterval() {
        if (!m_state.strip && !m_state.gun) {
            return;
        }
        const double low = m_state.strip && m_state.strip->lowShown ? m_map.y(*m_state.strip->lowShown) : m_map.kneeY;
        double high = m_map.plot.top();
        if (m_state.strip && m_state.strip->highShown) {
            high = m_map.y(*m_state.strip->highShown);
        } else if (m_state.gun) {
            high = m_map.y(m_state.gun->atShown);
        }
        const double width = m_map.plot.width();
        m_intervalHalf = std::min(px(40.0), 0.12 * width);
        const double text = sizeOf(intervalText(), ScaleLabelKind::Note).width() + px(10.0);
        const double shift = std::max(0.0, m_intervalHalf + text - width / 2.0 + px(8.0));
        m_intervalX = std::max(m_map.plot.center().x() - shift, m_map.plot.left() + m_intervalHalf + px(16.0));
        m_taken.append(QRectF(m_intervalX - m_intervalHalf - px(6.0), high, 2.0 * m_intervalHalf + px(12.0),
                              std::max(low - high, 1.0)));
    }

    [[nodiscard]] double windowTop() const {
        const std::optional<CeilingLine> upper = upperLimit(m_state);
        return upper ? m_map.y(upper->atShown) : m_map.plot.top();
    }

    [[nodiscard]] double windowBottom() const {
        const std::optional<CureLine> lower = lowerLimit(m_state);
        return lower ? m_map.y(lower->atShown) : m_map.kneeY;
    }

    void placeFigure(QList<ScaleLabel>& labels) {
        if (m_state.peak && !placeFigureAt(labels, kFigurePx, false)) {
            placeFigureAt(labels, kSmallFigurePx, true);
        }
    }

    /// In the window on the side the trace leaves free; else under the cure line, on paper.
    bool placeFigureAt(QList<ScaleLabel>& labels, double figurePx, bool always) {
        ScaleLabel label{ScaleLabelKind::Figure, LabelGround::Clear, m_state.peak->text, {}, figurePx};
        const QSizeF size = sizeOf(label.text, label.kind, label.size);
        QList<QPointF> corners;
        if (windowBottom() - windowTop() >= size.height() + px(4.0)) {
            const double y = (windowTop() + windowBottom()) / 2.0 - size.height() / 2.0;
            corners = {{right(size.width()), y}, {left(), y}, {middle(size.width()), y}};
        }
        for (double y = windowBottom() + px(8.0) + guardBelow(); y < m_map.kneeY - size.height(); y += px(12.0)) {
            corners.append({right(size.width()), y});
            corners.append({left(), y});
        }
        if (!place(labels, label, corners, always)) {
            return false;
        }
        if (!labels.isEmpty() && labels.last().box.top() > windowBottom()) {
            labels.last().ground = LabelGround::Paper;
        }
        return true;
    }

    [[nodiscard]] double guardBelow() const {
        const std::optional<CureLine> lower = lowerLimit(m_state);
        return lower && lower->guardShown > 0.0 ? m_map.y(lower->atShown - lower->guardShown) - m_map.y(lower->atShown)
                                                : 0.0;
    }

    void placeCeilings(QList<ScaleLabel>& labels) {
        for (const std::optional<CeilingLine>& line : {m_state.hardCeiling, m_state.bleedCeiling}) {
            if (!line) {
                continue;
            }
            const ScaleLabelKind kind = line->culprit ? ScaleLabelKind::Framed : ScaleLabelKind::Word;
            const QSizeF size = sizeOf(line->word, kind);
            const double y = m_map.y(line->atShown);
            const QList<QPointF> above = across(y - px(4.0) - size.height(), size.width());
            const QList<QPointF> under = across(y + px(7.0), size.width());
            place(labels, {kind, LabelGround::Paper, line->word, {}}, line->culprit ? under + above : above + under,
                  line->culprit);
        }
    }

    void placeCures(QList<ScaleLabel>& labels) {
        QList<CureLine> cures = m_state.cures;
        std::sort(cures.begin(), cures.end(), [](const auto& a, const auto& b) { return a.atShown > b.atShown; });
        for (const CureLine& cure : cures) {
            const ScaleLabelKind kind = cure.culprit ? ScaleLabelKind::Block : ScaleLabelKind::Word;
            const double line = m_map.y(cure.atShown);
            const double guard = cure.guardShown > 0.0 ? m_map.y(cure.atShown - cure.guardShown) - line : 0.0;
            const double width = sizeOf(cure.word, kind).width();
            QList<QPointF> corners;
            for (double y = line + std::max(guard + px(2.0), px(cure.culprit ? 7.0 : 3.0)); y < m_map.plot.bottom();
                 y += px(10.0)) {
                corners += across(y, width);
                if (corners.size() > 12) {
                    break;
                }
            }
            place(labels, {kind, LabelGround::Bare, cure.word, {}}, corners, cure.culprit);
        }
    }

    void placeSeconds(QList<ScaleLabel>& labels) {
        if (!m_state.peak || m_state.peak->secondsOverText.isEmpty()) {
            return;
        }
        const PeakNote& peak = *m_state.peak;
        const bool known = peak.secondsOverTo > peak.secondsOverFrom;
        const double centre = m_map.x(known ? (peak.secondsOverFrom + peak.secondsOverTo) / 2.0 : peak.seconds);
        const double width = sizeOf(peak.secondsOverText, ScaleLabelKind::Note).width();
        QList<QPointF> corners;
        for (double y = windowBottom() + guardBelow() + px(2.0); y < m_map.kneeY - px(30.0); y += px(4.0)) {
            corners.append({centre - width / 2.0, y});
        }
        place(labels, {ScaleLabelKind::Note, LabelGround::Bare, peak.secondsOverText, {}}, corners, false);
    }

    void placeAim(QList<ScaleLabel>& labels) {
        if (!m_state.aim) {
            return;
        }
        const QSizeF size = sizeOf(m_state.aim->word, ScaleLabelKind::Word);
        const double y = m_map.y(m_state.aim->atShown) - size.height() / 2.0;
        place(labels, {ScaleLabelKind::Word, LabelGround::Clear, m_state.aim->word, {}}, across(y, size.width()),
              false);
    }

    void placeGel(QList<ScaleLabel>& labels) {
        if (!m_state.gel) {
            return;
        }
        const QSizeF size = sizeOf(m_state.gel->word, ScaleLabelKind::Word);
        const double y = m_map.y(m_state.gel->atShown);
        place(labels, {ScaleLabelKind::Word, LabelGround::Bare, m_state.gel->word, {}},
              across(y - px(2.0) - size.height(), size.width()) + across(y + px(3.0), size.width()), false);
    }

    void placeWindowNote(QList<ScaleLabel>& labels) {
        const QSizeF size = sizeOf(m_state.windowNote, ScaleLabelKind::Word);
        const double y = (windowTop() + windowBottom()) / 2.0 - size.height() / 2.0;
        place(labels, {ScaleLabelKind::Word, LabelGround::Clear, m_state.windowNote, {}}, across(y, size.width()),
              false);
    }

    [[nodiscard]] QString intervalText() const {
        return m_state.strip ? m_state.strip->text : (m_state.gun ? m_state.gun->text : QString());
    }

    void placeIntervalText(QList<ScaleLabel>& labels) {
        const QString text = intervalText();
        if (text.isEmpty()) {
            return;
        }
        const QSizeF size = sizeOf(text, ScaleLabelKind::Note);
        const QRectF beam = m_taken.isEmpty() ? QRectF() : m_taken.first();
        const double y = m_state.gun ? beam.top() : beam.center().y() - size.height() / 2.0;
        QList<QPointF> corners;
        for (const double shift : {0.0, 16.0, -16.0, 32.0, -32.0, 48.0, 64.0, 80.0}) {
            corners.append({beam.right() + px(2.0), y + px(shift)});
            corners.append({beam.left() - px(2.0) - size.width(), y + px(shift)});
            corners.append({right(size.width()), y + px(shift)});
        }
        place(labels, {ScaleLabelKind::Note, LabelGround::Clear, text, {}}, corners, true);
    }

    const HeatScaleState& m_state;
    const HeatScaleStyle& m_style;
    HeatScaleMapping m_map;
    double m_unit;
    double m_intervalX = 0.0;
    double m_intervalHalf = 0.0;
    QList<QLineF> m_trace;
    QList<QRectF> m_taken;
};

/// Limits first, then gel, aim, room; a figure that would touch one already set is left out.
QList<AxisFigure> axisFigures(const HeatScaleState& state, const HeatScaleMapping& mapping, double unit) {
    QList<AxisFigure> figures;
    const auto add = [&](const QString& text, double y, bool bold) {
        const auto close = [&](const AxisFigure& other) { return std::abs(other.y - y) < 22.0 * unit; };
        if (!text.isEmpty() && std::none_of(figures.begin(), figures.end(), close)) {
            figures.append({text, y, bold});
        }
    };
    for (const std::optional<CeilingLine>& line : {upperLimit(state), state.hardCeiling, state.bleedCeiling}) {
        if (line) {
            add(line->axisText, mapping.y(line->atShown), true);
        }
    }
    QList<CureLine> cures = state.cures;
    std::sort(cures.begin(), cures.end(), [](const auto& a, const auto& b) { return a.atShown > b.atShown; });
    for (const CureLine& cure : cures) {
        add(cure.axisText, mapping.y(cure.atShown), true);
    }
    for (const std::optional<ScaleNote>& note : {state.gel, state.aim}) {
        if (note) {
            add(note->axisText, mapping.y(note->atShown), false);
        }
    }
    add(state.room.axisText, mapping.plot.bottom() - 12.0 * unit, false);
    return figures;
}

/// 56, or what the widest figure asks.
double axisWidth(const HeatScaleState& state, const HeatScaleStyle& style) {
    const QFontMetricsF metrics(style.font(kTextPx, true));
    double widest = metrics.horizontalAdvance(state.room.axisText);
    const auto take = [&](const QString& text) { widest = std::max(widest, metrics.horizontalAdvance(text)); };
    for (const CureLine& cure : state.cures) {
        take(cure.axisText);
    }
    for (const std::optional<CeilingLine>& line : {state.hardCeiling, state.bleedCeiling}) {
        take(line ? line->axisText : QString());
    }
    for (const std::optional<ScaleNote>& note : {state.gel, state.aim}) {
        take(note ? note->axisText : QString());
    }
    return std::max(kAxisWidth * style.unit, std::ceil(widest) + 13.0 * style.unit);
}

} // namespace

QFont HeatScaleStyle::font(double px, bool bold) const {
    QFont font(family);
    font.setPixelSize(std::max(1, static_cast<int>(std::lround(px * unit))));
    font.setBold(bold);
    font.setLetterSpacing(QFont::AbsoluteSpacing, (px > 30.0 ? -0.4 : -0.2) * unit);
    return font;
}

HeatScaleLayout layoutHeatScale(const HeatScaleState& state, const HeatScaleStyle& style, const QRectF& rect) {
    HeatScaleLayout layout;
    if (style.form != HeatScaleForm::Full) {
        layout.mapping = mapHeatScale(state, rect, style.form);
        return layout;
    }
    layout.timeAxis = state.timed && !state.closed && !state.strip && !state.gun;
    layout.axisWidth = axisWidth(state, style);
    const double foot = (layout.timeAxis ? kTimeAxisHeight : 2.0) * style.unit;
    const QRectF plot = rect.adjusted(layout.axisWidth, 0.0, 0.0, -foot);
    layout.mapping = mapHeatScale(state, plot, style.form);
    layout.axis = axisFigures(state, layout.mapping, style.unit);
    Placer(state, style, layout.mapping).placeAll(layout);
    return layout;
}

} // namespace holdfast::kiosk::screens
