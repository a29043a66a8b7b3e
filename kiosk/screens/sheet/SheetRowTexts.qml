import QtQuick
import Holdfast.Screens

// What a row says: mark, title over detail, value at the right. Everything wraps; the height is what that takes.
Item {
    id: root

    required property sheetRow entry
    property bool filled: false
    property real leftShare: 0.4
    readonly property bool heavy: root.entry.strong || root.filled
    readonly property real textX: root.entry.marked ? Theme.px(76) : 0
    readonly property real room: root.width - root.textX
    readonly property real gap: root.entry.value === "" ? 0 : Theme.px(16)
    // The value takes what it needs, but leaves the title its share as far as the title needs it.
    readonly property real valueWidth: Math.min(value.implicitWidth, Math.max(root.room * (1 - root.leftShare), root.room - title.implicitWidth) - root.gap)
    readonly property string spoken: Spoken.join([root.entry.title, root.entry.detail, root.entry.value])

    implicitHeight: Math.max(texts.height, root.entry.marked ? Theme.px(48) : 0)

    VerdictMark {
        visible: root.entry.marked
        anchors.verticalCenter: parent.verticalCenter
        width: Theme.px(60)
        height: Theme.px(48)
        inks: !root.filled ? Theme.inks : Theme.dark ? Palettes.light : Palettes.dark
        unit: Theme.unit
        kind: root.entry.mark
    }
    Column {
        id: texts
        x: root.textX
        anchors.verticalCenter: parent.verticalCenter
        width: root.room
        Item {
            width: parent.width
            height: Math.max(title.height, value.height)
            InkText {
                id: title
                width: parent.width - root.gap - root.valueWidth
                text: root.entry.title
                strong: root.heavy
                color: root.filled ? Theme.paper : Theme.ink
                wrapMode: Text.Wrap
            }
            InkText {
                id: value
                x: parent.width - width
                width: root.valueWidth
                text: root.entry.value
                strong: root.heavy
                color: root.filled ? Theme.paper : Theme.ink
                horizontalAlignment: Text.AlignRight
                wrapMode: Text.Wrap
            }
        }
        InkText {
            visible: text !== ""
            width: parent.width
            text: root.entry.detail
            color: root.filled ? Theme.paper : Theme.ink2
            wrapMode: Text.Wrap
        }
    }
}
