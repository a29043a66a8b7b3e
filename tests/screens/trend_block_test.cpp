#include "kiosk/screens/parts/trend_item.hpp"
#include "tests/screens/designed/invented_charts.hpp"
#include "tests/screens/page_faults.hpp"

#include <QAccessible>
#include <QSignalSpy>
#include <QtTest/QTest>
#include <catch2/catch.hpp>

using namespace holdfast;
using namespace holdfast::tests;
using kiosk::screens::KioskModel;
using kiosk::screens::SheetPageState;
using kiosk::screens::TrendChart;

namespace {

TrendChart* chartOf(const KioskView& view) {
    for (QQuickItem* item : view.visibleItems()) {
        if (auto* found = qobject_cast<TrendChart*>(item)) {
            return found;
        }
    }
    return nullptr;
}

QString nameOf(QQuickItem* item) {
    QAccessibleInterface* access = QAccessible::queryAccessibleInterface(item);
    return access == nullptr ? QString{} : access->text(QAccessible::Name);
}

/// The stop of the Tab key on the first chart, with the focus.
QQuickItem* focusedPoint(const KioskView& view) {
    for (QQuickItem* target : view.touchTargets()) {
        if (qobject_cast<TrendChart*>(target->parentItem()) != nullptr) {
            target->forceActiveFocus(Qt::TabFocusReason);
            return target;
        }
    }
    return nullptr;
}

QPoint placeOf(const TrendChart& chart, int target) {
    return (onScreen(chart).topLeft() + chart.layout().targets[target].at).toPoint();
}

} // namespace

TEST_CASE("every trends page loads and fits at every size, in both themes", "[screens][trendblock]") {
    for (const QSize& size : kiosk::screens::gallerySizes()) {
        const Complaints complaints;
        KioskView view(size);
        for (const auto& state : kiosk::screens::gallery()) {
            if (!state.name.startsWith(QStringLiteral("sheet-trends"))) {
                continue;
            }
            INFO(state.name.toStdString() << " at " << size.width() << "x" << size.height());
            const QString folder = qEnvironmentVariable("HOLDFAST_CHARTS"); // set to look at them
            for (const bool dark : {true, false}) {
                view.kiosk().setDark(dark);
                view.show(state);
                requireNone(textFaults(view, scrolls(state)));
                requireNone(touchFaults(view));
                if (!folder.isEmpty()) {
                    view.picture().save(QStringLiteral("%1/%2-%3-%4.png")
                                            .arg(folder, state.name, QString::number(size.width()),
                                                 dark ? QStringLiteral("dark") : QStringLiteral("light")));
                }
            }
            TrendChart* chart = chartOf(view);
            REQUIRE(chart != nullptr);
            REQUIRE(chart->layout().unsaid <= 1); // of the longest words one event may go without
            REQUIRE(chart->height() == Approx(chart->layout().height));
        }
        requireNone(complaints.all());
    }
}

TEST_CASE("a point that is touched triggers its run, one beside it does too", "[screens][trendblock][touch]") {
    KioskView view({1280, 800});
    view.show(stateNamed(QStringLiteral("sheet-trends")));
    TrendChart* chart = chartOf(view);
    QSignalSpy pressed(&view.kiosk(), &KioskModel::actionTriggered);
    QTest::mouseClick(&view.window(), Qt::LeftButton, {}, placeOf(*chart, 12));
    REQUIRE(pressed.count() == 1);
    REQUIRE(pressed.takeFirst().at(0).toString() == "trends.run.20312");
    QTest::mouseClick(&view.window(), Qt::LeftButton, {}, placeOf(*chart, 0) - QPoint(0, 30));
    REQUIRE(pressed.count() == 1);
    REQUIRE(pressed.takeFirst().at(0).toString() == "trends.run.20300");
    QTest::mouseClick(&view.window(), Qt::LeftButton, {}, onScreen(*chart).topLeft().toPoint() + QPoint(10, 10));
    REQUIRE(pressed.isEmpty()); // the sentence is no point
}

TEST_CASE("the keys go along the points and say each", "[screens][trendblock][keys]") {
    KioskView view({1280, 800});
    view.show(stateNamed(QStringLiteral("sheet-trends")));
    QQuickItem* point = focusedPoint(view);
    REQUIRE(nameOf(point).startsWith("run 20300"));
    REQUIRE(nameOf(point).endsWith("Arrow keys go along the runs."));
    QTest::keyClick(&view.window(), Qt::Key_Right);
    QTest::keyClick(&view.window(), Qt::Key_Right);
    REQUIRE(nameOf(point).startsWith("run 20302"));
    REQUIRE(onScreen(*point).contains(placeOf(*chartOf(view), 2)));
    QTest::keyClick(&view.window(), Qt::Key_PageDown); // the first that a rule speaks of
    REQUIRE(nameOf(point).startsWith("run 20328"));
    QTest::keyClick(&view.window(), Qt::Key_End);
    QSignalSpy pressed(&view.kiosk(), &KioskModel::actionTriggered);
    QTest::keyClick(&view.window(), Qt::Key_Return);
    REQUIRE(pressed.takeFirst().at(0).toString() == "trends.run.20339");
    REQUIRE(view.window().activeFocusItem() == point);
}

TEST_CASE("the point that the keys reach is in sight", "[screens][trendblock][keys]") {
    KioskView view({1280, 740});
    view.show(stateNamed(QStringLiteral("sheet-trends-long")));
    QQuickItem* point = focusedPoint(view);
    for (int step = 0; step < 40; ++step) {
        view.settle();
        INFO(nameOf(point).toStdString());
        REQUIRE(inSight(*point) == onScreen(*point));
        QTest::keyClick(&view.window(), Qt::Key_Right);
    }
}

TEST_CASE("a chart says in words what it shows", "[screens][trendblock]") {
    KioskView view({1280, 800});
    view.show(stateNamed(QStringLiteral("sheet-trends")));
    const QString name = nameOf(chartOf(view));
    REQUIRE(name.startsWith("The margin is sinking 1 °F a week since 16 October."));
    REQUIRE(name.contains("40 runs from 2 September to 25 November."));
}

TEST_CASE("new figures keep the point that has the focus, if it is still there", "[screens][trendblock][keys]") {
    KioskView view({1280, 800});
    view.show(stateNamed(QStringLiteral("sheet-trends")));
    const TrendChart* chart = chartOf(view);
    QQuickItem* point = focusedPoint(view);
    QTest::keyClick(&view.window(), Qt::Key_Right);
    SheetPageState page = view.kiosk().sheet()->state();
    page.blocks[0].trend.points.removeFirst();
    view.kiosk().sheet()->setState(page);
    view.settle();
    REQUIRE(view.window().activeFocusItem() == point);
    REQUIRE(chart->spokenPoint().startsWith("run 20301"));
    page.blocks[0].trend.points.clear();
    view.kiosk().sheet()->setState(page);
    view.settle();
    REQUIRE(chart->spokenPoint().isEmpty());
    QTest::keyClick(&view.window(), Qt::Key_Return); // nothing to press, nothing happens
}

TEST_CASE("the focus is seen on the chart", "[screens][trendblock][keys]") {
    KioskView view({1280, 800});
    view.show(stateNamed(QStringLiteral("sheet-trends")));
    const QImage before = view.picture();
    REQUIRE(focusedPoint(view) != nullptr);
    view.settle();
    const QPoint at = placeOf(*chartOf(view), 0);
    const QRect around(at - QPoint(20, 20), QSize(40, 40));
    REQUIRE(before.copy(around) != view.picture().copy(around));
}
