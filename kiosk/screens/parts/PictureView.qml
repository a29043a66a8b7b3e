import QtQuick
import Holdfast.Screens

// A picture of the book, as large as the page, nothing of it cut off.
Rectangle {
    id: root

    required property pictureShown picture
    signal dismissed

    color: Theme.paper
    Accessible.role: Accessible.Dialog
    Accessible.name: root.picture.leave
    onVisibleChanged: if (root.visible) {
        leave.forceActiveFocus();
    }
    Keys.onEscapePressed: root.dismissed()

    MouseArea {
        anchors.fill: parent // what lies under it cannot be pressed
    }
    PictureBox {
        x: Theme.edge
        y: Theme.px(16)
        width: parent.width - 2 * x
        height: leave.y - y - Theme.px(16)
        source: root.picture.source
        word: ""
        whole: true
    }
    PressButton {
        id: leave
        x: Theme.edge
        y: parent.height - Theme.px(80)
        width: parent.width - 2 * x
        label: root.picture.leave
        primary: true
        onActivated: root.dismissed()
    }
}
