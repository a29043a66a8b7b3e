pragma ComponentBehavior: Bound
import QtQuick
import Holdfast.Screens

// The black block: what the hand does next. Touching it opens the pad for codes.
Pressable {
    id: root

    required property actionState action

    spoken: root.action.label + ", " + root.action.hint

    readonly property color ground: root.down ? Theme.paper : Theme.ink
    readonly property color letters: root.down ? Theme.ink : Theme.paper
    // Widths of bars and gaps in 2 px: a picture of a code, not one that reads.
    readonly property list<int> bars: [2, 1, 1, 1, 1, 2, 1, 1, 2, 1, 3, 1, 1, 1, 1, 2, 4, 1, 1, 2, 2, 1, 1, 1, 2, 1, 3, 1, 1, 1, 2, 1, 1, 2, 3, 1, 1, 1, 2]

    Rectangle {
        anchors.fill: parent
        color: root.ground
        border.width: Theme.strong
        border.color: Theme.ink
    }
    Row {
        id: picture
        x: Theme.px(32)
        anchors.verticalCenter: parent.verticalCenter
        Repeater {
            model: root.bars
            Rectangle {
                required property int index
                required property int modelData
                width: modelData * Theme.px(2.5)
                height: Theme.px(64)
                color: index % 2 === 0 ? root.letters : root.ground
            }
        }
    }
    Column {
        x: picture.x + picture.width + Theme.px(32)
        width: parent.width - x - Theme.px(16)
        anchors.verticalCenter: parent.verticalCenter
        anchors.verticalCenterOffset: -Theme.px(2)
        InkText {
            width: parent.width
            text: root.action.label
            strong: true
            elide: Text.ElideRight
            size: Theme.figure
            color: root.letters
        }
        InkText {
            width: parent.width
            text: root.action.hint
            wrapMode: Text.WordWrap
            color: root.letters
        }
    }
}
