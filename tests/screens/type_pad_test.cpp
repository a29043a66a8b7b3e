#include "drivers/clock/clock.hpp"
#include "kiosk/screens/wedge_filter.hpp"
#include "tests/screens/page_faults.hpp"

#include <QGuiApplication>
#include <QSignalSpy>
#include <QtTest/QTest>
#include <catch2/catch.hpp>

using namespace holdfast;
using namespace holdfast::tests;
using namespace std::chrono_literals;
using kiosk::screens::KioskModel;
using kiosk::screens::TypePadState;
namespace SheetKinds = kiosk::screens::SheetKinds;

namespace {

/// The pad over a sheet, with what comes out of it.
struct Pad {
    KioskView view{{1280, 800}};
    QSignalSpy fields{&view.kiosk(), &KioskModel::fieldEntered};

    Pad(SheetKinds::Keys keys, const char* text) {
        view.show(stateNamed(QStringLiteral("sheet-runs")));
        TypePadState pad;
        pad.id = QStringLiteral("runs.name");
        pad.label = QStringLiteral("What it is");
        pad.text = QString::fromUtf8(text);
        pad.keys = keys;
        pad.letters = QStringLiteral("abcdefghijklmnñopqrstuvwxyz");
        view.kiosk().openPad(pad);
        view.settle();
    }
    [[nodiscard]] bool open() { return !view.kiosk().typePad().id.isEmpty(); }
    void touch(const char* label) {
        for (QQuickItem* target : view.touchTargets()) {
            if (target->property("spoken").toString() == QString::fromUtf8(label)) {
                QTest::mouseClick(&view.window(), Qt::LeftButton, Qt::NoModifier, onScreen(*target).center().toPoint());
                view.settle();
                return;
            }
        }
        FAIL("no key " << label);
    }
    void key(int code, const QString& text) {
        QKeyEvent press(QEvent::KeyPress, code, Qt::NoModifier, text);
        QCoreApplication::sendEvent(&view.window(), &press);
        QKeyEvent release(QEvent::KeyRelease, code, Qt::NoModifier, text);
        QCoreApplication::sendEvent(&view.window(), &release);
    }
    void type(const char* text) {
        for (const QChar sign : QString::fromUtf8(text)) {
            key(Qt::Key_unknown, QString(sign));
        }
    }
    [[nodiscard]] QString entered() {
        REQUIRE(fields.count() == 1);
        const QList<QVariant> said = fields.takeFirst();
        REQUIRE(said.at(0).toString() == "runs.name");
        REQUIRE(!open());
        return said.at(1).toString();
    }
};

} // namespace

TEST_CASE("touched keys write the field's text, its first letter a capital", "[screens][pad]") {
    Pad pad{SheetKinds::Text, ""};
    for (const char* key : {"R", "e", "d", "Space", "ñ", "7", "x", "Erase", "Capitals", "/", "Enter"}) {
        pad.touch(key);
    }
    REQUIRE(pad.entered() == QString::fromUtf8("Red ñ7/"));
}

TEST_CASE("a keyboard writes any sign into the field", "[screens][pad][keys]") {
    Pad pad{SheetKinds::Text, "Ab"};
    pad.type("ñ ¿;");
    pad.key(Qt::Key_Backspace, {});
    pad.key(Qt::Key_Return, QStringLiteral("\r"));
    REQUIRE(pad.entered() == QString::fromUtf8("Abñ ¿"));
}

TEST_CASE("the keyboard writes on while a key of the pad has the focus", "[screens][pad][keys]") {
    Pad pad{SheetKinds::Text, "Ab"};
    QTest::keyClick(&pad.view.window(), Qt::Key_Tab);
    REQUIRE(pad.view.window().activeFocusItem()->property("spoken").toString() == "1");
    pad.type("c");
    QTest::keyClick(&pad.view.window(), Qt::Key_Return); // presses the key with the focus
    pad.touch("Enter");
    REQUIRE(pad.entered() == "Abc1");
}

TEST_CASE("Escape and Close leave the field as it was", "[screens][pad]") {
    Pad pad{SheetKinds::Text, "Ab"};
    pad.type("c");
    pad.key(Qt::Key_Escape, {});
    REQUIRE(!pad.open());
    REQUIRE(pad.fields.isEmpty());
    Pad other{SheetKinds::Number, "12"};
    other.touch("Close");
    REQUIRE(!other.open());
    REQUIRE(other.fields.isEmpty());
}

