import QtQuick
import Holdfast.Screens

// A section begins: a strong rule, and its name under it.
Item {
    id: root

    required property SheetBlockModel block

    implicitHeight: words.y + words.height + Theme.px(4)
    Rule {
        y: Theme.px(14)
        strong: true
        width: parent.width
    }
    InkText {
        id: words
        y: Theme.px(26)
        width: parent.width
        text: root.block.text
        strong: true
        wrapMode: Text.Wrap
        Accessible.role: Accessible.Heading
        Accessible.name: text
    }
}
