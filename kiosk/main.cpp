#include "drivers/catalogue/catalogue.hpp"
#include "drivers/clock/clock.hpp"
#include "drivers/link/instrument_link.hpp"
#include "drivers/link/link_thread.hpp"
#include "drivers/link/scanner_link.hpp"
#include "kiosk/command/command_line.hpp"
#include "kiosk/demo/demo_history.hpp"
#include "kiosk/demo/demo_tunnel.hpp"
#include "kiosk/records/shop_projection.hpp"
#include "kiosk/screens/font_rules.hpp"
#include "kiosk/screens/gallery.hpp"
#include "kiosk/screens/presenting/kiosk_presenter.hpp"
#include "kiosk/screens/presenting/start_failure.hpp"
#include "kiosk/screens/wedge_filter.hpp"
#include "kiosk/shop/opening/opening.hpp"
#include "kiosk/wording/notices.hpp"

#include <QGuiApplication>
#include <QQmlApplicationEngine>
#include <QQuickWindow>

#include <cstdlib>
#include <iostream>
#include <memory>
#include <random>

using namespace holdfast;
using namespace holdfast::kiosk;

namespace {

using ProbeThread = drivers::LinkThread<drivers::InstrumentLink>;

ledger::UuidRandom systemRandom() {
    static std::random_device device;
    ledger::UuidRandom out{};
    for (auto& byte : out) {
        byte = static_cast<std::uint8_t>(device() & 0xFFU);
    }
    return out;
}

std::filesystem::path shareFolder(const char* name) {
    const char* share = std::getenv("XDG_DATA_HOME");
    const char* home = std::getenv("HOME");
    return share != nullptr && *share != '\0'
               ? std::filesystem::path{share} / name
               : std::filesystem::path{home != nullptr ? home : "."} / ".local/share" / name;
}

std::string isoDay(drivers::WallTime wall) {
    const std::chrono::year_month_day day{drivers::localDay(wall)};
    char text[16];
    std::snprintf(text, sizeof text, "%04d-%02u-%02u", static_cast<int>(day.year()), static_cast<unsigned>(day.month()),
                  static_cast<unsigned>(day.day()));
    return text;
}

/// Loads Main.qml on the model; false if QML could not be loaded.
bool showWindow(QQmlApplicationEngine& engine, screens::KioskModel& model, bool fullScreen) {
    engine.addImportPath(QStringLiteral(":/qt/qml"));
    engine.setInitialProperties({{QStringLiteral("kiosk"), QVariant::fromValue(&model)}});
    engine.load(QUrl{QStringLiteral("qrc:/qt/qml/Holdfast/Screens/Main.qml")});
    if (engine.rootObjects().isEmpty()) {
        return false;
    }
    if (auto* window = qobject_cast<QQuickWindow*>(engine.rootObjects().constFirst()); window && fullScreen) {
        window->showFullScreen();
    }
    return true;
}

/// The book cannot be used: the screen says what happened, what was kept and what to do.
int showFailure(QGuiApplication& app, const ledger::Failure& failure) {
    const auto notice = wording::noticeOf(failure, wording::Kept::book, {});
    std::cerr << notice.line() << '\n' << failure.what << std::endl;
    screens::KioskModel model;
    model.setState(screens::startFailureOf(notice, {}));
    QObject::connect(&model, &screens::KioskModel::actionTriggered, &app, [] { QCoreApplication::exit(2); });
    QQmlApplicationEngine engine;
    return showWindow(engine, model, false) ? (QGuiApplication::exec(), 2) : 2;
}

/// Which port an instrument is read at: the given ones in order, else the book's.
std::vector<std::pair<records::InstrumentOnFile, drivers::Address>>
attachments(const ledger::Book& book, const std::vector<std::string>& probePorts) {
    std::vector<std::pair<records::InstrumentOnFile, drivers::Address>> list;
    const auto instruments = records::instruments(book.reader());
    std::size_t next = 0;
    for (const auto& instrument : instruments ? *instruments : std::vector<records::InstrumentOnFile>{}) {
        if (instrument.described.catalogue.empty()) {
            continue;
        }
        auto address = drivers::addressFromText(instrument.described.address);
        if (next < probePorts.size()) {
            address = drivers::Address::atPath(probePorts[next++]);
        }
        if (address) {
            list.emplace_back(instrument, *address);
        }
    }
    return list;
}

std::vector<std::unique_ptr<ProbeThread>> attachProbes(const ledger::Book& book, const command::KioskOptions& options,
                                                       const drivers::Clock& clock, drivers::PortOpener& opener,
                                                       shop::ProvingDesk& desk) {
    std::vector<std::unique_ptr<ProbeThread>> threads;
    for (const auto& [instrument, address] : attachments(book, options.probePorts)) {
        const auto* description = drivers::findInstrument(instrument.described.catalogue);
        if (description == nullptr) {
            continue;
        }
        auto link = std::make_unique<drivers::InstrumentLink>(*description, address, clock, opener);
        const auto name = QString::fromStdString(instrument.instrument.name);
        const auto scale = description->scale();
        QObject::connect(link.get(), &drivers::InstrumentLink::sampled, &desk,
                         [&desk, name](const QVector<drivers::Sample>& samples) { desk.onSamples(name, samples); });
        QObject::connect(link.get(), &drivers::InstrumentLink::statusChanged, &desk,
                         [&desk, name, scale](const drivers::LinkStatus& status) {
                             desk.onLink(name, status, scale.step, scale.unit == drivers::ReadingUnit::fahrenheit);
                         });
        threads.push_back(std::make_unique<ProbeThread>(std::move(link)));
        threads.back()->start();
    }
    return threads;
}

bool hasDisplay() {
    return qEnvironmentVariableIsSet("DISPLAY") || qEnvironmentVariableIsSet("WAYLAND_DISPLAY") ||
           qEnvironmentVariableIsSet("QT_QPA_PLATFORM");
}

int openKiosk(const command::KioskOptions& options, int& argc, char** argv) {
    if (!hasDisplay()) {
        std::cerr << wording::Language::english().text("command.no-display") << std::endl;
        return 2;
    }
    screens::applyFontRules();
    QGuiApplication app{argc, argv};
    QCoreApplication::setApplicationName(QStringLiteral("Holdfast"));
    const drivers::SystemClock realTime;
    const drivers::ScaledClock scaled{options.speed, realTime.wall()};
    const drivers::Clock& clock = options.speed == 1.0 ? static_cast<const drivers::Clock&>(realTime) : scaled;

    auto book =
        ledger::Book::open(options.data, std::make_shared<records::ShopProjection>(), ledger::OpenMode::firstStart);
    if (!book) {
        return showFailure(app, book.error());
    }
    ledger::Writer writer{**book};
    const auto probePath = (options.data / "demo-probe").string();
    if (options.demo) {
        if (const auto written = demo::writeDemo(**book, writer, clock.wall(), probePath); !written) {
            return showFailure(app, written.error());
        }
    }
    const auto identity = shop::openShop(**book, clock.wall(), systemRandom);
    if (!identity) {
        return showFailure(app, identity.error());
    }

    if (const auto why = (*book)->readOnlyReason()) {
        std::cerr << wording::noticeOf(*why, wording::Kept::book, {}).line() << '\n' << why->what << std::endl;
    }

    shop::ProvingDesk desk{{**book, writer, clock, systemRandom, identity->kiosk, identity->dryer}};
    screens::KioskModel model;
    model.setPanelDiagonalInch(options.panelInch.value_or(15.6));
    screens::KioskPresenter presenter{desk, **book, clock, model};
    screens::WedgeFilter wedge{realTime};
    app.installEventFilter(&wedge);
    QObject::connect(&wedge, &screens::WedgeFilter::scanned, &presenter, &screens::KioskPresenter::scan);
    QObject::connect(&wedge, &screens::WedgeFilter::unusable, &presenter, &screens::KioskPresenter::scanUnreadable);

    QQmlApplicationEngine engine;
    if (!showWindow(engine, model, options.fullScreen)) {
        return 2;
    }
    desk.start();
    QMetaObject::invokeMethod(&presenter, &screens::KioskPresenter::start, Qt::QueuedConnection);

    drivers::SystemPortOpener opener;
    std::unique_ptr<demo::DemoTunnel> tunnel;
    if (options.demo && options.probePorts.empty()) {
        tunnel = std::make_unique<demo::DemoTunnel>(clock, probePath);
        QObject::connect(&presenter, &screens::KioskPresenter::rideExpected, tunnel.get(),
                         [&] { tunnel->expectRide(desk.state()); });
    }
    const auto probes = attachProbes(**book, options, clock, opener, desk);
    std::unique_ptr<drivers::LinkThread<drivers::ScannerLink>> scanner;
    if (!options.scannerPort.empty()) {
        auto link = std::make_unique<drivers::ScannerLink>(drivers::Address::atPath(options.scannerPort),
                                                           drivers::SerialSettings{}, clock, opener);
        QObject::connect(link.get(), &drivers::ScannerLink::scanned, &presenter, &screens::KioskPresenter::scan);
        QObject::connect(link.get(), &drivers::ScannerLink::unreadable, &presenter,
                         &screens::KioskPresenter::scanUnreadable);
        scanner = std::make_unique<drivers::LinkThread<drivers::ScannerLink>>(std::move(link));
        scanner->start();
    }
    return QGuiApplication::exec();
}

int writePictures(const std::filesystem::path& folder, int& argc, char** argv) {
    if (!hasDisplay()) {
        qputenv("QT_QPA_PLATFORM", "offscreen");
        qputenv("QT_QUICK_BACKEND", "software");
    }
    screens::applyFontRules();
    QGuiApplication app{argc, argv};
    const auto failure = screens::renderGallery(QString::fromStdString(folder.string()), screens::gallerySizes());
    if (!failure.isEmpty()) {
        std::cerr << failure.toStdString() << std::endl;
    }
    return failure.isEmpty() ? 0 : 2;
}

} // namespace

int main(int argc, char* argv[]) {
    command::Seams seams;
    seams.openKiosk = [&](const command::KioskOptions& options) { return openKiosk(options, argc, argv); };
    seams.writePictures = [&](const std::filesystem::path& folder) { return writePictures(folder, argc, argv); };
    seams.defaultData = shareFolder("holdfast");
    seams.defaultDemoData = shareFolder("holdfast-demo");
    seams.today = isoDay(drivers::SystemClock{}.wall());
    return command::runCommandLine(argc, argv, seams, std::cout, std::cerr);
}