TEST_CASE("after the pad the keys stand where they were", "[screens][pad][keys]") {
    Pad pad{SheetKinds::Text, ""};
    pad.key(Qt::Key_Escape, {});
    pad.view.settle();
    QTest::keyClick(&pad.view.window(), Qt::Key_Tab);
    QTest::keyClick(&pad.view.window(), Qt::Key_Tab);
    QQuickItem* stood = pad.view.window().activeFocusItem();
    TypePadState again;
    again.id = QStringLiteral("runs.name");
    pad.view.kiosk().openPad(again);
    pad.view.settle();
    REQUIRE(pad.view.window().activeFocusItem() != stood);
    pad.key(Qt::Key_Escape, {});
    pad.view.settle();
    REQUIRE(pad.view.window().activeFocusItem() == stood);
}

TEST_CASE("numbers, dates and codes hold only their own signs", "[screens][pad]") {
    Pad number{SheetKinds::Number, ""};
    for (const char* key : {"−", "1", "4", ".", "5"}) {
        number.touch(key);
    }
    number.type("a,2");
    number.touch("Enter");
    REQUIRE(number.entered() == "-14.5.2"); // whether it is a number the place says, in a sentence
    Pad date{SheetKinds::Date, ""};
    date.type("2026/11.30x");
    date.touch("Enter");
    REQUIRE(date.entered() == "2026-11-30");
    Pad code{SheetKinds::Code, ""};
    code.type("k29");
    code.touch("A");
    code.touch("Enter");
    REQUIRE(code.entered() == "K29A");
}

TEST_CASE("a secret shows no sign of what it is", "[screens][pad]") {
    Pad pad{SheetKinds::Secret, ""};
    pad.touch("4");
    pad.type("7");
    for (const QQuickItem* item : pad.view.visibleItems()) {
        if (item->inherits("QQuickTextInput")) {
            REQUIRE(item->property("displayText").toString() == QString::fromUtf8("••"));
        }
    }
    pad.touch("Enter");
    REQUIRE(pad.entered() == "47");
}

TEST_CASE("an empty text may be entered, to clear a field", "[screens][pad]") {
    Pad pad{SheetKinds::Text, "A"};
    pad.touch("Erase");
    pad.touch("Erase");
    pad.touch("Enter");
    REQUIRE(pad.entered().isEmpty());
}

TEST_CASE("another place closes the pad", "[screens][pad]") {
    Pad pad{SheetKinds::Text, ""};
    kiosk::screens::KioskState state = pad.view.kiosk().state();
    pad.view.kiosk().setState(state);
    REQUIRE(pad.open());
    state.place = QStringLiteral("inks");
    pad.view.kiosk().setState(state);
    REQUIRE(!pad.open());
    REQUIRE(pad.fields.isEmpty());
}

TEST_CASE("a scan while the pad is open is a scan and leaves no sign in the field", "[screens][pad][wedge]") {
    Pad pad{SheetKinds::Text, "Ab"};
    drivers::ManualClock clock;
    kiosk::screens::WedgeFilter filter{clock};
    QSignalSpy scans{&filter, &kiosk::screens::WedgeFilter::scanned};
    QGuiApplication::instance()->installEventFilter(&filter);
    for (const char sign : {'R', '2', '0', '4', '1'}) {
        clock.advance(5ms);
        QTest::keyClick(&pad.view.window(), sign);
    }
    clock.advance(5ms);
    QTest::keyClick(&pad.view.window(), Qt::Key_Return);
    REQUIRE(scans.count() == 1);
    REQUIRE(scans.takeFirst().at(0).toString().toUpper() == "R2041");
    REQUIRE(pad.open());
    for (const char sign : {'c', 'd'}) { // a person at the same keyboard
        clock.advance(200ms);
        QTest::keyClick(&pad.view.window(), sign);
    }
    clock.advance(200ms);
    QTest::keyClick(&pad.view.window(), Qt::Key_Return);
    QGuiApplication::instance()->removeEventFilter(&filter);
    REQUIRE(scans.isEmpty());
    REQUIRE(pad.entered() == "Abcd");
}
