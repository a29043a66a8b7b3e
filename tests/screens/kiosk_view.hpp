#pragma once

#include "tests/screens/designed/gallery.hpp"

#include <QImage>
#include <QQuickItem>
#include <QQuickView>
#include <QStringList>

#include <memory>

namespace holdfast::tests {

/// The one QGuiApplication of a test process, with the shipped font rules.
void ensureApplication();

/// Collects everything Qt and QML complain about while it lives.
class Complaints {
public:
    Complaints();
    ~Complaints();
    Complaints(const Complaints&) = delete;
    Complaints& operator=(const Complaints&) = delete;
    [[nodiscard]] QStringList all() const;
};

/// The shipped root item in a window of a given size.
class KioskView {
public:
    explicit KioskView(const QSize& size);
    [[nodiscard]] QQuickView& window() { return *m_view; }
    [[nodiscard]] kiosk::screens::KioskModel& kiosk() { return *m_kiosk; }
    void show(const kiosk::screens::GalleryState& state);
    /// Lets bindings, layouts and polish come to rest.
    void settle();
    /// The same window in another size.
    void resize(const QSize& size);
    [[nodiscard]] const QSize& size() const { return m_size; }
    /// As drawn when it last came to rest.
    [[nodiscard]] const QImage& picture() const { return m_picture; }

    [[nodiscard]] QList<QQuickItem*> visibleItems() const;
    [[nodiscard]] QList<QQuickItem*> touchTargets() const;
    [[nodiscard]] double pxPerMm() const;

private:
    std::unique_ptr<kiosk::screens::KioskModel> m_kiosk;
    std::unique_ptr<QQuickView> m_view;
    QSize m_size;
    QImage m_picture;
};

[[nodiscard]] QRectF onScreen(const QQuickItem& item);
/// The part of it that no scrolling part around it hides; empty: none.
[[nodiscard]] QRectF inSight(const QQuickItem& item);

} // namespace holdfast::tests
