import QtQuick
import Holdfast.Screens

// A chart of the owner's under its own sentence. Its points are pressed where they stand. It is one stop of the Tab key,
// at the point that is held: arrow keys go along the points.
Item {
    id: root

    required property SheetBlockModel block
    signal triggered(string id)

    implicitHeight: chart.y + chart.height + Theme.px(12)
    Rule {
        visible: root.block.ruled
        width: parent.width
    }
    TrendChart {
        id: chart
        y: Theme.px(12)
        width: parent.width
        height: implicitHeight
        inks: Theme.inks
        unit: Theme.unit
        family: Theme.family
        chartState: root.block.trend
        focused: point.activeFocus
        onPointPressed: id => root.triggered(id)
        Accessible.role: Accessible.Graphic
        Accessible.name: Spoken.join([root.block.trend.title, root.block.trend.spoken])

        Item {
            id: point
            readonly property string spoken: Spoken.join([chart.spokenPoint, root.block.trend.pressHint])
            readonly property bool isTouchTarget: point.visible
            readonly property real least: Math.ceil(Theme.mm(15))
            visible: chart.targets > 0
            width: Math.min(chart.width, Math.max(point.least, chart.pointBox.width))
            height: Math.min(chart.height, Math.max(point.least, chart.pointBox.height))
            x: Math.max(0, Math.min(chart.width - width, chart.pointBox.x + (chart.pointBox.width - width) / 2))
            y: Math.max(0, Math.min(chart.height - height, chart.pointBox.y + (chart.pointBox.height - height) / 2))
            activeFocusOnTab: true
            Keys.onPressed: event => event.accepted = chart.walk(event.key, event.isAutoRepeat)
            Accessible.role: Accessible.Button
            Accessible.name: point.spoken
            Accessible.focusable: true
        }
    }
}
