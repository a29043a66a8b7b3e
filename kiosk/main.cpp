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
#include "kiosk/screens/presenting/demo_writing.hpp"
#include "kiosk/screens/presenting/kiosk_presenter.hpp"
#include "kiosk/screens/presenting/start_failure.hpp"
#include "kiosk/screens/tour/pictures.hpp"
#include "kiosk/screens/wedge_filter.hpp"
#include "kiosk/shop/opening/opening.hpp"
#include "kiosk/shop/testing/starters.hpp"
#include "kiosk/wording/notices.hpp"

#include <QEventLoop>
#include <QGuiApplication>
#include <QQmlComponent>
#include <QQmlEngine>
#include <QQuickImageProvider>
#include <QQuickWindow>
#include <QThread>
#include <QTimer>

#include <cstdlib>
#include <functional>
#include <future>
#include <iostream>
#include <malloc.h>
#include <memory>
#include <random>
#include <utility>

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

/// The window. Its QML is read by the engine's own thread from the moment this is made; show() waits for it.
class Face final {
public:
    Face() {
        m_engine.addImportPath(QStringLiteral(":/qt/qml"));
        QObject::connect(&m_engine, &QQmlEngine::quit, qApp, &QCoreApplication::quit, Qt::QueuedConnection);
        m_main.loadUrl(QUrl{QStringLiteral("qrc:/qt/qml/Holdfast/Screens/Main.qml")}, QQmlComponent::Asynchronous);
    }

    /// Somebody has closed what was shown.
    [[nodiscard]] bool isClosed() const { return m_window && !m_window->isVisible(); }

    /// False if the QML could not be loaded; why is in the log.
    [[nodiscard]] bool show(screens::KioskModel& model, bool fullScreen) {
        while (m_main.isLoading()) {
            QCoreApplication::processEvents(QEventLoop::WaitForMoreEvents);
        }
        m_window.reset(qobject_cast<QQuickWindow*>(
            m_main.createWithInitialProperties({{QStringLiteral("kiosk"), QVariant::fromValue(&model)}})));
        if (!m_window) {
            qWarning("%s", qPrintable(m_main.errorString()));
            return false;
        }
        if (fullScreen) {
            m_window->showFullScreen();
        }
        return true;
    }

    /// What "image://picture/…" shows, until dropPictures().
    void addPictures(std::unique_ptr<QQuickImageProvider> pictures) {
        m_engine.addImageProvider(QStringLiteral("picture"), pictures.release());
    }
    void dropPictures() { m_engine.removeImageProvider(QStringLiteral("picture")); }

    /// Calls `then` once the first frame is on the window, or after a second without one (a screen that is off).
    void afterFirstFrame(QObject& context, const std::function<void()>& then) {
        const auto once = [then, called = std::make_shared<bool>(false)] {
            if (!std::exchange(*called, true)) {
                then();
            }
        };
        QObject::connect(m_window.get(), &QQuickWindow::frameSwapped, &context, once,
                         static_cast<Qt::ConnectionType>(Qt::QueuedConnection | Qt::SingleShotConnection));
        QTimer::singleShot(std::chrono::seconds{1}, &context, once);
    }

private:
    QQmlEngine m_engine;
    QQmlComponent m_main{&m_engine};
    std::unique_ptr<QQuickWindow> m_window;
};

