import QtQuick
import Holdfast.Screens

// Grades against cycles. Its figures stand in the label's column.
SheetLabelled {
    id: root

    contentNeeds: Theme.px(480)
    overhang: Theme.px(32)
    GradeChart {
        x: root.beside ? -root.overhang : 0
        width: root.contentWidth - x
        height: implicitHeight
        inks: Theme.inks
        unit: Theme.unit
        family: Theme.family
        chartState: root.block.chart
        Accessible.role: Accessible.Graphic
        Accessible.name: Spoken.join([root.spokenLabel, root.block.chart.spoken])
    }
}
