#include "kiosk/screens/gallery.hpp"

#include <QCoreApplication>
#include <QDir>
#include <QImage>
#include <QQmlEngine>
#include <QQuickItem>
#include <QQuickView>

namespace holdfast::kiosk::screens {
namespace {

QString save(QQuickView& view, const QString& path, const QSize& size) {
    QCoreApplication::sendPostedEvents();
    QCoreApplication::processEvents();
    const QImage image = view.grabWindow();
    if (image.size() != size) {
        return QStringLiteral("the window could not be drawn at %1x%2").arg(size.width()).arg(size.height());
    }
    return image.save(path) ? QString() : QStringLiteral("cannot write %1").arg(path);
}

QString renderStates(QQuickView& view, KioskModel& kiosk, const QDir& folder, const QSize& size) {
    view.resize(size);
    view.show();
    for (const GalleryState& state : gallery()) {
        state.fill(kiosk);
        for (const bool dark : {false, true}) {
            kiosk.setDark(dark);
            const QString file = QStringLiteral("%1-%2x%3-%4.png")
                                     .arg(state.name)
                                     .arg(size.width())
                                     .arg(size.height())
                                     .arg(dark ? QStringLiteral("dark") : QStringLiteral("light"));
            if (const QString failure = save(view, folder.filePath(file), size); !failure.isEmpty()) {
                return failure;
            }
        }
    }
    return {};
}

} // namespace

QString renderGallery(const QString& folder, const std::vector<QSize>& sizes) {
    const QDir target(folder);
    if (!target.mkpath(QStringLiteral("."))) {
        return QStringLiteral("cannot make the folder %1").arg(folder);
    }
    KioskModel kiosk;
    for (const QSize& size : sizes) {
        QQuickView view;
        view.engine()->addImportPath(QStringLiteral(":/qt/qml"));
        view.setResizeMode(QQuickView::SizeRootObjectToView);
        view.setInitialProperties({{QStringLiteral("kiosk"), QVariant::fromValue(&kiosk)}});
        view.setSource(QUrl(QStringLiteral("qrc:/qt/qml/Holdfast/Screens/Kiosk.qml")));
        if (view.status() != QQuickView::Ready) {
            return view.errors().isEmpty() ? QStringLiteral("the page did not load") : view.errors().first().toString();
        }
        if (const QString failure = renderStates(view, kiosk, target, size); !failure.isEmpty()) {
            return failure;
        }
    }
    return {};
}

} // namespace holdfast::kiosk::screens
