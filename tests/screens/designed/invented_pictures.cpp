#include "tests/screens/designed/invented_pictures.hpp"

#include <QPainter>

namespace holdfast::kiosk::screens {

InventedPictures::InventedPictures() : QQuickImageProvider(QQuickImageProvider::Image) {}

QImage InventedPictures::requestImage(const QString& id, QSize* size, const QSize& requested) {
    const int worn = id.isEmpty() ? 0 : id.back().digitValue();
    QImage image(480, 360, QImage::Format_RGB32);
    image.fill(QColor(0xD9, 0xD3, 0xC6));
    QPainter painter(&image);
    painter.setRenderHint(QPainter::Antialiasing);
    QFont font(QStringLiteral("B612"));
    font.setPixelSize(300);
    font.setBold(true);
    painter.setFont(font);
    const int grey = 20 + 22 * std::clamp(worn, 0, 5);
    painter.setPen(QColor(grey, grey, grey));
    painter.drawText(image.rect(), Qt::AlignCenter, QStringLiteral("7"));
    painter.setPen(QPen(QColor(0xD9, 0xD3, 0xC6), 5.0));
    for (int i = 0; i < worn * 3; ++i) {
        painter.drawLine(150 + 14 * i, 40 + 23 * (i % 4), 190 + 11 * i, 110 + 31 * (i % 3));
    }
    painter.end();
    if (size != nullptr) {
        *size = image.size();
    }
    return requested.isValid() ? image.scaled(requested, Qt::KeepAspectRatioByExpanding, Qt::SmoothTransformation)
                               : image;
}

} // namespace holdfast::kiosk::screens
