#include "kiosk/screens/tour/pictures.hpp"

#include <QCoreApplication>
#include <QDir>
#include <QImage>
#include <QQmlEngine>
#include <QQuickImageProvider>
#include <QQuickItem>
#include <QQuickView>

namespace holdfast::kiosk::screens {
namespace {

/// What the book would give to "image://picture/HASH".
class TourPictures final : public QQuickImageProvider {
public:
    explicit TourPictures(const Tour& tour) : QQuickImageProvider{QQuickImageProvider::Image}, m_tour{tour} {}
    QImage requestImage(const QString& id, QSize* size, const QSize& asked) override {
        const auto found = m_tour.pictures.find(id);
        QImage image;
        if (found != m_tour.pictures.end()) {
            image.loadFromData(found->second, "jpeg");
        }
        if (size != nullptr) {
            *size = image.size();
        }
        const bool smaller = asked.isValid() && !asked.isEmpty() && !image.isNull();
        return smaller ? image.scaled(asked, Qt::KeepAspectRatio, Qt::SmoothTransformation) : image;
    }

private:
    const Tour& m_tour;
};

QString savePicture(QQuickView& view, const QString& path, const QSize& size) {
    constexpr int kRounds = 2; // what is loaded in the first is laid out in the second
    for (int i = 0; i < kRounds; ++i) {
        QCoreApplication::sendPostedEvents();
        QCoreApplication::processEvents();
    }
    // Outside of exec() nobody else frees what was replaced.
    QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
    const QImage image = view.grabWindow();
    if (image.size() != size) {
        return QStringLiteral("the window could not be drawn at %1x%2").arg(size.width()).arg(size.height());
    }
    constexpr int kQuick = 70; // packed less, in a third of the time
    return image.save(path, "PNG", kQuick) ? QString() : QStringLiteral("cannot write %1").arg(path);
}

QString drawStops(QQuickView& view, KioskModel& kiosk, const Tour& tour, const QDir& folder, const QSize& size) {
    view.resize(size);
    view.show();
    for (const auto& stop : tour.stops) {
        stop.show(kiosk);
        for (const bool dark : {false, true}) {
            kiosk.setDark(dark);
            const auto file = QStringLiteral("%1-%2x%3-%4.png")
                                  .arg(stop.name)
                                  .arg(size.width())
                                  .arg(size.height())
                                  .arg(dark ? QStringLiteral("dark") : QStringLiteral("light"));
            if (const auto failure = savePicture(view, folder.filePath(file), size); !failure.isEmpty()) {
                return failure;
            }
        }
    }
    return {};
}

QString drawOne(const Tour& tour, const QDir& folder, const std::vector<QSize>& sizes) {
    if (!folder.mkpath(QStringLiteral("."))) {
        return QStringLiteral("cannot make the folder %1").arg(folder.path());
    }
    KioskModel kiosk;
    QQuickView view;
    view.engine()->addImportPath(QStringLiteral(":/qt/qml"));
    view.engine()->addImageProvider(QStringLiteral("picture"), new TourPictures{tour});
    view.setResizeMode(QQuickView::SizeRootObjectToView);
    view.setInitialProperties({{QStringLiteral("kiosk"), QVariant::fromValue(&kiosk)}});
    view.setSource(QUrl(QStringLiteral("qrc:/qt/qml/Holdfast/Screens/Kiosk.qml")));
    if (view.status() != QQuickView::Ready) {
        return view.errors().isEmpty() ? QStringLiteral("the page did not load") : view.errors().first().toString();
    }
    for (const auto& size : sizes) {
        if (const auto failure = drawStops(view, kiosk, tour, folder, size); !failure.isEmpty()) {
            return failure;
        }
    }
    return tour.missed.isEmpty() ? QString{} : tour.missed.first();
}

} // namespace

std::vector<QSize> pictureSizes() {
    return {{1280, 800}, {1920, 1080}, {800, 1280}};
}

QString drawTour(const QString& folder, const std::vector<QSize>& sizes) {
    const QDir target{folder};
    const auto english = drawOne(walkTour("en", analytics::TemperatureUnit::fahrenheit),
                                 QDir{target.filePath(QStringLiteral("en"))}, sizes);
    const auto spanish = drawOne(walkTour("es", analytics::TemperatureUnit::celsius),
                                 QDir{target.filePath(QStringLiteral("es"))}, sizes);
    return english.isEmpty() ? spanish : english;
}

} // namespace holdfast::kiosk::screens
