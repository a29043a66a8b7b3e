import QtQuick
import Holdfast.Screens

// A sentence, the answer (28 bold), or a note in second ink.
Item {
    id: root

    required property SheetBlockModel block
    readonly property bool lead: root.block.kind === SheetKinds.Lead

    implicitHeight: words.height + 2 * words.y
    InkText {
        id: words
        y: Theme.px(6)
        width: parent.width
        text: root.block.text
        strong: root.lead
        size: root.lead ? Theme.lead : Theme.text
        color: root.block.kind === SheetKinds.Note ? Theme.ink2 : Theme.ink
        wrapMode: Text.Wrap
    }
}
