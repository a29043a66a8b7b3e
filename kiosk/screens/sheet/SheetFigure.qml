import QtQuick
import Holdfast.Screens

// A live value or a count at 40, what it is beside it; under it where the width is too small for both.
Item {
    id: root

    required property SheetBlockModel block
    readonly property real beside: figure.x + Math.min(root.width, figure.implicitWidth) + Theme.px(20)
    readonly property bool under: root.width - root.beside < Math.min(note.implicitWidth, Theme.px(280))

    implicitHeight: Math.max(figure.y + figure.height, note.y + note.height) + Theme.px(6)
    InkText {
        id: figure
        y: Theme.px(6)
        width: Math.min(root.width, implicitWidth)
        text: root.block.text
        strong: true
        size: Theme.figure
        wrapMode: Text.Wrap
    }
    InkText {
        id: note
        x: root.under ? 0 : root.beside
        y: root.under ? figure.y + figure.height : Theme.px(20)
        width: root.width - x
        text: root.block.note
        color: Theme.ink2
        wrapMode: Text.Wrap
    }
}
