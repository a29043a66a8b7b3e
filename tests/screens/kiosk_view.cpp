#include "tests/screens/kiosk_view.hpp"

#include "kiosk/screens/font_rules.hpp"
#include "tests/screens/designed/invented_pictures.hpp"

#include <QGuiApplication>
#include <QMutex>
#include <QQmlEngine>
#include <QtTest/QTest>

#include <cmath>

namespace holdfast::tests {
namespace {

QStringList& complaintList() {
    static QStringList list;
    return list;
}

QtMessageHandler g_before = nullptr;

void collect(QtMsgType type, const QMessageLogContext& context, const QString& message) {
    if (type != QtDebugMsg && type != QtInfoMsg && !message.startsWith(QLatin1String("QStandardPaths: "))) {
        complaintList().append(message);
    }
    if (g_before != nullptr) {
        g_before(type, context, message);
    }
}

void gather(QQuickItem* item, QList<QQuickItem*>& items) {
    if (!item->isVisible()) {
        return;
    }
    items.append(item);
    for (QQuickItem* child : item->childItems()) {
        gather(child, items);
    }
}

} // namespace

void ensureApplication() {
    if (QCoreApplication::instance() != nullptr) {
        return;
    }
    qputenv("QT_QPA_PLATFORM", "offscreen");
    qputenv("QT_QUICK_BACKEND", "software");
    kiosk::screens::applyFontRules();
    static int argc = 1;
    static char name[] = "screens_test";
    static char* argv[] = {name, nullptr};
    // Never deleted: at exit Qt's own statics are gone before ours, and ~QGuiApplication would use them.
    new QGuiApplication(argc, argv);
}

Complaints::Complaints() {
    complaintList().clear();
    g_before = qInstallMessageHandler(collect);
}

Complaints::~Complaints() {
    qInstallMessageHandler(g_before);
}

QStringList Complaints::all() const {
    return complaintList();
}

KioskView::KioskView(const QSize& size) : m_size(size) {
    ensureApplication();
    m_kiosk = std::make_unique<kiosk::screens::KioskModel>();
    m_view = std::make_unique<QQuickView>();
    m_view->engine()->addImportPath(QStringLiteral(":/qt/qml"));
    m_view->engine()->addImageProvider(QStringLiteral("picture"), new kiosk::screens::InventedPictures);
    m_view->setResizeMode(QQuickView::SizeRootObjectToView);
    m_view->resize(size);
    m_view->setInitialProperties({{QStringLiteral("kiosk"), QVariant::fromValue(m_kiosk.get())}});
    m_view->setSource(QUrl(QStringLiteral("qrc:/qt/qml/Holdfast/Screens/Kiosk.qml")));
    m_view->show();
    m_view->requestActivate();
    settle();
}

void KioskView::show(const kiosk::screens::GalleryState& state) {
    state.fill(*m_kiosk);
    settle();
}

void KioskView::settle() {
    for (int i = 0; i < 3; ++i) {
        QCoreApplication::sendPostedEvents();
        QCoreApplication::processEvents();
    }
    // Outside of exec() nobody else frees what was replaced.
    QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
    m_picture = m_view->grabWindow(); // forces polish, so that lists and texts have their places
}

void KioskView::resize(const QSize& size) {
    m_size = size;
    m_view->resize(size);
    settle();
}

QList<QQuickItem*> KioskView::visibleItems() const {
    QList<QQuickItem*> items;
    if (m_view->rootObject() != nullptr) {
        gather(m_view->rootObject(), items);
    }
    return items;
}

QList<QQuickItem*> KioskView::touchTargets() const {
    QList<QQuickItem*> targets;
    for (QQuickItem* item : visibleItems()) {
        if (item->property("isTouchTarget").toBool() && item->isEnabled()) {
            targets.append(item);
        }
    }
    return targets;
}

double KioskView::pxPerMm() const {
    return std::hypot(m_size.width(), m_size.height()) / (m_kiosk->panelDiagonalInch() * 25.4);
}

QRectF onScreen(const QQuickItem& item) {
    return item.mapRectToScene(QRectF(0, 0, item.width(), item.height()));
}

QRectF inSight(const QQuickItem& item) {
    QRectF box = onScreen(item);
    for (const QQuickItem* parent = item.parentItem(); parent != nullptr; parent = parent->parentItem()) {
        if (parent->clip()) {
            box = box.intersected(onScreen(*parent));
        }
    }
    return box;
}

} // namespace holdfast::tests
