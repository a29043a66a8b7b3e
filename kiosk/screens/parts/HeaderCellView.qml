import QtQuick
import Holdfast.Screens

// Two lines of the head; opens its place. The cells are joined, so 6 px on each side are dead.
Item {
    id: root

    required property headerCell cell
    property string how: root.cell.how
    property real least: 0
    property bool ruled: true
    property bool fill: false
    property real leftPad: 0
    signal opened(string place)

    readonly property real textWidth: Math.max(what.implicitWidth, how.implicitWidth)
    implicitWidth: Math.max(root.least, root.textWidth + Theme.px(32))
    height: Theme.header

    Rule {
        visible: root.ruled
        width: Theme.hair
        height: Theme.px(48)
        anchors.verticalCenter: parent.verticalCenter
    }
    InkText {
        id: what
        x: root.ruled ? Theme.px(16) : root.leftPad
        y: Theme.px(8)
        width: root.fill ? parent.width - x - Theme.px(12) : implicitWidth
        elide: root.fill ? Text.ElideRight : Text.ElideNone
        text: root.cell.what
        strong: true
    }
    InkText {
        id: how
        x: what.x
        y: Theme.px(36)
        width: what.width > 0 && root.fill ? what.width : implicitWidth
        elide: root.fill ? Text.ElideRight : Text.ElideNone
        text: root.how
        color: Theme.ink2
    }
    Pressable {
        anchors.fill: parent
        anchors.topMargin: Theme.deadEdge
        anchors.bottomMargin: Theme.deadEdge
        anchors.leftMargin: Theme.deadEdge
        anchors.rightMargin: Theme.deadEdge
        ringOutset: 0
        enabledTouch: root.cell.place !== ""
        spoken: root.cell.what + ", " + root.how
        onActivated: root.opened(root.cell.place)
    }
}
