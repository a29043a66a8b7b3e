pragma ComponentBehavior: Bound
import QtQuick
import Holdfast.Screens

// A sheet: the list at the left, the chosen thing at the right. Portrait: one of the two.
Item {
    id: root

    required property SheetPageModel model
    required property refusalState refusal
    property bool refused: false
    property list<var> refusalActions
    property bool portrait: false
    signal triggered(string id)

    readonly property bool compact: root.height < Theme.px(620)
    readonly property bool listShown: root.model.hasList && !(root.portrait && root.model.detailOnly)
    readonly property bool detailShown: !root.portrait || !root.listShown
    readonly property bool backShown: root.portrait && root.model.detailOnly && root.model.back.id !== ""
    readonly property real detailLeft: root.listShown && !root.portrait ? list.width : 0
    // Two columns of blocks, or one under the other.
    readonly property bool split: root.model.hasBeside && !root.portrait
    readonly property bool threeColumns: root.split && root.model.hasList

    SheetListColumn {
        id: list
        visible: root.listShown && !(root.portrait && root.refused)
        width: root.portrait ? parent.width : Theme.px(root.threeColumns ? 340 : 424)
        height: parent.height
        compact: root.compact
        model: root.model
        onTriggered: id => root.triggered(id)
    }
    Rule {
        visible: root.listShown && !root.portrait
        x: list.width
        width: Theme.hair
        height: parent.height
    }
    Item {
        id: detail
        visible: root.detailShown && !root.refused
        readonly property real leftWidth: root.split ? Math.round(detail.width * (root.threeColumns ? 0.5 : 0.65)) : detail.width
        x: root.detailLeft
        width: parent.width - x
        height: parent.height

        Item {
            id: top
            x: Theme.edge
            y: Theme.px(root.compact ? 6 : 12)
            width: detail.leftWidth - 2 * x
            height: Math.max(title.text === "" ? 0 : title.height, root.backShown ? back.height + Theme.px(6) : 0)
            PressButton {
                id: back
                visible: root.backShown
                label: root.model.back.label
                onActivated: root.triggered(root.model.back.id)
            }
            InkText {
                id: title
                x: root.backShown ? back.width + Theme.edge : 0
                anchors.verticalCenter: parent.verticalCenter
                width: parent.width - x
                text: root.model.title
                strong: true
                size: Theme.lead
                wrapMode: Text.Wrap
                Accessible.role: Accessible.Heading
                Accessible.name: text
            }
        }
        Rule {
            id: topRule
            visible: top.height > 0
            x: Theme.edge
            y: top.y + top.height + Theme.px(root.compact ? 6 : 10)
            strong: true
            width: detail.leftWidth - 2 * x
        }
        SheetBlockColumn {
            x: Theme.edge
            y: topRule.visible ? topRule.y + topRule.height : 0
            width: detail.leftWidth - 2 * x
            height: (buttonsRule.visible ? buttonsRule.y : parent.height - Theme.deadEdge) - y
            model: root.model
            blocks: root.model.blocks
            more: root.model.hasBeside && !root.split ? root.model.beside : null
            onTriggered: id => root.triggered(id)
        }
        Rule {
            id: buttonsRule
            visible: buttons.count + besideButtons.count > 0
            y: (besideButtons.count > 0 ? Math.min(buttons.y, besideButtons.y) : buttons.y) - Theme.px(16)
            strong: true
            width: parent.width
        }
        ButtonRows {
            id: buttons
            x: Theme.edge
            y: parent.height - height - Theme.px(16)
            width: detail.leftWidth - 2 * x
            brief: root.portrait
            actions: root.model.actions
            onTriggered: id => root.triggered(id)
        }
        Rule {
            visible: root.split
            x: detail.leftWidth
            width: Theme.hair
            height: parent.height
        }
        SheetBlockColumn {
            visible: root.split
            x: detail.leftWidth + Theme.edge
            width: parent.width - x - Theme.edge
            height: buttonsRule.visible ? buttonsRule.y : parent.height - Theme.deadEdge
            model: root.model
            blocks: root.split ? root.model.beside : null
            onTriggered: id => root.triggered(id)
        }
        ButtonRows {
            id: besideButtons
            x: root.split ? detail.leftWidth + Theme.edge : Theme.edge
            y: (root.split || buttons.count === 0 ? parent.height : buttons.y) - height - Theme.px(16)
            width: parent.width - x - Theme.edge
            brief: root.portrait
            actions: root.model.besideActions
            onTriggered: id => root.triggered(id)
        }
    }
    RefusalPanel {
        visible: root.refused
        x: root.detailLeft
        width: root.width - x
        height: root.height
        refusal: root.refusal
        ownActions: root.refusalActions
        onTriggered: id => root.triggered(id)
    }
}
