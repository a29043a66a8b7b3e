#include "kiosk/screens/presenting/testing/picture_provider.hpp"

#include <QImage>
#include <SQLiteCpp/Statement.h>

#include <span>

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
    try {
        SQLite::Statement query{*m_reader, "SELECT bytes FROM blobs WHERE hash = ? AND dropped_ms IS NULL"};
        query.bind(1, hash.data(), static_cast<int>(hash.size()));
        if (!query.executeStep()) {
            return std::nullopt;
        }
        const auto column = query.getColumn(0);
        const auto* bytes = static_cast<const std::uint8_t*>(column.getBlob());
        ledger::Bytes jpeg(bytes, bytes + column.getBytes());
        return ledger::sha256(std::span<const std::uint8_t>{jpeg}) == hash ? std::optional{std::move(jpeg)}
                                                                           : std::nullopt;
    } catch (const SQLite::Exception&) {
        return std::nullopt;
    }
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
