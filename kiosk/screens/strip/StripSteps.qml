pragma ComponentBehavior: Bound
import QtQuick
import Holdfast.Screens

// The steps of a strip as they lie. Arrow keys move along them, Enter chooses the last dark one.
Grid {
    id: root

    required property list<var> steps
    property int perRow: steps.length
    property real stepHeight: Theme.px(168)
    property real room: 0
    signal triggered(string id)

    readonly property real stepWidth: (room - (perRow - 1) * columnSpacing) / Math.max(1, perRow)
    readonly property real markHeight: Theme.px(32)
    columns: perRow
    columnSpacing: perRow > 8 ? Theme.px(12) : Theme.px(16)
    rowSpacing: Theme.px(4)

    property int wanted: -1
    function move(from: int, by: int) {
        const next = from + by;
        root.wanted = -1;
        root.wanted = next >= 0 && next < root.steps.length ? next : from;
    }

    component StripStep: Item {
        id: step
        required property int index
        required property stripStepState modelData
        readonly property bool dark: modelData.kind === Kinds.Dark || modelData.kind === Kinds.LastDark
        readonly property bool chosen: modelData.kind === Kinds.LastDark
        readonly property bool filled: step.dark !== press.down
        width: root.stepWidth
        height: root.stepHeight + root.markHeight

        readonly property bool wanted: root.wanted === index
        onWantedChanged: if (wanted) {
            press.forceActiveFocus(Qt.TabFocusReason);
        }

        Pressable {
            id: press
            width: parent.width
            height: root.stepHeight
            role: Accessible.RadioButton
            Accessible.checkable: true
            Accessible.checked: step.chosen
            spoken: step.modelData.value + ", " + step.modelData.word
            onActivated: root.triggered(step.modelData.id)
            Keys.onLeftPressed: root.move(step.index, -1)
            Keys.onRightPressed: root.move(step.index, 1)
            Keys.onUpPressed: root.move(step.index, -root.perRow)
            Keys.onDownPressed: root.move(step.index, root.perRow)
            Rectangle {
                anchors.fill: parent
                color: step.filled ? Theme.ink : Theme.clear
                border.width: Theme.strong
                border.color: Theme.ink
            }
            Column {
                anchors.centerIn: parent
                width: parent.width - Theme.px(12)
                InkText {
                    width: parent.width
                    horizontalAlignment: Text.AlignHCenter
                    wrapMode: Text.WordWrap
                    text: step.modelData.value
                    strong: true
                    size: !step.modelData.figure ? (step.width < Theme.px(130) ? Theme.text : Theme.lead) : step.width < Theme.px(140) ? Theme.figure : Theme.margin
                    color: step.filled ? Theme.paper : Theme.ink
                }
                InkText {
                    visible: text !== ""
                    width: parent.width
                    horizontalAlignment: Text.AlignHCenter
                    wrapMode: Text.WordWrap
                    text: step.modelData.word
                    strong: step.chosen
                    color: step.filled ? Theme.paper : Theme.ink2
                }
            }
        }
        Rectangle {
            visible: step.chosen
            y: press.height + Theme.px(8)
            width: parent.width
            height: Theme.px(8)
            color: Theme.ink
            Item {
                anchors.horizontalCenter: parent.horizontalCenter
                y: parent.height
                width: Theme.px(32)
                height: width / 2
                clip: true
                Rectangle {
                    anchors.horizontalCenter: parent.horizontalCenter
                    y: -height / 2
                    width: Theme.px(22)
                    height: width
                    rotation: 45
                    color: Theme.ink
                }
            }
        }
    }

    Repeater {
        model: root.steps
        StripStep {}
    }
}
