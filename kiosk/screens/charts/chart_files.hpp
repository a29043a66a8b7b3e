#pragma once

#include "kiosk/screens/charts/trend_state.hpp"
#include "kiosk/screens/parts/chart_style.hpp"

#include <QByteArray>
#include <QSize>

#include <tl/expected.hpp>

/// Charts as pictures, drawn by the painter of the screen. Needs a QGuiApplication with the kiosk's font rules.
namespace holdfast::kiosk::screens {

enum class ChartFault {
    sizeRefused, ///< under 160 or over 16384 px a side, or over 64 million px
    notEncoded,  ///< the picture could not be made
    notWritten,  ///< the file could not be written whole; what stood there before stands there still
};

struct ChartPicture {
    QSize size{1280, 720}; ///< a height of 0: as high as the chart needs
    ChartStyle style{.palette = lightPalette()};
    double margin = 24.0; ///< of paper around it, px at 1280×800
};

/// Of one pixel a px at 1280×800 if `style.unit` is 1; twice as sharp with 2 and twice the size.
[[nodiscard]] tl::expected<QByteArray, ChartFault> pngOf(const TrendChartState& state, const ChartPicture& picture);

/// Texts stay texts, with other families to fall back to where ours is missing; the title and the description are the
/// picture's own.
[[nodiscard]] tl::expected<QByteArray, ChartFault> svgOf(const TrendChartState& state, const ChartPicture& picture);

[[nodiscard]] tl::expected<void, ChartFault> savePng(const TrendChartState& state, const ChartPicture& picture,
                                                     const QString& path);
[[nodiscard]] tl::expected<void, ChartFault> saveSvg(const TrendChartState& state, const ChartPicture& picture,
                                                     const QString& path);

} // namespace holdfast::kiosk::screens
