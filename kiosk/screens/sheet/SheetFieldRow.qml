import QtQuick
import Holdfast.Screens

// One field. Pressed, it opens the pad.
Item {
    id: root

    required property sheetField entry
    readonly property bool empty: root.entry.value === ""
    readonly property bool faulty: root.entry.fault !== ""
    signal triggered(string id)

    implicitHeight: Math.max(label.y + label.height, box.height + (root.faulty ? fault.height + Theme.px(6) : 0))

    InkText {
        id: label
        y: Theme.px(18)
        width: box.x - Theme.gutter
        text: root.entry.label
        wrapMode: Text.Wrap
    }
    Pressable {
        id: box
        x: Math.round(root.width * 0.36)
        width: root.width - x
        height: Math.max(Theme.button, words.height + Theme.px(24))
        role: Accessible.EditableText
        spoken: Spoken.join([root.entry.label, root.empty ? root.entry.hint : root.entry.value, root.entry.fault])
        onActivated: root.triggered("field." + root.entry.id)
        Rectangle {
            anchors.fill: parent
            color: box.down ? Theme.ink : Theme.clear
            border.width: root.faulty ? Theme.marked : Theme.strong
            border.color: Theme.ink
        }
        InkText {
            id: words
            x: Theme.px(16)
            anchors.verticalCenter: parent.verticalCenter
            width: parent.width - 2 * x
            text: root.empty ? root.entry.hint : root.entry.value
            strong: !root.empty
            color: box.down ? Theme.paper : root.empty ? Theme.ink2 : Theme.ink
            wrapMode: Text.Wrap
        }
    }
    InkText {
        id: fault
        visible: root.faulty
        x: box.x
        y: box.height + Theme.px(6)
        width: box.width
        text: root.entry.fault
        strong: true
        wrapMode: Text.Wrap
    }
}
