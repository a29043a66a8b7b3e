import QtQuick
import Holdfast.Screens

// Run: the verdict band, then the print | the heat scale | what now. Portrait: print and what now over the scale; a
// closed window: print and scale over the ways out.
Item {
    id: root

    required property RunPageModel model
    required property refusalState refusal
    property bool refused: false
    property list<var> refusalActions
    property bool portrait: false
    signal triggered(string id)

    readonly property bool closed: root.model.waysOut.length > 0
    readonly property bool compact: !root.portrait && root.height < Theme.px(700)
    readonly property real sideWidth: Theme.px(closed ? 512 : 368)
    readonly property real middleTop: band.height
    readonly property real middleBottom: root.height - actionBar.height
    // What the right column (portrait: the print) needs; the scale takes the rest.
    readonly property real topNeeded: Math.max(Theme.px(353), printColumn.y - middleTop + Theme.px(58) + Theme.coreLayer * (root.model.layers.length + 1) + Theme.px(40))
    readonly property real split: root.middleTop + Math.min(root.topNeeded, root.closed ? Theme.px(401) : (root.middleBottom - root.middleTop) * 0.52)

    Band {
        id: band
        width: parent.width
        portrait: root.portrait
        band: root.model.band
    }
    PrintColumn {
        id: printColumn
        x: Theme.edge
        y: root.middleTop
        width: (root.portrait ? root.width / 2 : Theme.px(360)) - x - (root.portrait ? Theme.edge : Theme.px(16))
        height: (root.portrait ? root.split : root.middleBottom) - y
        model: root.model
        compact: root.compact
        withWindow: !root.portrait
        caution: root.portrait && !root.closed ? root.model.cautionShort : ""
    }
    Rule {
        id: firstRule
        x: root.portrait ? root.width / 2 : Theme.px(360)
        y: root.middleTop
        width: Theme.hair
        height: printColumn.height
    }
    HeatScale {
        id: scale
        x: root.portrait && !root.closed ? Theme.edge : firstRule.x + Theme.px(16)
        y: (root.portrait && !root.closed ? root.split + Theme.px(22) : root.middleTop + Theme.px(16))
        width: (root.portrait ? root.width - Theme.edge : secondRule.x - Theme.px(16)) - x
        height: (root.portrait && root.closed ? root.split - Theme.px(16) : root.middleBottom - Theme.px(root.closed ? 16 : 4)) - y
        inks: Theme.inks
        unit: Theme.unit
        family: Theme.family
        scaleState: root.model.scale
        Accessible.role: Accessible.Graphic
        Accessible.name: root.model.scale.spoken
    }
    Rule {
        id: secondRule
        visible: !root.portrait
        x: root.width - root.sideWidth
        y: root.middleTop
        width: Theme.hair
        height: root.middleBottom - y
    }
    Rule {
        visible: root.portrait
        strong: true
        y: root.split
        width: parent.width
    }
    Item {
        id: side
        x: !root.portrait ? secondRule.x + Theme.px(16) : root.closed ? Theme.edge : root.width / 2 + Theme.px(16)
        y: root.portrait && root.closed ? root.split : root.middleTop
        width: root.width - x - Theme.edge
        height: (root.portrait && !root.closed ? root.split : root.middleBottom) - y
        visible: !root.refused

        InkText {
            id: sideHeading
            y: Theme.px(root.compact ? 8 : 14)
            width: parent.width
            visible: text !== ""
            text: root.closed ? root.model.waysOutHeading : root.model.advice.length > 0 ? "" : root.model.readingsHeading
            color: Theme.ink2
        }
        WaysOut {
            y: Theme.px(root.compact ? 44 : 52)
            width: parent.width
            height: parent.height - y - Theme.px(12)
            visible: root.closed
            ways: root.model.waysOut
            more: root.model.waysOutMore
            onTriggered: id => root.triggered(id)
        }
        Advice {
            id: advice
            y: Theme.px(root.compact ? 8 : 14)
            width: parent.width
            height: (caution.visible ? caution.y : parent.height) - y - Theme.px(8)
            visible: !root.closed && root.model.advice.length > 0
            compact: root.compact || root.portrait
            sections: root.model.advice
        }
        PositionMark {
            visible: advice.visible && more
            x: parent.width + Theme.px(10)
            y: advice.y
            height: advice.height
            of: advice
        }
        LotColumn {
            y: Theme.px(root.compact ? 36 : 52)
            width: parent.width
            height: (caution.visible ? caution.y : parent.height) - y
            visible: !root.closed && root.model.advice.length === 0 && root.model.readings.length > 0
            compact: root.compact || root.portrait
            model: root.model
        }
        InkText {
            id: caution
            visible: !root.portrait && !root.closed && text !== ""
            y: parent.height - height - Theme.px(root.compact ? 8 : 16)
            width: parent.width
            text: root.model.caution
            color: Theme.ink2
            wrapMode: Text.WordWrap
        }
    }
    ActionBar {
        id: actionBar
        anchors.bottom: parent.bottom
        width: parent.width
        actions: root.refused ? root.refusalActions : root.model.actions
        onTriggered: id => root.triggered(id)
    }
    RefusalPanel {
        visible: root.refused
        x: side.x - Theme.px(16)
        y: side.y
        width: root.width - x
        height: side.height
        ownActions: []
        refusal: root.refusal
        onTriggered: id => root.triggered(id)
    }
}
