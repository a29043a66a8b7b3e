#include "tests/screens/page_faults.hpp"

#include <QSignalSpy>
#include <QtTest/QTest>
#include <catch2/catch.hpp>

#include <set>

using namespace holdfast;
using namespace holdfast::tests;
using kiosk::screens::gallery;
using kiosk::screens::GalleryState;
using kiosk::screens::KioskModel;
using kiosk::screens::SheetPageState;

namespace {

QString spokenOf(const QQuickItem* item) {
    return item == nullptr ? QString{} : item->property("spoken").toString();
}

QString tab(KioskView& view) {
    QTest::keyClick(&view.window(), Qt::Key_Tab);
    view.settle();
    return spokenOf(view.window().activeFocusItem());
}

QQuickItem* targetNamed(const KioskView& view, const QString& start) {
    for (QQuickItem* target : view.touchTargets()) {
        if (spokenOf(target).startsWith(start)) {
            return target;
        }
    }
    return nullptr;
}

QList<QQuickItem*> reachable(const KioskView& view) {
    QList<QQuickItem*> found;
    for (QQuickItem* target : view.touchTargets()) {
        if (!inSight(*target).isEmpty()) {
            found.append(target);
        }
    }
    return found;
}

QQuickItem* listOf(const KioskView& view) {
    for (QQuickItem* item : view.visibleItems()) {
        if (item->inherits("QQuickListView")) {
            return item;
        }
    }
    return nullptr;
}

std::vector<GalleryState> sheets() {
    std::vector<GalleryState> found;
    for (const GalleryState& state : gallery()) {
        if (state.name.startsWith(QStringLiteral("sheet")) || state.name.startsWith(QStringLiteral("pad"))) {
            found.push_back(state);
        }
    }
    return found;
}

} // namespace

TEST_CASE("sheets and pads hold on a page 740 px high", "[screens][sheet]") {
    KioskView view({1280, 740});
    REQUIRE(sheets().size() >= 16);
    for (const GalleryState& state : sheets()) {
        INFO(state.name.toStdString());
        view.show(state);
        requireNone(textFaults(view, scrolls(state)));
        requireNone(touchFaults(view));
    }
}

TEST_CASE("the keys go along a sheet as the work does", "[screens][sheet][keys]") {
    KioskView view({1280, 800});
    view.show(stateNamed(QStringLiteral("sheet-runs")));
    const QStringList order = {"Run 20419",   "New run",     "From a list",   "Cotton",
                               "50/50 blend", "Polyester",   "Dark red",      "What it is",
                               "Pieces",      "Order",       "Wanted by",     "Yellow",
                               "Black",       "White",       "Keep the plan", "Print the ticket",
                               "Leave",       "Dryer",       "Run",           "Runs",
                               "Inks",        "Instruments", "Shop",          "Runs, 2 planned"};
    for (const QString& start : order) {
        INFO(start.toStdString());
        const QString reached = tab(view);
        INFO(reached.toStdString());
        REQUIRE(reached.startsWith(start));
    }
}

TEST_CASE("what the Tab key reaches is in sight", "[screens][sheet][keys]") {
    for (const QSize& size : {QSize{1280, 800}, QSize{800, 1280}, QSize{1280, 740}}) {
        KioskView view(size);
        for (const GalleryState& state : sheets()) {
            view.show(state);
            for (qsizetype i = view.touchTargets().size(); i > 0; --i) {
                INFO(state.name.toStdString() << ": " << tab(view).toStdString());
                const QQuickItem* reached = view.window().activeFocusItem();
                REQUIRE(inSight(*reached) == onScreen(*reached));
            }
        }
    }
}

