import QtQuick
import Holdfast.Screens

// The live area of a row: 6 px dead above and below part it from its neighbours.
Pressable {
    id: root

    property bool filled: false

    anchors.fill: parent
    anchors.topMargin: Theme.deadEdge
    anchors.bottomMargin: Theme.deadEdge
    ringOutset: 0
    Rectangle {
        z: 3
        anchors.fill: parent
        visible: root.activeFocus && root.filled
        color: "transparent"
        border.width: Theme.focusWidth
        border.color: Theme.paper
    }
}
