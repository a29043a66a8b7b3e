pragma ComponentBehavior: Bound
import QtQuick
import Holdfast.Screens

// The nine grades, one of them chosen.
SheetLabelled {
    id: root

    signal triggered(string id)
    readonly property real each: Theme.px(58)
    readonly property real gap: Theme.px(13)
    readonly property int perRow: Math.max(1, Math.floor((root.contentWidth + root.gap) / (root.each + root.gap)))

    contentNeeds: root.block.actions.length * (root.each + root.gap) - root.gap
    Repeater {
        model: root.block.actions
        Pressable {
            id: key
            required property int index
            required property actionState modelData
            readonly property bool chosen: key.modelData.id === root.block.chosenId
            readonly property bool filled: key.chosen !== key.down
            x: (key.index % root.perRow) * (root.each + root.gap)
            y: Math.floor(key.index / root.perRow) * (Theme.button + root.gap)
            width: root.each
            height: Theme.button
            role: Accessible.RadioButton
            Accessible.checkable: true
            Accessible.checked: key.chosen
            spoken: Spoken.join([key.modelData.label, key.modelData.hint, root.spokenLabel])
            onActivated: root.triggered(key.modelData.id)
            Rectangle {
                anchors.fill: parent
                color: key.filled ? Theme.ink : Theme.paper
                border.width: Theme.strong
                border.color: Theme.ink
            }
            InkText {
                anchors.centerIn: parent
                text: key.modelData.label
                strong: true
                color: key.filled ? Theme.paper : Theme.ink
            }
        }
    }
}
