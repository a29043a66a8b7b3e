pragma ComponentBehavior: Bound
import QtQuick
import Holdfast.Screens

// What cannot be done: what happened, what was kept, what to do. Stands in the right column until the next scan.
Rectangle {
    id: root

    required property refusalState refusal
    // On a page with an action bar the bar carries them, and this list is empty.
    required property list<var> ownActions
    readonly property bool compact: root.height < Theme.px(430)
    signal triggered(string id)

    color: Theme.paper
    border.width: Theme.marked
    border.color: Theme.ink
    Accessible.role: Accessible.AlertMessage
    Accessible.name: Spoken.join([root.refusal.happened, root.refusal.kept, root.refusal.toDo])

    MouseArea {
        anchors.fill: parent // what lies under the panel is out of reach
    }
    Flickable {
        id: flick
        anchors.fill: parent
        anchors.margins: Theme.px(root.compact ? 14 : 20)
        anchors.bottomMargin: root.ownActions.length > 0 ? buttons.height + Theme.px(root.compact ? 26 : 36) : Theme.px(14)
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
                size: Theme.lead
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
                visible: root.refusal.toDo !== ""
                text: root.refusal.toDoHeading
                color: Theme.ink2
            }
            InkText {
                visible: text !== ""
                width: parent.width
                text: root.refusal.toDo
                wrapMode: Text.WordWrap
            }
            Item {
                width: 1
                height: Theme.px(root.compact ? 5 : 10)
            }
            Rule {
                visible: root.refusal.toDo !== "" && root.refusal.kept !== ""
                width: parent.width
            }
            Item {
                width: 1
                height: Theme.px(7)
            }
            InkText {
                visible: root.refusal.kept !== ""
                text: root.refusal.keptHeading
                color: Theme.ink2
            }
            InkText {
                visible: text !== ""
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
        Repeater {
            model: root.ownActions
            PressButton {
                required property actionState modelData
                width: (buttons.width - (root.ownActions.length - 1) * buttons.spacing) / root.ownActions.length
                label: modelData.label
                primary: modelData.primary
                onActivated: root.triggered(modelData.id)
            }
        }
    }
}
