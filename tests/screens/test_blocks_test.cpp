#include "kiosk/screens/parts/chart_items.hpp"
#include "kiosk/screens/parts/grade_chart_layout.hpp"
#include "tests/screens/page_faults.hpp"

#include <QAccessible>
#include <QSignalSpy>
#include <QtTest/QTest>
#include <catch2/catch.hpp>

using namespace holdfast;
using namespace holdfast::tests;
using kiosk::screens::GradeChart;
using kiosk::screens::KioskModel;
using kiosk::screens::PieceBar;
using kiosk::screens::SheetBlock;
using kiosk::screens::SheetPageState;

namespace {

template <typename Item>
Item* first(const KioskView& view) {
    for (QQuickItem* item : view.visibleItems()) {
        if (auto* found = qobject_cast<Item*>(item)) {
            return found;
        }
    }
    return nullptr;
}

QQuickItem* spoken(const KioskView& view, const QString& start) {
    for (QQuickItem* target : view.touchTargets()) {
        if (target->property("spoken").toString().startsWith(start)) {
            return target;
        }
    }
    return nullptr;
}

QString nameOf(QQuickItem* item) {
    QAccessibleInterface* access = QAccessible::queryAccessibleInterface(item);
    return access == nullptr ? QString{} : access->text(QAccessible::Name);
}

bool checked(QQuickItem* item) {
    return QAccessible::queryAccessibleInterface(item)->state().checked != 0;
}

SheetBlock* blockOf(SheetPageState& page, kiosk::screens::SheetKinds::Block kind) {
    for (SheetBlock& block : page.blocks) {
        if (block.kind == kind) {
            return &block;
        }
    }
    return nullptr;
}

} // namespace

TEST_CASE("the page of the picture stands without scrolling", "[screens][testblocks]") {
    KioskView view({1280, 800}); // tests.png
    view.show(stateNamed(QStringLiteral("sheet-tests")));
    QQuickItem* key = spoken(view, QStringLiteral("4.5"));
    REQUIRE(key != nullptr);
    REQUIRE(inSight(*key) == onScreen(*key));
}

TEST_CASE("each picture stands under its cycle of the chart", "[screens][testblocks]") {
    for (const QSize& size : {QSize{1280, 800}, QSize{1920, 1080}}) {
        KioskView view(size);
        view.show(stateNamed(QStringLiteral("sheet-tests")));
        auto* chart = first<GradeChart>(view);
        REQUIRE(chart != nullptr);
        const kiosk::screens::GradeChartLayout layout = layoutGradeChart(
            chart->chartState(), {.palette = chart->inks(), .unit = chart->unit(), .family = chart->family()},
            chart->width());
        const QStringList names = {"picture, new", "picture, 1", "picture, 2", "picture, 3", "picture, 4"};
        for (int cycle = 0; cycle < names.size(); ++cycle) {
            QQuickItem* picture = spoken(view, names[cycle]);
            INFO(names[cycle].toStdString());
            REQUIRE(picture != nullptr);
            const double under = onScreen(*chart).left() + layout.plot.left() + layout.axis.x(cycle);
            REQUIRE(onScreen(*picture).center().x() == Approx(under).margin(1.5));
        }
    }
}

TEST_CASE("a chart and a bar say in words what they show", "[screens][testblocks]") {
    KioskView view({1280, 800});
    view.show(stateNamed(QStringLiteral("sheet-tests")));
    REQUIRE(nameOf(first<GradeChart>(view)).endsWith("After wash 4: colour 4, stain 3.5. Wash 5 is due."));
    view.show(stateNamed(QStringLiteral("sheet-holds-shelf")));
    REQUIRE(nameOf(first<PieceBar>(view)).endsWith("Pull pieces 37 to 72 of 144."));
}

TEST_CASE("a bin is counted by one press, and the focus stays on it", "[screens][testblocks]") {
    KioskView view({1280, 800});
    view.show(stateNamed(QStringLiteral("sheet-holds-shelf")));
    QQuickItem* bin = spoken(view, QStringLiteral("Bin 14"));
    REQUIRE(bin != nullptr);
    REQUIRE(!checked(bin));
    bin->forceActiveFocus(Qt::TabFocusReason);
    QSignalSpy pressed(&view.kiosk(), &KioskModel::actionTriggered);
    QTest::keyClick(&view.window(), Qt::Key_Space);
    REQUIRE(pressed.takeFirst().at(0).toString() == "holds.bin.4");
    SheetPageState page = view.kiosk().sheet()->state();
    SheetBlock* shelf = blockOf(page, kiosk::screens::SheetKinds::Ticks);
    shelf->ticks[3].ticked = true;
    shelf->ticks[3].word = QStringLiteral("counted");
    view.kiosk().sheet()->setState(page);
    view.settle();
    REQUIRE(view.window().activeFocusItem() == bin);
    REQUIRE(checked(bin));
    REQUIRE(nameOf(bin).endsWith("counted"));
}

TEST_CASE("the chosen grade is told, and choosing keeps the focus", "[screens][testblocks]") {
    KioskView view({1280, 800});
    view.show(stateNamed(QStringLiteral("sheet-tests")));
    QQuickItem* key = spoken(view, QStringLiteral("3.5"));
    key->forceActiveFocus(Qt::TabFocusReason);
    SheetPageState page = view.kiosk().sheet()->state();
    blockOf(page, kiosk::screens::SheetKinds::GradeKeys)->chosenId = QStringLiteral("tests.grade.3.5");
    view.kiosk().sheet()->setState(page);
    view.settle();
    REQUIRE(view.window().activeFocusItem() == key);
    REQUIRE(checked(key));
    REQUIRE(nameOf(key) == "3.5, Grade now, colour, wash 5");
    REQUIRE(!checked(spoken(view, QStringLiteral("4.5"))));
}

TEST_CASE("a picture that the book does not have leaves its word", "[screens][testblocks]") {
    KioskView view({1280, 800});
    view.show(stateNamed(QStringLiteral("sheet-tests-half-missing")));
    bool found = false;
    for (const QQuickItem* item : view.visibleItems()) {
        found = found || item->property("text").toString() == "no picture yet";
    }
    REQUIRE(found);
}
