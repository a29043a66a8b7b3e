#include "kiosk/screens/font_rules.hpp"
#include "tests/screens/page_faults.hpp"

#include <QAccessible>
#include <QQmlApplicationEngine>
#include <QSignalSpy>
#include <QtTest/QTest>
#include <catch2/catch.hpp>

#include <algorithm>
#include <set>

using namespace holdfast;
using namespace holdfast::tests;
using kiosk::screens::gallery;
using kiosk::screens::gallerySizes;
using kiosk::screens::GalleryState;
using kiosk::screens::KioskModel;

TEST_CASE("the font is B612 and not the monospaced one that shares its name", "[screens][font]") {
    ensureApplication();
    REQUIRE(kiosk::screens::fontIsRight());
}

TEST_CASE("every state loads at every size in both themes without a complaint", "[screens][pages]") {
    ensureApplication();
    for (const QSize& size : gallerySizes()) {
        const Complaints complaints;
        KioskView view(size);
        for (const GalleryState& state : gallery()) {
            INFO(state.name.toStdString() << " at " << size.width() << "x" << size.height());
            view.show(state);
            view.kiosk().setDark(true);
            view.settle();
            view.kiosk().setDark(false);
            view.settle();
            requireNone(complaints.all());
        }
    }
}

TEST_CASE("no text is cut, clipped, off the page or over another in any state at any size", "[screens][pages]") {
    for (const QSize& size : gallerySizes()) {
        KioskView view(size);
        for (const GalleryState& state : gallery()) {
            INFO(state.name.toStdString() << " at " << size.width() << "x" << size.height());
            view.show(state);
            requireNone(textFaults(view, scrolls(state)));
        }
    }
}

TEST_CASE("every touch target is 15 mm at least and 3 mm from the next", "[screens][touch]") {
    for (const QSize& size : gallerySizes()) {
        KioskView view(size);
        for (const GalleryState& state : gallery()) {
            INFO(state.name.toStdString() << " at " << size.width() << "x" << size.height());
            view.show(state);
            REQUIRE(!view.touchTargets().isEmpty());
            requireNone(touchFaults(view));
        }
    }
}

TEST_CASE("every control has a name for a screen reader", "[screens][access]") {
    KioskView view({1280, 800});
    for (const GalleryState& state : gallery()) {
        view.show(state);
        for (QQuickItem* target : view.touchTargets()) {
            INFO(state.name.toStdString() << ": " << describe(*target));
            QAccessibleInterface* access = QAccessible::queryAccessibleInterface(target);
            REQUIRE(access != nullptr);
            REQUIRE(!access->text(QAccessible::Name).isEmpty());
            REQUIRE(access->role() != QAccessible::NoRole);
        }
    }
}

TEST_CASE("the Tab key reaches every control once and then starts again", "[screens][keys]") {
    KioskView view({1280, 800});
    for (const GalleryState& state : gallery()) {
        INFO(state.name.toStdString());
        view.show(state);
        std::set<const QQuickItem*> reached;
        const qsizetype count = view.touchTargets().size();
        for (qsizetype i = 0; i < count; ++i) {
            QTest::keyClick(&view.window(), Qt::Key_Tab);
            reached.insert(view.window().activeFocusItem());
        }
        for (const QQuickItem* target : view.touchTargets()) {
            INFO(describe(*target));
            // Of a long list the Tab key stops once; sheet_test walks along it with the arrows.
            const bool listed = target->property("walked").toBool() && !target->activeFocusOnTab();
            REQUIRE(reached.count(target) == (listed ? 0 : 1));
        }
    }
}

TEST_CASE("the order of focus is the order of the work", "[screens][keys]") {
    KioskView view({1280, 800});
    const auto tabbed = [&](int count) {
        QStringList names;
        for (int i = 0; i < count; ++i) {
            QTest::keyClick(&view.window(), Qt::Key_Tab);
            names.append(view.window().activeFocusItem()->property("spoken").toString());
        }
        return names;
    };
    view.show(stateNamed(QStringLiteral("run-not-proven")));
    REQUIRE(tabbed(5) == QStringList{"Send the probe again", "Strip", "Surface gun", "Problem", "Why?"});
    KioskView closed({1280, 800});
    closed.show(stateNamed(QStringLiteral("run-closed")));
    QTest::keyClick(&closed.window(), Qt::Key_Tab);
    REQUIRE(closed.window().activeFocusItem()->property("spoken").toString().startsWith("1, Black in low-cure"));
    closed.show(stateNamed(QStringLiteral("dryer"))); // another page starts at its beginning
    QTest::keyClick(&closed.window(), Qt::Key_Tab);
    REQUIRE(closed.window().activeFocusItem()->property("spoken").toString().startsWith("Scan a run"));
}

