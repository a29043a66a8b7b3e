#include "kiosk/screens/charts/chart_files.hpp"

#include "kiosk/screens/charts/trend_paint.hpp"

#include <QBuffer>
#include <QImage>
#include <QPainter>
#include <QSaveFile>
#include <QSvgGenerator>

#include <cmath>

namespace holdfast::kiosk::screens {
namespace {

constexpr int kLeastSide = 160;
constexpr int kMostSide = 16384;
constexpr qint64 kMostPixels = qint64{64} * 1000 * 1000;

/// A chart laid out on its paper.
struct Sheet {
    QSize size;
    double margin = 0.0;
    TrendLayout layout;
};

tl::expected<Sheet, ChartFault> sheetOf(const TrendChartState& state, const ChartPicture& picture) {
    Sheet sheet{.size = picture.size, .margin = picture.style.px(std::max(0.0, picture.margin)), .layout = {}};
    if (sheet.size.width() < kLeastSide || sheet.size.width() > kMostSide || sheet.size.height() < 0) {
        return tl::unexpected(ChartFault::sizeRefused);
    }
    const double around = 2.0 * sheet.margin;
    const double high = sheet.size.height() > 0 ? std::max(1.0, sheet.size.height() - around) : 0.0;
    sheet.layout = layoutTrendChart(state, picture.style, {sheet.size.width() - around, high});
    // Where the words need more than there is, the paper grows: nothing is cut.
    sheet.size.setHeight(std::max(sheet.size.height(), static_cast<int>(std::ceil(sheet.layout.height + around))));
    const bool small = sheet.size.height() < kLeastSide && picture.size.height() > 0;
    if (small || sheet.size.height() > kMostSide || qint64{sheet.size.width()} * sheet.size.height() > kMostPixels) {
        return tl::unexpected(ChartFault::sizeRefused);
    }
    return sheet;
}

void paintSheet(QPainter& painter, const Sheet& sheet, const ChartPicture& picture) {
    painter.fillRect(QRectF(QPointF(0.0, 0.0), QSizeF(sheet.size)), picture.style.palette.paper);
    painter.translate(sheet.margin, sheet.margin);
    paintTrendChart(painter, sheet.layout, picture.style);
}

/// QSvgGenerator writes one family only.
QByteArray withFallbacks(QByteArray svg, const QString& family) {
    const QByteArray own = "font-family=\"" + family.toUtf8() + "\"";
    return svg.replace(own, "font-family=\"" + family.toUtf8() + ", DejaVu Sans Condensed, Arial, sans-serif\"");
}

tl::expected<void, ChartFault> keep(const QByteArray& bytes, const QString& path) {
    QSaveFile file(path);
    if (!file.open(QIODevice::WriteOnly) || file.write(bytes) != bytes.size() || !file.commit()) {
        return tl::unexpected(ChartFault::notWritten);
    }
    return {};
}

} // namespace

tl::expected<QByteArray, ChartFault> pngOf(const TrendChartState& state, const ChartPicture& picture) {
    const auto sheet = sheetOf(state, picture);
    if (!sheet) {
        return tl::unexpected(sheet.error());
    }
    QImage image(sheet->size, QImage::Format_RGB32);
    QPainter painter;
    if (image.isNull() || !painter.begin(&image)) {
        return tl::unexpected(ChartFault::notEncoded);
    }
    paintSheet(painter, *sheet, picture);
    painter.end();
    image.setText(QStringLiteral("Title"), state.title);
    image.setText(QStringLiteral("Description"), state.spoken);
    QByteArray bytes;
    QBuffer buffer(&bytes);
    if (!buffer.open(QIODevice::WriteOnly) || !image.save(&buffer, "PNG")) {
        return tl::unexpected(ChartFault::notEncoded);
    }
    return bytes;
}

tl::expected<QByteArray, ChartFault> svgOf(const TrendChartState& state, const ChartPicture& picture) {
    const auto sheet = sheetOf(state, picture);
    if (!sheet) {
        return tl::unexpected(sheet.error());
    }
    QByteArray bytes;
    QBuffer buffer(&bytes);
    QSvgGenerator svg;
    svg.setOutputDevice(&buffer);
    svg.setSize(sheet->size);
    svg.setViewBox(QRect(QPoint(0, 0), sheet->size));
    svg.setTitle(state.title);
    svg.setDescription(state.spoken);
    QPainter painter;
    if (!painter.begin(&svg)) {
        return tl::unexpected(ChartFault::notEncoded);
    }
    paintSheet(painter, *sheet, picture);
    if (!painter.end()) {
        return tl::unexpected(ChartFault::notEncoded);
    }
    return withFallbacks(bytes, picture.style.family);
}

tl::expected<void, ChartFault> savePng(const TrendChartState& state, const ChartPicture& picture, const QString& path) {
    const auto bytes = pngOf(state, picture);
    return bytes ? keep(*bytes, path) : tl::unexpected(bytes.error());
}

tl::expected<void, ChartFault> saveSvg(const TrendChartState& state, const ChartPicture& picture, const QString& path) {
    const auto bytes = svgOf(state, picture);
    return bytes ? keep(*bytes, path) : tl::unexpected(bytes.error());
}

} // namespace holdfast::kiosk::screens
