pragma ComponentBehavior: Bound
import QtQuick
import Holdfast.Screens

// Dryer: scan a run, what is on the belt, what was; what is due and on hold beside it. Portrait: one under the other.
Item {
    id: root

    required property DryerPageModel model
    required property refusalState refusal
    property bool refused: false
    property list<var> refusalActions
    property bool portrait: false
    // The first frame stands: before it the lists are empty and say nothing.
    property bool settled: true
    signal triggered(string id)

    readonly property bool compact: !root.portrait && root.height < Theme.px(640)
    readonly property real gap: Theme.px(compact ? 12 : 24)
    readonly property real sideWidth: Theme.px(448)
    readonly property real leftWidth: portrait ? width - 2 * Theme.edge : width - sideWidth - 2 * Theme.edge
    readonly property real sideTop: portrait ? earlier.y + earlier.height + Theme.px(16) : Theme.px(compact ? 8 : 14)
    readonly property real sideX: portrait ? Theme.edge : parting.x + Theme.edge
    readonly property real columnWidth: portrait ? (leftWidth - 2 * Theme.edge) / 2 : width - sideX - Theme.edge
    readonly property real listBottom: caution.y - Theme.px(compact ? 4 : 8)

    ScanBlock {
        x: Theme.edge
        y: root.gap
        width: root.leftWidth
        height: Theme.px(root.compact ? 96 : 112)
        action: root.model.scan
        onActivated: root.triggered(root.model.scan.id)
    }
    InkText {
        id: beltHeading
        x: Theme.edge
        y: root.gap + Theme.px(root.compact ? 96 + 8 : 112 + 22)
        width: root.leftWidth
        elide: Text.ElideRight
        text: root.model.belt.heading
        color: Theme.ink2
    }
    Rule {
        id: beltRule
        x: Theme.edge
        y: beltHeading.y + Theme.px(root.compact ? 32 : 38)
        strong: true
        width: root.leftWidth
    }
    BeltBlock {
        id: belt
        x: Theme.edge
        y: beltRule.y
        width: root.leftWidth
        height: implicitHeight
        compact: root.compact
        belt: root.model.belt
        onTriggered: id => root.triggered(id)
    }
    EarlierList {
        id: earlier
        x: Theme.edge
        y: belt.y + belt.height + Theme.px(root.compact ? 4 : 12)
        width: root.leftWidth
        height: root.portrait ? heightOf(3) : root.height - y
        heading: root.model.earlierHeading
        none: root.settled ? root.model.earlierNone : ""
        rows: root.settled ? root.model.earlier : []
        onTriggered: id => root.triggered(id)
    }
    Rule {
        id: parting
        visible: !root.portrait
        x: root.width - root.sideWidth
        width: Theme.hair
        height: parent.height
    }
    Item {
        anchors.fill: parent
        visible: !root.refused
        DueList {
            id: due
            x: root.sideX
            y: root.sideTop
            width: root.columnWidth
            height: root.portrait ? root.listBottom - y : Math.min(headHeight + 3 * Theme.row, (root.listBottom - y) * 0.58)
            heading: root.model.dueHeading
            none: root.settled ? root.model.dueNone : ""
            rows: root.settled ? root.model.due : []
            onTriggered: id => root.triggered(id)
        }
        HoldList {
            x: root.portrait ? due.x + due.width + 2 * Theme.edge : root.sideX
            y: root.portrait ? due.y : due.y + due.height + Theme.px(root.compact ? 6 : 32)
            width: root.columnWidth
            height: root.listBottom - y
            heading: root.model.holdHeading
            none: root.settled ? root.model.holdNone : ""
            rows: root.settled ? root.model.holds : []
            onTriggered: id => root.triggered(id)
        }
        InkText {
            id: caution
            x: root.sideX
            y: actions.y - height - Theme.px(root.compact ? 6 : 16)
            width: root.portrait ? root.leftWidth : root.columnWidth
            text: root.model.caution
            color: Theme.ink2
            wrapMode: Text.WordWrap
        }
        Row {
            id: actions
            x: root.sideX
            y: root.height - height - Theme.px(root.compact ? 12 : 24)
            spacing: Theme.gutter
            Repeater {
                model: root.model.actions
                PressButton {
                    required property actionState modelData
                    width: ((root.portrait ? root.leftWidth : root.columnWidth) - (root.model.actions.length - 1) * Theme.gutter) / root.model.actions.length
                    label: modelData.label
                    primary: modelData.primary
                    onActivated: root.triggered(modelData.id)
                }
            }
        }
    }
    RefusalPanel {
        visible: root.refused
        x: root.portrait ? 0 : parting.x
        y: root.portrait ? root.sideTop : 0
        width: root.width - x
        height: root.height - y
        refusal: root.refusal
        ownActions: root.refusalActions
        onTriggered: id => root.triggered(id)
    }
}
