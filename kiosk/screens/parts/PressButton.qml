import QtQuick
import Holdfast.Screens

// A ruled button; the primary one is filled. Pressing swaps the fill at once.
Pressable {
    id: root

    required property string label
    property string hint: ""
    property bool primary: false
    property int size: Theme.text
    readonly property bool filled: root.primary !== root.down
    readonly property real textWidth: measure.advanceWidth + Theme.px(32)

    spoken: root.hint === "" ? root.label : root.label + ", " + root.hint
    implicitHeight: Theme.button
    implicitWidth: Math.max(Theme.button, root.textWidth)

    Rectangle {
        anchors.fill: parent
        color: root.filled ? Theme.ink : Theme.paper
        border.width: Theme.strong
        border.color: Theme.ink
    }
    Column {
        anchors.centerIn: parent
        width: parent.width - Theme.px(16)
        InkText {
            width: parent.width
            text: root.label
            size: root.size
            strong: true
            color: root.filled ? Theme.paper : Theme.ink
            horizontalAlignment: Text.AlignHCenter
            wrapMode: Text.WordWrap
        }
        InkText {
            width: parent.width
            visible: root.hint !== ""
            text: root.hint
            color: root.filled ? Theme.paper : Theme.ink
            horizontalAlignment: Text.AlignHCenter
            wrapMode: Text.WordWrap
        }
    }
    TextMetrics {
        id: measure
        text: root.label
        font.family: Theme.family
        font.pixelSize: root.size
        font.bold: true
    }
}
