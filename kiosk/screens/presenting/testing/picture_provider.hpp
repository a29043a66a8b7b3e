#pragma once

#include "kiosk/ledger/book.hpp"
#include "kiosk/screens/presenting/testing/picture_inbox.hpp"

#include <QQuickImageProvider>

#include <memory>
#include <mutex>

namespace holdfast::kiosk::screens {

/// "image://picture/HASH": pictures of the book, and those that still wait. Its reading connection is its own, so that
/// the drawing threads may ask; an unknown hash gives a null image. The book outlives it.
class PictureProvider final : public QQuickImageProvider {
public:
    PictureProvider(const ledger::Book& book, std::shared_ptr<const WaitingPictures> waiting);
    QImage requestImage(const QString& id, QSize* size, const QSize& requestedSize) override;

private:
    [[nodiscard]] std::optional<ledger::Bytes> fromBook(const ledger::Digest& hash);

    const ledger::Book& m_book;
    std::shared_ptr<const WaitingPictures> m_waiting;
    std::mutex m_mutex;
    std::unique_ptr<SQLite::Database> m_reader; ///< opened when first asked
};

} // namespace holdfast::kiosk::screens
