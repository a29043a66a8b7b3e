#include "kiosk/screens/presenting/testing/picture_provider.hpp"

#include <QImage>

namespace holdfast::kiosk::screens {

PictureProvider::PictureProvider(const ledger::Book& book, std::shared_ptr<const WaitingPictures> waiting)
    : QQuickImageProvider{QQuickImageProvider::Image}, m_book{book}, m_waiting{std::move(waiting)} {}

std::optional<ledger::Bytes> PictureProvider::fromBook(const ledger::Digest& hash) {
    const std::lock_guard lock{m_mutex};
    if (!m_reader) {
        auto opened = m_book.openReader();
        if (!opened) {
            return std::nullopt;
        }
        m_reader = std::move(*opened);
    }
    auto bytes = ledger::Book::blob(*m_reader, hash);
    return bytes ? std::optional{std::move(*bytes)} : std::nullopt;
}

QImage PictureProvider::requestImage(const QString& id, QSize* size, const QSize& requestedSize) {
    const auto name = id.toStdString();
    const auto hash = ledger::fromHex(name);
    auto bytes = m_waiting ? m_waiting->find(name) : std::nullopt;
    if (!bytes && hash) {
        bytes = fromBook(*hash);
    }
    QImage image;
    if (bytes) {
        image.loadFromData(bytes->data(), static_cast<int>(bytes->size()), "jpeg");
    }
    if (size != nullptr) {
        *size = image.size();
    }
    const bool smaller = requestedSize.isValid() && !requestedSize.isEmpty() && !image.isNull();
    return smaller ? image.scaled(requestedSize, Qt::KeepAspectRatio, Qt::SmoothTransformation) : image;
}

} // namespace holdfast::kiosk::screens
