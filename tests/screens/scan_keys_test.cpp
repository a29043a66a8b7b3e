#include "drivers/clock/clock.hpp"
#include "kiosk/screens/wedge_filter.hpp"
#include "tests/screens/kiosk_view.hpp"

#include <QGuiApplication>
#include <QKeyEvent>
#include <QSignalSpy>
#include <QtTest/QTest>
#include <catch2/catch.hpp>

using namespace holdfast;
using namespace std::chrono_literals;

namespace {

class KeyWindow final : public QWindow {
public:
    QString typed;

protected:
    void keyPressEvent(QKeyEvent* event) override { typed += event->key() == Qt::Key_Return ? "\n" : event->text(); }
};

struct Desk {
    drivers::ManualClock clock;
    KeyWindow window;
    kiosk::screens::WedgeFilter filter{clock};
    QSignalSpy scans{&filter, &kiosk::screens::WedgeFilter::scanned};

    Desk() {
        window.resize(100, 100);
        window.show();
        QGuiApplication::instance()->installEventFilter(&filter);
    }
    ~Desk() { QGuiApplication::instance()->removeEventFilter(&filter); }
    Desk(const Desk&) = delete;
    Desk& operator=(const Desk&) = delete;

    void type(const char* text, std::chrono::milliseconds pace) {
        for (const char* sign = text; *sign != '\0'; ++sign) {
            clock.advance(pace);
            if (*sign == '\n') {
                QTest::keyClick(&window, Qt::Key_Return);
            } else {
                QTest::keyClick(&window, *sign);
            }
        }
    }
};

} // namespace

TEST_CASE("keys under 30 ms apart ended by Enter are a scan and reach no control", "[screens][wedge]") {
    tests::ensureApplication();
    Desk desk;
    desk.type("R2041\n", 5ms);
    REQUIRE(desk.scans.count() == 1);
    REQUIRE(desk.scans.takeFirst().at(0).toString().toUpper() == "R2041");
    REQUIRE(desk.window.typed.isEmpty());
}

TEST_CASE("what a person types arrives whole, and is no scan", "[screens][wedge]") {
    tests::ensureApplication();
    Desk desk;
    desk.type("2041\n", 120ms);
    REQUIRE(desk.scans.isEmpty());
    REQUIRE(desk.window.typed == "2041\n");
}
