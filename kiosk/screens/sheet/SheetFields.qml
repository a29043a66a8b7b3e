pragma ComponentBehavior: Bound
import QtQuick
import Holdfast.Screens

// Fields to fill: the label at the left, the box to press at the right, what is wrong with it under it.
Column {
    id: root

    required property SheetBlockModel block
    signal triggered(string id)

    spacing: Theme.px(12)
    topPadding: Theme.px(8)
    bottomPadding: Theme.px(8)
    Repeater {
        model: root.block.fields
        SheetFieldRow {
            width: root.width
            onTriggered: id => root.triggered(id)
        }
    }
}
