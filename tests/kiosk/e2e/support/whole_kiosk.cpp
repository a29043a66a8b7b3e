#include "tests/kiosk/e2e/support/whole_kiosk.hpp"

#include "drivers/catalogue/catalogue.hpp"
#include "drivers/link/instrument_link.hpp"
#include "drivers/link/link_thread.hpp"
#include "drivers/link/scanner_link.hpp"
#include "kiosk/demo/demo_history.hpp"
#include "kiosk/demo/demo_shop.hpp"
#include "kiosk/records/shop_projection.hpp"
#include "kiosk/screens/font_rules.hpp"
#include "kiosk/screens/presenting/kiosk_presenter.hpp"
#include "kiosk/shop/opening/opening.hpp"
#include "kiosk/shop/testing/starters.hpp"

#include <catch2/catch.hpp>

#include <QGuiApplication>
#include <QQmlApplicationEngine>
#include <QQuickImageProvider>
#include <QQuickItem>
#include <QQuickWindow>
#include <QtQuickTest/quicktest.h>
#include <QtTest/QTest>

#include <algorithm>
#include <functional>
#include <random>

namespace holdfast::tests {

namespace ledger = kiosk::ledger;
namespace screens = kiosk::screens;
namespace shop = kiosk::shop;

namespace {

ledger::UuidRandom chance() {
    static std::mt19937_64 engine{20413};
    ledger::UuidRandom bytes{};
    for (auto& byte : bytes) {
        byte = static_cast<std::uint8_t>(engine() & 0xFFU);
    }
    return bytes;
}

void gather(QQuickItem* item, QList<QQuickItem*>& items) {
    if (!item->isVisible() || item->opacity() <= 0.0) {
        return;
    }
    items.append(item);
    for (QQuickItem* child : item->childItems()) {
        gather(child, items);
    }
}

/// Scrolls what scrolls so that all of the item can be pressed.
void bringIntoSight(QQuickItem* item) {
    for (auto* above = item->parentItem(); above != nullptr; above = above->parentItem()) {
        if (!above->inherits("QQuickFlickable")) {
            continue;
        }
        const auto rect = item->mapRectToItem(above, {0, 0, item->width(), item->height()});
        const auto at = above->property("contentY").toReal();
        const auto most = std::max(0.0, above->property("contentHeight").toReal() - above->height());
        if (rect.top() < 0.0) {
            above->setProperty("contentY", std::max(0.0, at + rect.top()));
        } else if (rect.bottom() > above->height()) {
            above->setProperty("contentY", std::min(most, at + rect.bottom() - above->height()));
        }
    }
}

} // namespace

void ensureScreen() {
    if (QCoreApplication::instance() != nullptr) {
        return;
    }
    qputenv("QT_QPA_PLATFORM", "offscreen");
    qputenv("QT_QUICK_BACKEND", "software");
    kiosk::screens::applyFontRules();
    static int argc = 1;
    static char name[] = "test_kiosk_screen";
    static char* argv[] = {name, nullptr};
    // Never deleted: at exit Qt's own statics are gone before ours, and ~QGuiApplication would use them.
    new QGuiApplication{argc, argv};
}

class WholeKiosk::Inside final {
public:
    explicit Inside(const Rig& rig) : m_clock{rig.clock()} {
        openBook(rig);
        makeDesk(rig);
        showWindow();
        m_desk->start();
        m_presenter->start();
        attachProbe(rig.probePort());
        attachScanner(rig.scannerPort());
    }

    [[nodiscard]] QList<QQuickItem*> items() const {
        QList<QQuickItem*> all;
        gather(window()->contentItem(), all);
        return all;
    }
    [[nodiscard]] QQuickWindow* window() const {
        return qobject_cast<QQuickWindow*>(m_engine.rootObjects().constFirst());
    }
    [[nodiscard]] const shop::ProvingState& state() const { return m_desk->state(); }
    [[nodiscard]] bool type(const char* text) {
        if (m_model.typePad().id.isEmpty()) {
            return false;
        }
        m_model.padEntered(QString::fromUtf8(text));
        return true;
    }
    [[nodiscard]] bool chooseRow(const QString& beginning) {
        auto* sheet = m_model.sheet();
        for (const auto& row : sheet->state().list) {
            if (row.title.startsWith(beginning) && !row.id.isEmpty()) {
                sheet->trigger(row.id);
                return true;
            }
        }
        return false;
    }
    [[nodiscard]] bool trigger(const QString& id) {
        for (const auto& block : m_model.sheet()->state().blocks) {
            if (std::any_of(block.actions.begin(), block.actions.end(),
                            [&](const screens::ActionState& action) { return action.id == id; })) {
                m_model.sheet()->trigger(id);
                return true;
            }
        }
        return false;
    }
    [[nodiscard]] bool scannerReady() const { return m_scannerState == drivers::LinkState::ready; }
    [[nodiscard]] bool press(const std::function<bool(const QString&)>& named) const {
        for (QQuickItem* item : items()) {
            if (item->property("isTouchTarget").toBool() && named(item->property("spoken").toString())) {
                bringIntoSight(item);
                QQuickTest::qWaitForPolish(window()); // else it is pressed where it stood before the page changed
                const auto centre = item->mapRectToScene({0, 0, item->width(), item->height()}).center().toPoint();
                QTest::mouseClick(window(), Qt::LeftButton, {}, centre);
                return true;
            }
        }
        return false;
    }

private:
    void openBook(const Rig& rig) {
        auto book = ledger::Book::open(rig.data(), std::make_shared<kiosk::records::ShopProjection>(),
                                       ledger::OpenMode::firstStart);
        REQUIRE(book);
        m_book = std::move(*book);
        m_writer = std::make_unique<ledger::Writer>(*m_book);
        REQUIRE(kiosk::demo::writeDemo(*m_book, *m_writer, m_clock.wall(), rig.probePort()));
    }

