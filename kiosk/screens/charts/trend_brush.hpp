#pragma once

#include "kiosk/screens/charts/trend_layout.hpp"

#include <QPen>

class QPainter;

/// The inside of trend_paint.hpp. Nothing relies on clipping: vector papers may not know it.
namespace holdfast::kiosk::screens {

struct TrendBrush {
    QPainter& painter;
    const ChartStyle& style;

    [[nodiscard]] const InkPalette& ink() const { return style.palette; }
    [[nodiscard]] double px(double design) const { return style.px(design); }
    [[nodiscard]] double hair() const { return std::max(1.0, style.px(1.0)); }
    [[nodiscard]] QPen pen(double width) const {
        return QPen(ink().ink, px(width), Qt::SolidLine, Qt::FlatCap, Qt::MiterJoin);
    }
    void fill(const QRectF& box, const QColor& colour) const;
    /// A frame inside the box.
    void frame(const QRectF& box, double width) const;
    /// Lines at 45°, cut at the box.
    void hatch(const QRectF& box) const;
    void word(const TrendWord& word) const;
};

void paintTrendMarks(const TrendBrush& brush, const TrendLayout& layout);

} // namespace holdfast::kiosk::screens
