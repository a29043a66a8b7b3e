import QtQuick
import Holdfast.Screens

// Buttons among the blocks.
Item {
    id: root

    required property SheetBlockModel block
    signal triggered(string id)

    implicitHeight: buttons.height + 2 * buttons.y
    ButtonRows {
        id: buttons
        y: Theme.px(10)
        width: parent.width
        fill: false
        actions: root.block.actions
        onTriggered: id => root.triggered(id)
    }
}
