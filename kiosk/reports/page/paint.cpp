#include "kiosk/reports/page/paint.hpp"

#include <QBuffer>
#include <QFontMetricsF>
#include <QPageLayout>
#include <QPageSize>
#include <QPainter>
#include <QPainterPath>
#include <QPdfWriter>

namespace holdfast::kiosk::reports {

namespace {

constexpr int kUnitsPerInch = 2540;

QRectF unitsOf(const Box& box) {
    return {box.x * kUnitsPerMillimetre, box.y * kUnitsPerMillimetre, box.width * kUnitsPerMillimetre,
            box.height * kUnitsPerMillimetre};
}

QPageLayout layoutOf(const PlacedPage& page) {
    return {QPageSize(QSizeF(page.width, page.height), QPageSize::Millimeter, QString(), QPageSize::ExactMatch),
            QPageLayout::Portrait, QMarginsF()};
}

/// One shape for all its modules: neighbours that are filled one by one leave hairlines on screens.
QPainterPath shapeOf(const PlacedCode& code) {
    const double quiet = quietModules(code.modules.symbology) * code.module;
    const bool bars = code.modules.symbology == Symbology::code128;
    const double high = bars ? code.box.height : code.module;
    QPainterPath shape;
    for (int row = 0; row < code.modules.height; ++row) {
        for (int from = 0; from < code.modules.width;) {
            int to = from;
            while (to < code.modules.width && code.modules.at(to, row)) {
                ++to;
            }
            if (to > from) {
                const Box run{code.box.x + quiet + from * code.module,
                              code.box.y + (bars ? 0 : quiet + row * code.module), (to - from) * code.module, high};
                shape.addRect(unitsOf(run));
            }
            from = std::max(to, from + 1);
        }
    }
    shape.setFillRule(Qt::WindingFill);
    return shape;
}

void paintShapes(QPainter& painter, const PlacedPage& page) {
    const auto toUnits = QTransform::fromScale(kUnitsPerMillimetre, kUnitsPerMillimetre);
    for (const auto& shape : page.shapes) {
        painter.fillPath(toUnits.map(shape.outline), QColor::fromRgbF(1.0F - static_cast<float>(shape.strength),
                                                                      1.0F - static_cast<float>(shape.strength),
                                                                      1.0F - static_cast<float>(shape.strength)));
    }
}

void paint(QPainter& painter, const PlacedPage& page) {
    paintShapes(painter, page);
    for (const auto& box : page.ink) {
        painter.fillRect(unitsOf(box), Qt::black);
    }
    for (const auto& picture : page.pictures) {
        painter.drawImage(unitsOf(picture.box), picture.image);
    }
    for (const auto& code : page.codes) {
        painter.fillPath(shapeOf(code), Qt::black);
    }
    for (const auto& text : page.texts) {
        const QFont font = fontOf(text.size, text.bold);
        const QFontMetricsF metrics(font);
        const QRectF box = unitsOf(text.box);
        painter.setFont(font);
        painter.setPen(text.onInk ? Qt::white : Qt::black);
        painter.drawText(QPointF(box.x(), box.center().y() + (metrics.ascent() - metrics.descent()) / 2), text.text);
    }
}

} // namespace

QFont fontOf(double size, bool bold) {
    QFont font;
    font.setFamilies({QStringLiteral("B612"), QStringLiteral("DejaVu Sans")});
    font.setPixelSize(std::max(1, qRound(size * kUnitsPerMillimetre)));
    font.setBold(bold);
    font.setHintingPreference(QFont::PreferNoHinting);
    return font;
}

tl::expected<QByteArray, ReportFault> pdfOf(const std::vector<PlacedPage>& pages, const std::string& title) {
    if (pages.empty()) {
        return tl::unexpected(ReportFault{ReportCause::nothingToPrint, {}, {}, "no pages"});
    }
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    {
        QPdfWriter writer(&buffer);
        writer.setResolution(kUnitsPerInch);
        writer.setTitle(QString::fromStdString(title));
        writer.setCreator(QStringLiteral("Holdfast"));
        writer.setPageLayout(layoutOf(pages.front()));
        QPainter painter;
        if (!painter.begin(&writer)) {
            return tl::unexpected(ReportFault{ReportCause::notDrawn, {}, {}, "the PDF writer did not begin"});
        }
        for (std::size_t i = 0; i < pages.size(); ++i) {
            if (i > 0 && (!writer.setPageLayout(layoutOf(pages[i])) || !writer.newPage())) {
                return tl::unexpected(ReportFault{ReportCause::notDrawn, {}, {}, "no further page"});
            }
            paint(painter, pages[i]);
        }
        if (!painter.end()) {
            return tl::unexpected(ReportFault{ReportCause::notDrawn, {}, {}, "the PDF writer did not end"});
        }
    }
    return bytes;
}

} // namespace holdfast::kiosk::reports
