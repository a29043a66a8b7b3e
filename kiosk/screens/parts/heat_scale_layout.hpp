#pragma once

#include "kiosk/screens/parts/heat_scale_mapping.hpp"
#include "kiosk/screens/parts/palette.hpp"

#include <QFont>
#include <QLineF>
#include <QList>
#include <QString>

namespace holdfast::kiosk::screens {

/// How the heat scale is set: on a screen or on paper.
struct HeatScaleStyle {
    InkPalette palette;
    HeatScaleForm form = HeatScaleForm::Full;
    double unit = 1.0; ///< what 1 px at 1280×800 measures here
    QString family = QStringLiteral("B612");

    [[nodiscard]] QFont font(double px, bool bold) const;

    bool operator==(const HeatScaleStyle&) const = default;
};

/// A text inside the plot. Word: plain. Block: paper on ink (the cure that crossed). Framed: 4 px frame (the ceiling
/// that was crossed). Figure: the peak at 40. Note: bold 21.
enum class ScaleLabelKind { Word, Block, Framed, Figure, Note };

/// The ground a label stands on, so that hatch, dots or a dashed line do not run through it. Bare: nothing is filled.
enum class LabelGround { Bare, Paper, Clear };

struct ScaleLabel {
    ScaleLabelKind kind = ScaleLabelKind::Word;
    LabelGround ground = LabelGround::Bare;
    QString text;
    QRectF box;
    double size = 21.0; ///< px at 1280×800
};

struct AxisFigure {
    QString text;
    double y = 0.0; ///< middle of the figure
    bool bold = false;
};

/// Where everything stands. The labels overlap neither each other nor the trace, unless there is no room at all.
struct HeatScaleLayout {
    HeatScaleMapping mapping;
    bool timeAxis = false;
    double axisWidth = 0.0;    ///< room for the figures left of the plot
    double intervalX = 0.0;    ///< middle of a strip's I-beam or a gun's bar
    double intervalHalf = 0.0; ///< half its width
    QList<AxisFigure> axis;
    QList<ScaleLabel> labels;  ///< words of the window
    QList<ScaleLabel> reading; ///< figures of the reading
};

/// While the trace runs its words are placed as if there were none, so that they do not wander; the trace is drawn
/// over.
[[nodiscard]] HeatScaleLayout layoutHeatScale(const HeatScaleState& state, const HeatScaleStyle& style,
                                              const QRectF& rect);

} // namespace holdfast::kiosk::screens