/// The book cannot be used: the screen says what happened, what was kept and what to do.
int showFailure(QGuiApplication& app, Face& face, const ledger::Failure& failure) {
    const auto notice = wording::noticeOf(failure, wording::Kept::book, {});
    std::cerr << notice.line() << '\n' << failure.what << std::endl;
    screens::KioskModel model;
    model.setState(screens::startFailureOf(notice, {}));
    QObject::connect(&model, &screens::KioskModel::actionTriggered, &app, [] { QCoreApplication::exit(2); });
    return face.show(model, false) ? (QGuiApplication::exec(), 2) : 2;
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

/// What is read from outside: the demo's tunnel, probes, the scanner, a counter.
class Links final {
public:
    Links(const ledger::Book& book, const command::KioskOptions& options, const drivers::Clock& clock,
          shop::ProvingDesk& desk, screens::KioskPresenter& presenter, std::string demoPort)
        : m_book{book}, m_options{options}, m_clock{clock}, m_desk{desk}, m_presenter{presenter}, m_demoPort{std::move(
                                                                                                      demoPort)} {}

    void start() {
        if (m_options.demo && m_options.probePorts.empty()) {
            m_tunnel = std::make_unique<demo::DemoTunnel>(m_clock, m_demoPort);
            QObject::connect(&m_presenter, &screens::KioskPresenter::rideExpected, m_tunnel.get(),
                             [this] { m_tunnel->expectRide(m_desk.state()); });
        }
        m_probes = attachProbes(m_book, m_options, m_clock, m_opener, m_desk);
        if (!m_options.scannerPort.empty()) {
            startScanner();
        }
        if (!m_options.counterPort.empty()) {
            startCounter();
        }
    }

private:
    void startScanner() {
        auto link = std::make_unique<drivers::ScannerLink>(drivers::Address::atPath(m_options.scannerPort),
                                                           drivers::SerialSettings{}, m_clock, m_opener);
        QObject::connect(link.get(), &drivers::ScannerLink::scanned, &m_presenter, &screens::KioskPresenter::scan);
        QObject::connect(link.get(), &drivers::ScannerLink::unreadable, &m_presenter,
                         &screens::KioskPresenter::scanUnreadable);
        m_scanner = std::make_unique<drivers::LinkThread<drivers::ScannerLink>>(std::move(link));
        m_scanner->start();
    }

    /// A light barrier or counter at the feed: a line is a piece, whatever it says.
    void startCounter() {
        auto link = std::make_unique<drivers::ScannerLink>(drivers::Address::atPath(m_options.counterPort),
                                                           drivers::SerialSettings{}, m_clock, m_opener);
        QObject::connect(link.get(), &drivers::ScannerLink::scanned, &m_desk,
                         [this] { m_desk.send(shop::PiecesPulsed{}); });
        QObject::connect(link.get(), &drivers::ScannerLink::statusChanged, &m_desk,
                         [this](const drivers::LinkStatus& status) {
                             m_desk.send(shop::CounterLink{status.state == drivers::LinkState::ready});
                         });
        m_counter = std::make_unique<drivers::LinkThread<drivers::ScannerLink>>(std::move(link));
        m_counter->start();
    }

    const ledger::Book& m_book;
    const command::KioskOptions& m_options;
    const drivers::Clock& m_clock;
    shop::ProvingDesk& m_desk;
    screens::KioskPresenter& m_presenter;
    std::string m_demoPort;
    drivers::SystemPortOpener m_opener;
    std::unique_ptr<demo::DemoTunnel> m_tunnel;
    std::vector<std::unique_ptr<ProbeThread>> m_probes;
    std::unique_ptr<drivers::LinkThread<drivers::ScannerLink>> m_scanner;
    std::unique_ptr<drivers::LinkThread<drivers::ScannerLink>> m_counter;
};

/// Before anything of Qt: what makes its start slow and buys a kiosk nothing.
void startLean(bool makesDemo) {
    if (!qEnvironmentVariableIsSet("QV4_JIT_CALL_THRESHOLD")) {
        qputenv("QV4_JIT_CALL_THRESHOLD", "1000"); // 6.4 compiles a binding at its third call, a sixth of the start
    }
#ifdef __GLIBC__
    if (!makesDemo) {              // two threads are at it then, and would wait for each other
        ::mallopt(M_ARENA_MAX, 1); // a thread's own arena grows by single pages, each a call of the kernel
    }
    ::mallopt(M_TOP_PAD, 4 << 20);
#endif
}

/// The demo's book is written on a thread of its own, with events for its desks, while the window says so. Waits for
/// the end of it, also if the window is closed.
ledger::Result<void> makeDemoBesideWindow(Face& face, screens::KioskModel& model, const command::KioskOptions& options,
                                          drivers::WallTime now, const std::string& probePath) {
    const wording::Speech speech;
    std::cerr << speech.text("commands.demo-writing") << std::endl;
    ledger::Result<void> made;
    const std::unique_ptr<QThread> thread{
        QThread::create([&] { made = demo::makeDemoBook(options.data, now, probePath); })};
    thread->start();
    const auto shown = screens::demoWritingShown(speech);
    model.setState(shown.frame);
    model.sheet()->setState(shown.page);
    if (!face.show(model, options.fullScreen)) {
        thread->wait();
        return tl::unexpected(ledger::Failure{ledger::FailureCode::inputOutput, "the window could not be made"});
    }
    QEventLoop waiting; // ends as well when the window is closed
    QTimer look;
    QObject::connect(&look, &QTimer::timeout, &waiting, [&] {
        if (thread->isFinished()) {
            waiting.quit();
        }
    });
    look.start(std::chrono::milliseconds{20});
    waiting.exec();
    thread->wait();
    return made;
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
    const bool makesDemo = options.demo && demo::wantsDemoBook(options.data);
    startLean(makesDemo);
    const auto open = [&options] {
        return ledger::Book::open(options.data, std::make_shared<records::ShopProjection>(),
                                  ledger::OpenMode::firstStart);
    };
    auto opening = makesDemo ? decltype(std::async(open)){} : std::async(std::launch::async, open);
    screens::applyFontRules();
    QGuiApplication app{argc, argv};
    QCoreApplication::setApplicationName(QStringLiteral("Holdfast"));
    Face face;
    const drivers::SystemClock realTime;
    const drivers::ScaledClock scaled{options.speed, realTime.wall()};
    const drivers::Clock& clock = options.speed == 1.0 ? static_cast<const drivers::Clock&>(realTime) : scaled;

    screens::KioskModel model;
    model.setPanelDiagonalInch(options.panelInch.value_or(15.6));

    const auto probePath = (options.data / "demo-probe").string();
    if (makesDemo) {
        const auto made = makeDemoBesideWindow(face, model, options, clock.wall(), probePath);
        if (!made) {
            return showFailure(app, face, made.error());
        }
        if (face.isClosed()) {
            return 0;
        }
        opening = std::async(std::launch::async, open);
    }
    auto book = opening.get();
    if (!book) {
        return showFailure(app, face, book.error());
    }
    ledger::Writer writer{**book};
    const auto identity = shop::openShop(**book, clock.wall(), systemRandom, shop::starterMethods());
    if (!identity) {
        return showFailure(app, face, identity.error());
    }

    if (const auto why = (*book)->readOnlyReason()) {
        std::cerr << wording::noticeOf(*why, wording::Kept::book, {}).line() << '\n' << why->what << std::endl;
    }

    shop::ProvingDesk desk{{**book, writer, clock, systemRandom, identity->kiosk, identity->dryer}};
    screens::KioskPresenter presenter{desk, **book, clock, model, options.data};
    screens::WedgeFilter wedge{realTime};
    app.installEventFilter(&wedge);
    QObject::connect(&wedge, &screens::WedgeFilter::scanned, &presenter, &screens::KioskPresenter::scan);
    QObject::connect(&wedge, &screens::WedgeFilter::unusable, &presenter, &screens::KioskPresenter::scanUnreadable);

    presenter.start();
    face.addPictures(presenter.makePictures());
    if (!makesDemo && !face.show(model, options.fullScreen)) {
        face.dropPictures();
        return 2;
    }
    Links links{**book, options, clock, desk, presenter, probePath};
    face.afterFirstFrame(app, [&] {
        desk.start();
        links.start();
    });
    const int code = QGuiApplication::exec();
    face.dropPictures(); // they read the book
    return code;
}

void drawWithoutScreen() {
    if (!hasDisplay()) {
        qputenv("QT_QPA_PLATFORM", "offscreen");
        qputenv("QT_QUICK_BACKEND", "software");
    }
}

int writePictures(const std::filesystem::path& folder, int& argc, char** argv) {
    drawWithoutScreen();
    screens::applyFontRules();
    QGuiApplication app{argc, argv};
    const auto failure = screens::drawTour(QString::fromStdString(folder.string()), screens::pictureSizes());
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
    seams.now = drivers::SystemClock{}.wall();
    seams.today = isoDay(seams.now);
    seams.readyToDraw = [&]() -> std::shared_ptr<void> {
        drawWithoutScreen();
        screens::applyFontRules();
        return std::make_shared<QGuiApplication>(argc, argv);
    };
    return command::runCommandLine(argc, argv, seams, std::cout, std::cerr);
}