TEST_CASE("arrow keys walk along a list of 500 of which few are made", "[screens][sheet][keys]") {
    KioskView view({1280, 800});
    view.show(stateNamed(QStringLiteral("sheet-runs-many")));
    const auto made = [&] {
        qsizetype rows = 0;
        for (const QQuickItem* target : view.touchTargets()) {
            rows += target->property("walked").toBool() ? 1 : 0;
        }
        return rows;
    };
    REQUIRE(made() > 5);
    REQUIRE(made() < 40);
    REQUIRE(tab(view).startsWith("Run 20419"));
    QTest::keyClick(&view.window(), Qt::Key_Down);
    QTest::keyClick(&view.window(), Qt::Key_Down);
    REQUIRE(spokenOf(view.window().activeFocusItem()).startsWith("Run 20417"));
    QTest::keyClick(&view.window(), Qt::Key_End);
    view.settle();
    const QQuickItem* last = view.window().activeFocusItem();
    REQUIRE(spokenOf(last).startsWith("Run 19920"));
    INFO(describe(*last));
    REQUIRE(inSight(*last) == onScreen(*last));
    REQUIRE(made() < 40);
    QSignalSpy spy(&view.kiosk(), &KioskModel::actionTriggered);
    QTest::keyClick(&view.window(), Qt::Key_Return);
    REQUIRE(spy.count() == 1);
    REQUIRE(spy.takeFirst().at(0).toString() == "runs.19920");
    REQUIRE(tab(view) == "New run");
    QTest::keyClick(&view.window(), Qt::Key_Backtab);
    REQUIRE(spokenOf(view.window().activeFocusItem()).startsWith("Run 19920"));
}

TEST_CASE("the state set again moves and rebuilds nothing", "[screens][sheet]") {
    KioskView view({1280, 800});
    view.show(stateNamed(QStringLiteral("sheet-runs-many")));
    QQuickItem* list = listOf(view);
    REQUIRE(list != nullptr);
    list->setProperty("contentY", 72.0 * 100);
    view.settle();
    const QList<QQuickItem*> before = reachable(view);
    SheetPageState state = view.kiosk().sheet()->state();
    state.blocks[0].text = QStringLiteral("The window is closed.");
    state.list[499].value = QStringLiteral("kept");
    for (int i = 0; i < 4; ++i) {
        view.kiosk().sheet()->setState(state);
        view.settle();
    }
    REQUIRE(reachable(view) == before);
    REQUIRE(list->property("contentY").toDouble() == 72.0 * 100);
    // A run that comes in on top does not take the rows away from under the finger.
    state.list.prepend({.id = QStringLiteral("runs.20420"), .title = QStringLiteral("Run 20420")});
    const QQuickItem* row = targetNamed(view, QStringLiteral("Run 20315"));
    REQUIRE(row != nullptr);
    const QRectF stood = onScreen(*row);
    view.kiosk().sheet()->setState(state);
    view.settle();
    REQUIRE(onScreen(*row) == stood);
}

TEST_CASE("a chosen row comes into view, and another list starts at its beginning", "[screens][sheet]") {
    KioskView view({1280, 800});
    view.show(stateNamed(QStringLiteral("sheet-runs-many")));
    SheetPageState state = view.kiosk().sheet()->state();
    state.list[0].chosen = false;
    state.list[300].chosen = true;
    view.kiosk().sheet()->setState(state);
    view.settle();
    const QQuickItem* row = targetNamed(view, QStringLiteral("Run 20119"));
    REQUIRE(row != nullptr);
    REQUIRE(inSight(*row) == onScreen(*row));
    view.show(stateNamed(QStringLiteral("sheet-inks")));
    const QQuickItem* family = targetNamed(view, QStringLiteral("Standard"));
    REQUIRE(family != nullptr);
    REQUIRE(inSight(*family) == onScreen(*family));
}