TEST_CASE("a touch and the Enter key both give the action's id", "[screens][actions]") {
    KioskView view({1280, 800});
    for (const GalleryState& state : gallery()) {
        if (state.name == QStringLiteral("scan-entry") || state.name.startsWith(QStringLiteral("pad"))) {
            continue; // their keys write and give no action
        }
        view.show(state);
        QSignalSpy spy(&view.kiosk(), &KioskModel::actionTriggered);
        for (QQuickItem* target : view.touchTargets()) {
            INFO(state.name.toStdString() << ": " << describe(*target));
            target->forceActiveFocus(Qt::TabFocusReason); // brings it into view where a part scrolls
            view.settle();
            QTest::mouseClick(&view.window(), Qt::LeftButton, Qt::NoModifier, onScreen(*target).center().toPoint());
            REQUIRE(spy.count() == 1);
            const QString touched = spy.takeFirst().at(0).toString();
            REQUIRE(!touched.isEmpty());
            QTest::keyClick(&view.window(), Qt::Key_Return);
            REQUIRE(spy.count() == 1);
            REQUIRE(spy.takeFirst().at(0).toString() == touched);
        }
    }
}

TEST_CASE("a press shows at once, before the finger leaves", "[screens][actions]") {
    KioskView view({1280, 800});
    view.show(stateNamed(QStringLiteral("run-cured")));
    QQuickItem* button = view.touchTargets().first();
    const QPoint at = onScreen(*button).center().toPoint();
    REQUIRE(!button->property("down").toBool());
    QTest::mousePress(&view.window(), Qt::LeftButton, Qt::NoModifier, at);
    REQUIRE(button->property("down").toBool());
    QTest::mouseRelease(&view.window(), Qt::LeftButton, Qt::NoModifier, at);
    REQUIRE(!button->property("down").toBool());
}

TEST_CASE("arrow keys walk along the steps of a strip", "[screens][keys]") {
    KioskView view({1280, 800});
    view.show(stateNamed(QStringLiteral("strip-asked")));
    QTest::keyClick(&view.window(), Qt::Key_Tab);
    REQUIRE(view.window().activeFocusItem()->property("spoken").toString().startsWith("all light"));
    QTest::keyClick(&view.window(), Qt::Key_Right);
    QTest::keyClick(&view.window(), Qt::Key_Right);
    INFO(describe(*view.window().activeFocusItem()));
    REQUIRE(view.window().activeFocusItem()->property("spoken").toString().startsWith("285"));
    QTest::keyClick(&view.window(), Qt::Key_Left);
    QSignalSpy spy(&view.kiosk(), &KioskModel::actionTriggered);
    QTest::keyClick(&view.window(), Qt::Key_Return);
    REQUIRE(spy.count() == 1);
    REQUIRE(spy.takeFirst().at(0).toString() == "step-280");
}

TEST_CASE("one page has at most one black button", "[screens][pages]") {
    KioskView view({1280, 800});
    for (const GalleryState& state : gallery()) {
        if (state.name.startsWith(QStringLiteral("strip"))) {
            continue; // there the chosen place is ink too, as a chosen thing is
        }
        INFO(state.name.toStdString());
        view.show(state);
        const QList<QQuickItem*> targets = view.touchTargets();
        const auto black = std::count_if(targets.begin(), targets.end(),
                                         [](QQuickItem* item) { return item->property("primary").toBool(); });
        REQUIRE(black <= 1);
    }
}

TEST_CASE("a code typed on the pad or on a keyboard comes out like a scan", "[screens][keys]") {
    KioskView view({800, 1280});
    view.show(stateNamed(QStringLiteral("scan-entry")));
    QSignalSpy codes(&view.kiosk(), &KioskModel::codeEntered);
    for (const char sign : {'R', 'i', '2', '8'}) { // i is no sign of a code and is left out
        QTest::keyClick(&view.window(), sign);
    }
    QTest::keyClick(&view.window(), Qt::Key_Return);
    REQUIRE(codes.count() == 1);
    REQUIRE(codes.takeFirst().at(0).toString() == "R28");
    REQUIRE(!view.kiosk().scanEntryOpen());
}

TEST_CASE("a wiping lock keeps touches from the page", "[screens][touch]") {
    KioskView view({1280, 800});
    view.show(stateNamed(QStringLiteral("run-cured")));
    const QPoint at = onScreen(*view.touchTargets().first()).center().toPoint();
    kiosk::screens::KioskState state = view.kiosk().state();
    state.touchLocked = QStringLiteral("Wiping: touch is off for 20 s.");
    view.kiosk().setState(state);
    view.settle();
    QSignalSpy spy(&view.kiosk(), &KioskModel::actionTriggered);
    QTest::mouseClick(&view.window(), Qt::LeftButton, Qt::NoModifier, at);
    REQUIRE(spy.isEmpty());
}

TEST_CASE("the shipped window opens with the kiosk's model", "[screens][pages]") {
    ensureApplication();
    const Complaints complaints;
    KioskModel kiosk;
    QQmlApplicationEngine engine;
    engine.addImportPath(QStringLiteral(":/qt/qml"));
    engine.setInitialProperties({{QStringLiteral("kiosk"), QVariant::fromValue(&kiosk)}});
    engine.load(QUrl(QStringLiteral("qrc:/qt/qml/Holdfast/Screens/Main.qml")));
    QCoreApplication::processEvents();
    requireNone(complaints.all());
    REQUIRE(engine.rootObjects().size() == 1);
}

TEST_CASE("a larger panel makes the same sizes in millimetres", "[screens][touch]") {
    KioskView view({1920, 1080});
    view.kiosk().setPanelDiagonalInch(21.5);
    view.show(stateNamed(QStringLiteral("run-closed")));
    requireNone(touchFaults(view));
}
