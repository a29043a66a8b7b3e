import QtQuick
import Holdfast.Screens

// A chart of the owner's under its own sentence. Its points are pressed where they stand; the keys go along them.
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
        readonly property string spoken: Spoken.join([root.block.trend.title, root.block.trend.spoken, chart.targets > 0 ? root.block.trend.pressHint : ""])
        readonly property bool isTouchTarget: chart.targets > 0 && chart.visible
        y: Theme.px(12)
        width: parent.width
        height: implicitHeight
        inks: Theme.inks
        unit: Theme.unit
        family: Theme.family
        chartState: root.block.trend
        activeFocusOnTab: chart.targets > 0
        onPointPressed: id => root.triggered(id)
        Accessible.role: chart.targets > 0 ? Accessible.Chart : Accessible.Graphic
        Accessible.name: chart.spoken
        Accessible.description: chart.activeFocus ? chart.spokenPoint : ""
        Accessible.focusable: chart.targets > 0
    }
}
