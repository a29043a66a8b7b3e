#include "kiosk/reports/picture.hpp"

#include <QBuffer>
#include <QImageReader>

namespace holdfast::kiosk::reports {

QImage thumbnailOf(const ledger::Bytes& bytes, int side) {
    constexpr qint64 kMostPixels = qint64{16} * 1024 * 1024; // four bytes each
    auto data =
        QByteArray::fromRawData(reinterpret_cast<const char*>(bytes.data()), static_cast<qsizetype>(bytes.size()));
    QBuffer buffer(&data);
    buffer.open(QIODevice::ReadOnly);
    QImageReader reader(&buffer);
    reader.setAutoTransform(true);
    const auto size = reader.size();
    const bool scales = reader.supportsOption(QImageIOHandler::ScaledSize) && reader.format() == "jpeg";
    if (size.isEmpty() || side < 1 || (!scales && qint64{size.width()} * size.height() > kMostPixels)) {
        return {};
    }
    if (size.width() > side || size.height() > side) {
        reader.setScaledSize(size.scaled(side, side, Qt::KeepAspectRatio).expandedTo(QSize(1, 1)));
    }
    return reader.read();
}

} // namespace holdfast::kiosk::reports