TEST_CASE("a finger drags list and blocks apart from each other", "[screens][sheet][touch]") {
    KioskView view({1280, 800});
    view.show(stateNamed(QStringLiteral("sheet-long")));
    const auto drag = [&](const QPoint& from) {
        QTest::mousePress(&view.window(), Qt::LeftButton, Qt::NoModifier, from);
        for (int dy = 10; dy <= 200; dy += 10) {
            QTest::mouseMove(&view.window(), from - QPoint(0, dy));
            view.settle();
        }
        QTest::mouseRelease(&view.window(), Qt::LeftButton, Qt::NoModifier, from - QPoint(0, 200));
    };
    QQuickItem* list = listOf(view);
    const QQuickItem* field = targetNamed(view, QStringLiteral("What it is"));
    REQUIRE(field != nullptr);
    const double fieldAt = onScreen(*field).y();
    QSignalSpy spy(&view.kiosk(), &KioskModel::actionTriggered);
    drag({200, 500});
    REQUIRE(list->property("contentY").toDouble() > 50.0);
    REQUIRE(onScreen(*field).y() == fieldAt);
    const double listAt = list->property("contentY").toDouble();
    drag({560, 500});
    REQUIRE(onScreen(*field).y() < fieldAt - 50.0);
    REQUIRE(std::abs(list->property("contentY").toDouble() - listAt) < 200.0);
    REQUIRE(spy.isEmpty()); // a drag is no press
}

TEST_CASE("a field asks for the pad by its id", "[screens][sheet]") {
    KioskView view({1280, 800});
    view.show(stateNamed(QStringLiteral("sheet-runs")));
    QSignalSpy spy(&view.kiosk(), &KioskModel::actionTriggered);
    QQuickItem* field = targetNamed(view, QStringLiteral("What it is"));
    REQUIRE(field != nullptr);
    QTest::mouseClick(&view.window(), Qt::LeftButton, Qt::NoModifier, onScreen(*field).center().toPoint());
    REQUIRE(spy.count() == 1);
    REQUIRE(spy.takeFirst().at(0).toString() == "field.runs.name");
}

TEST_CASE("upright, a sheet shows its list or the chosen thing with a way back", "[screens][sheet]") {
    KioskView view({800, 1280});
    view.show(stateNamed(QStringLiteral("sheet-runs")));
    REQUIRE(targetNamed(view, QStringLiteral("Run 20419")) != nullptr);
    REQUIRE(targetNamed(view, QStringLiteral("Keep the plan")) == nullptr);
    view.show(stateNamed(QStringLiteral("sheet-runs-detail")));
    REQUIRE(targetNamed(view, QStringLiteral("Run 20419")) == nullptr);
    REQUIRE(targetNamed(view, QStringLiteral("Keep the plan")) != nullptr);
    REQUIRE(tab(view) == "All runs");
}

TEST_CASE("a refusal lies over the blocks and gives its help", "[screens][sheet]") {
    for (const QSize& size : {QSize{1280, 800}, QSize{800, 1280}}) {
        KioskView view(size);
        view.show(stateNamed(QStringLiteral("sheet-runs-detail")));
        kiosk::screens::KioskState state = view.kiosk().state();
        state.refusal.happened = QStringLiteral("Bucket 291 is marked as bad.");
        state.refusal.leave = {.id = QStringLiteral("dismiss"), .label = QStringLiteral("Close")};
        view.kiosk().setState(state);
        view.settle();
        REQUIRE(targetNamed(view, QStringLiteral("Keep the plan")) == nullptr);
        REQUIRE(targetNamed(view, QStringLiteral("Close")) != nullptr);
        requireNone(textFaults(view, true));
        requireNone(touchFaults(view));
    }
}

TEST_CASE("nine places stand in one row, upright in two", "[screens][places]") {
    const auto rowsOf = [](const QSize& size) {
        KioskView view(size);
        view.show(stateNamed(QStringLiteral("sheet-long-detail")));
        std::set<int> heights;
        qsizetype places = 0;
        for (const QQuickItem* target : view.touchTargets()) {
            if (target->property("role").toInt() == static_cast<int>(QAccessible::PageTab)) {
                heights.insert(qRound(onScreen(*target).y()));
                ++places;
            }
        }
        REQUIRE(places == 9);
        return heights.size();
    };
    REQUIRE(rowsOf({1280, 800}) == 1);
    REQUIRE(rowsOf({1920, 1080}) == 1);
    REQUIRE(rowsOf({800, 1280}) == 2);
}
