import QtQuick
import Holdfast.Screens

// A section begins: a strong rule, and its name under it. The first one begins at the rule that stands there already.
Item {
    id: root

    required property SheetBlockModel block
    readonly property bool first: (root.parent as SheetBlockView)?.first ?? false

    implicitHeight: words.y + words.height + Theme.px(4)
    Rule {
        visible: !root.first
        y: Theme.px(14)
        strong: true
        width: parent.width
    }
    InkText {
        id: words
        y: Theme.px(root.first ? 10 : 26)
        width: parent.width
        text: root.block.text
        strong: true
        wrapMode: Text.Wrap
        Accessible.role: Accessible.Heading
        Accessible.name: text
    }
}
