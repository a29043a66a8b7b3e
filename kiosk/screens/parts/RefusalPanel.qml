pragma ComponentBehavior: Bound
import QtQuick
import Holdfast.Screens

// What cannot be done: what happened, what was kept, what to do. Stands in the right column until the next scan.
Rectangle {
    id: root

    required property refusalState refusal
    readonly property bool compact: root.height < Theme.px(430)
    signal triggered(string id)

    color: Theme.paper
    border.width: Theme.marked
    border.color: Theme.ink
    Accessible.role: Accessible.AlertMessage
    Accessible.name: [root.refusal.happened, root.refusal.kept, root.refusal.toDo].join(" ")

    MouseArea {
        anchors.fill: parent // what lies under the panel is out of reach
    }
    Flickable {
        id: flick
        anchors.fill: parent
        anchors.margins: Theme.px(root.compact ? 14 : 20)
        anchors.bottomMargin: buttons.height + Theme.px(root.compact ? 26 : 36)
        contentHeight: texts.height
        interactive: contentHeight > height + 1
        clip: interactive
        boundsBehavior: Flickable.StopAtBounds
        Column {
            id: texts
            width: flick.width
            InkText {
                width: parent.width
                text: root.refusal.happened
                strong: true
                font.pixelSize: Theme.lead
                wrapMode: Text.WordWrap
            }
            Item {
                width: 1
                height: Theme.px(root.compact ? 5 : 10)
            }
            Rule {
                strong: true
                width: parent.width
            }
            Item {
                width: 1
                height: Theme.px(7)
            }
            InkText {
                visible: text !== ""
                text: root.refusal.toDoHeading
                color: Theme.ink2
            }
            InkText {
                width: parent.width
                text: root.refusal.toDo
                wrapMode: Text.WordWrap
            }
            Item {
                width: 1
                height: Theme.px(root.compact ? 5 : 10)
            }
            Rule {
                width: parent.width
            }
            Item {
                width: 1
                height: Theme.px(7)
            }
            InkText {
                visible: text !== ""
                text: root.refusal.keptHeading
                color: Theme.ink2
            }
            InkText {
                width: parent.width
                text: root.refusal.kept
                wrapMode: Text.WordWrap
            }
        }
    }
    Row {
        id: buttons
        x: Theme.px(20)
        y: parent.height - height - Theme.px(root.compact ? 14 : 20)
        width: parent.width - 2 * x
        spacing: Theme.gutter
        readonly property int count: (help.visible ? 1 : 0) + (leave.visible ? 1 : 0)
        readonly property real each: (width - (count - 1) * spacing) / Math.max(1, count)
        PressButton {
            id: help
            visible: root.refusal.help.id !== ""
            width: buttons.each
            label: root.refusal.help.label
            primary: root.refusal.help.primary
            onActivated: root.triggered(root.refusal.help.id)
        }
        PressButton {
            id: leave
            visible: root.refusal.leave.id !== ""
            width: buttons.each
            label: root.refusal.leave.label
            onActivated: root.triggered(root.refusal.leave.id)
        }
    }
}