    void makeDesk(const Rig& rig) {
        const auto identity = kiosk::shop::openShop(*m_book, m_clock.wall(), chance, kiosk::shop::starterMethods());
        REQUIRE(identity);
        m_desk = std::make_unique<shop::ProvingDesk>(
            shop::DeskNeeds{*m_book, *m_writer, m_clock, chance, identity->kiosk, identity->dryer});
        m_presenter = std::make_unique<screens::KioskPresenter>(*m_desk, *m_book, m_clock, m_model, rig.data());
    }

    void showWindow() {
        m_engine.addImportPath(QStringLiteral(":/qt/qml"));
        m_engine.addImageProvider(QStringLiteral("picture"), m_presenter->makePictures().release());
        m_engine.setInitialProperties({{QStringLiteral("kiosk"), QVariant::fromValue(&m_model)}});
        m_engine.load(QUrl{QStringLiteral("qrc:/qt/qml/Holdfast/Screens/Main.qml")});
        REQUIRE_FALSE(m_engine.rootObjects().isEmpty());
        REQUIRE(window() != nullptr);
    }

    void attachProbe(const std::string& port) {
        const auto& description = probeDescription();
        auto link =
            std::make_unique<drivers::InstrumentLink>(description, drivers::Address::atPath(port), m_clock, m_opener);
        const auto name = QString::fromLatin1(kiosk::demo::kDemoProbe);
        QObject::connect(link.get(), &drivers::InstrumentLink::sampled, m_desk.get(),
                         [this, name](const QVector<drivers::Sample>& samples) { m_desk->onSamples(name, samples); });
        QObject::connect(link.get(), &drivers::InstrumentLink::statusChanged, m_desk.get(),
                         [this, name, step = description.scale().step](const drivers::LinkStatus& status) {
                             m_desk->onLink(name, status, step, false);
                         });
        m_probe = std::make_unique<drivers::LinkThread<drivers::InstrumentLink>>(std::move(link));
        m_probe->start();
    }

    void attachScanner(const std::filesystem::path& port) {
        auto link = std::make_unique<drivers::ScannerLink>(drivers::Address::atPath(port.string()),
                                                           drivers::SerialSettings{}, m_clock, m_opener);
        QObject::connect(link.get(), &drivers::ScannerLink::scanned, m_presenter.get(), &screens::KioskPresenter::scan);
        QObject::connect(link.get(), &drivers::ScannerLink::unreadable, m_presenter.get(),
                         &screens::KioskPresenter::scanUnreadable);
        QObject::connect(link.get(), &drivers::ScannerLink::statusChanged, m_presenter.get(),
                         [this](const drivers::LinkStatus& status) { m_scannerState = status.state; });
        m_scanner = std::make_unique<drivers::LinkThread<drivers::ScannerLink>>(std::move(link));
        m_scanner->start();
    }

    const drivers::Clock& m_clock;
    std::unique_ptr<ledger::Book> m_book;
    std::unique_ptr<ledger::Writer> m_writer;
    std::unique_ptr<shop::ProvingDesk> m_desk;
    screens::KioskModel m_model;
    std::unique_ptr<screens::KioskPresenter> m_presenter;
    QQmlApplicationEngine m_engine;
    drivers::SystemPortOpener m_opener;
    drivers::LinkState m_scannerState = drivers::LinkState::absent;
    std::unique_ptr<drivers::LinkThread<drivers::InstrumentLink>> m_probe;
    std::unique_ptr<drivers::LinkThread<drivers::ScannerLink>> m_scanner;
};

WholeKiosk::WholeKiosk(const Rig& rig) : m_inside{std::make_unique<Inside>(rig)} {}
WholeKiosk::~WholeKiosk() = default;

QStringList WholeKiosk::textsShown() const {
    QStringList texts;
    for (const QQuickItem* item : m_inside->items()) {
        const auto text = item->property("text").toString();
        if (item->inherits("QQuickText") && !text.isEmpty()) {
            texts.append(text);
        }
    }
    return texts;
}

bool WholeKiosk::shows(const char* text) const {
    return textsShown().contains(QString::fromUtf8(text));
}

bool WholeKiosk::showsPartly(const char* text) const {
    return textsShown().join(QLatin1Char{'\n'}).contains(QString::fromUtf8(text));
}

const kiosk::shop::ProvingState& WholeKiosk::state() const {
    return m_inside->state();
}

bool WholeKiosk::scannerReady() const {
    return m_inside->scannerReady();
}

bool WholeKiosk::press(const char* name) const {
    return m_inside->press([&](const QString& spoken) { return spoken == QString::fromUtf8(name); });
}

bool WholeKiosk::pressWhatBegins(const char* beginning) const {
    return m_inside->press([&](const QString& spoken) { return spoken.startsWith(QString::fromUtf8(beginning)); });
}

bool WholeKiosk::chooseRow(const char* beginning) const {
    return m_inside->chooseRow(QString::fromUtf8(beginning));
}

bool WholeKiosk::trigger(const char* id) const {
    return m_inside->trigger(QString::fromUtf8(id));
}

bool WholeKiosk::type(const char* text) const {
    return m_inside->type(text);
}

} // namespace holdfast::tests
