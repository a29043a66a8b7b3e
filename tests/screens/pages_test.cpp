#include "kiosk/screens/font_rules.hpp"
#include "tests/screens/kiosk_view.hpp"

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

namespace {

std::string describe(const QQuickItem& item) {
    const QRectF box = onScreen(item);
    const QString name = item.property("spoken").toString() + item.property("text").toString();
    return QStringLiteral("\"%1\" at %2,%3 size %4x%5")
        .arg(name)
        .arg(box.x())
        .arg(box.y())
        .arg(box.width())
        .arg(box.height())
        .toStdString();
}

bool isText(const QQuickItem& item) {
    return item.inherits("QQuickText") && !item.property("text").toString().isEmpty();
}

/// Where ink stands: the text's own extent, without the air of its line.
QRectF inkOf(const QQuickItem& text) {
    const double width = text.property("contentWidth").toDouble();
    const double height = text.property("contentHeight").toDouble();
    const int align = text.property("horizontalAlignment").toInt();
    double x = 0.0;
    if (align == Qt::AlignHCenter) {
        x = (text.width() - width) / 2.0;
    } else if (align == Qt::AlignRight) {
        x = text.width() - width;
    }
    const double air = text.property("lineHeight").toDouble() * 0.2;
    return text.mapRectToScene(QRectF(x, air, width, std::max(1.0, height - 2.0 * air)));
}

const QQuickItem* clippedBy(const QQuickItem& text, const QRectF& ink) {
    for (const QQuickItem* parent = text.parentItem(); parent != nullptr; parent = parent->parentItem()) {
        if (parent->clip() && !onScreen(*parent).adjusted(-1, -1, 1, 1).contains(ink)) {
            return parent;
        }
    }
    return nullptr;
}

QStringList textFaults(KioskView& view, bool scrolls) {
    QStringList faults;
    const QRectF page(QPointF(0, 0), QSizeF(view.window().size()));
    QList<QPair<const QQuickItem*, QRectF>> inks;
    for (const QQuickItem* item : view.visibleItems()) {
        if (!isText(*item)) {
            continue;
        }
        const QRectF ink = inkOf(*item);
        const QString who = QString::fromStdString(describe(*item));
        if (item->property("truncated").toBool()) {
            faults.append(QStringLiteral("cut short: ") + who);
        }
        if (item->property("contentWidth").toDouble() > item->width() + 1.0) {
            faults.append(QStringLiteral("wider than its box: ") + who);
        }
        if (clippedBy(*item, ink) != nullptr) {
            if (!scrolls) {
                faults.append(QStringLiteral("clipped: ") + who);
            }
            continue;
        }
        if (!page.contains(ink)) {
            faults.append(QStringLiteral("off the page: ") + who);
        }
        for (const auto& [other, otherInk] : inks) {
            if (otherInk.intersects(ink)) {
                faults.append(QStringLiteral("overlaps: ") + who + QStringLiteral(" and ") +
                              QString::fromStdString(describe(*other)));
            }
        }
        inks.append({item, ink});
    }
    return faults;
}

QStringList touchFaults(const KioskView& view) {
    QStringList faults;
    const double least = 15.0 * view.pxPerMm() - 0.5; // screens.md: at least 15 mm, 3 mm apart
    const double apart = 3.0 * view.pxPerMm() - 0.5;
    QList<QQuickItem*> seen;
    for (QQuickItem* target : view.touchTargets()) {
        const QRectF box = onScreen(*target);
        if (box.width() < least || box.height() < least) {
            faults.append(QStringLiteral("too small: ") + QString::fromStdString(describe(*target)));
        }
        for (const QQuickItem* other : seen) {
            const QRectF near = onScreen(*other);
            const double dx = std::max({0.0, near.left() - box.right(), box.left() - near.right()});
            const double dy = std::max({0.0, near.top() - box.bottom(), box.top() - near.bottom()});
            if (std::max(dx, dy) < apart) {
                faults.append(QStringLiteral("too close: ") + QString::fromStdString(describe(*target)) +
                              QStringLiteral(" and ") + QString::fromStdString(describe(*other)));
            }
        }
        seen.append(target);
    }
    return faults;
}

GalleryState stateNamed(const QString& name) {
    const std::vector<GalleryState> states = gallery();
    const auto found =
        std::find_if(states.begin(), states.end(), [&](const GalleryState& state) { return state.name == name; });
    REQUIRE(found != states.end());
    return *found;
}

void requireNone(const QStringList& faults) {
    INFO(faults.join(u'\n').toStdString());
    REQUIRE(faults.isEmpty());
}

} // namespace

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
            requireNone(textFaults(view, state.name == QStringLiteral("run-closed-many-layers")));
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
            REQUIRE(reached.count(target) == 1);
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
        if (state.name == QStringLiteral("scan-entry")) {
            continue; // its keys write a code and give no action
        }
        view.show(state);
        QSignalSpy spy(&view.kiosk(), &KioskModel::actionTriggered);
        for (QQuickItem* target : view.touchTargets()) {
            INFO(state.name.toStdString() << ": " << describe(*target));
            QTest::mouseClick(&view.window(), Qt::LeftButton, Qt::NoModifier, onScreen(*target).center().toPoint());
            REQUIRE(spy.count() == 1);
            const QString touched = spy.takeFirst().at(0).toString();
            REQUIRE(!touched.isEmpty());
            target->forceActiveFocus(Qt::TabFocusReason);
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
