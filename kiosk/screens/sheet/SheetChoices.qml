import QtQuick
import Holdfast.Screens

// One of several: the label at the left, the choices at the right, the chosen one filled.
Item {
    id: root

    required property SheetBlockModel block
    readonly property bool labelled: root.block.text !== ""
    signal triggered(string id)

    implicitHeight: Math.max(label.y + label.height, choices.y + choices.height) + Theme.px(6)
    InkText {
        id: label
        visible: root.labelled
        y: Theme.px(24)
        width: choices.x - Theme.gutter
        text: root.block.text
        wrapMode: Text.Wrap
    }
    ButtonRows {
        id: choices
        x: root.labelled ? Math.round(root.width * 0.36) : 0
        y: Theme.px(6)
        width: root.width - x
        fill: false
        choosing: true
        actions: root.block.actions
        chosenId: root.block.chosenId
        onTriggered: id => root.triggered(id)
    }
}
