import QtQuick
import Holdfast.Screens

// What every control shares: touch, keys, focus ring, accessible name. It is its own live area; 15 mm at the least.
Item {
    id: root

    required property string spoken
    property bool enabledTouch: true
    readonly property bool isTouchTarget: root.enabledTouch && root.visible
    readonly property bool down: area.pressed || root.keyDown
    property bool keyDown: false
    property int role: Accessible.Button
    property real ringOutset: Theme.focusOutset
    signal activated

    activeFocusOnTab: root.enabledTouch
    Accessible.role: root.role
    Accessible.name: root.spoken
    Accessible.focusable: root.enabledTouch
    Accessible.onPressAction: root.activated()

    Keys.onPressed: event => {
        if (event.key === Qt.Key_Return || event.key === Qt.Key_Enter || event.key === Qt.Key_Space) {
            event.accepted = true;
            if (!event.isAutoRepeat) {
                root.keyDown = true;
                root.activated();
            }
        }
    }
    Keys.onReleased: event => {
        if (!event.isAutoRepeat) {
            root.keyDown = false;
        }
    }
    onActiveFocusChanged: root.keyDown = false

    MouseArea {
        id: area
        anchors.fill: parent
        enabled: root.enabledTouch
        onClicked: root.activated()
    }
    Rectangle {
        z: 2
        anchors.fill: parent
        anchors.margins: -root.ringOutset
        visible: root.activeFocus
        color: "transparent"
        border.width: Theme.focusWidth
        border.color: Theme.ink
    }
}
