#pragma once

#include "kiosk/screens/gallery.hpp"

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

    [[nodiscard]] QList<QQuickItem*> visibleItems() const;
    [[nodiscard]] QList<QQuickItem*> touchTargets() const;
    [[nodiscard]] double pxPerMm() const;

private:
    std::unique_ptr<kiosk::screens::KioskModel> m_kiosk;
    std::unique_ptr<QQuickView> m_view;
    QSize m_size;
};

[[nodiscard]] QRectF onScreen(const QQuickItem& item);
/// The part of it that no scrolling part around it hides; empty: none.
[[nodiscard]] QRectF inSight(const QQuickItem& item);

} // namespace holdfast::tests
