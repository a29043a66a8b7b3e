#pragma once

#include <QQuickImageProvider>

namespace holdfast::kiosk::screens {

/// Drawn in the place of the book's pictures: a seven that wears off. The id's last sign says how far, "wash-3".
class InventedPictures final : public QQuickImageProvider {
public:
    InventedPictures();
    QImage requestImage(const QString& id, QSize* size, const QSize& requested) override;
};

} // namespace holdfast::kiosk::screens
