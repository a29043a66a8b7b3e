pragma ComponentBehavior: Bound
import QtQuick
import Holdfast.Screens

// Entry of a strip: which step is the last dark one, what that would prove, where it rode. A preview is no verdict.
Item {
    id: root

    required property StripPageModel model
    required property refusalState refusal
    property bool refused: false
    property list<var> refusalActions
    property bool portrait: false
    signal triggered(string id)

    readonly property bool compact: !root.portrait && root.height < Theme.px(700)
    readonly property int stepCount: root.model.steps.length
    readonly property real footTop: root.height - Theme.actionBar
    readonly property real lowerTop: steps.y + steps.height + Theme.px(portrait ? 8 : 16)
    readonly property real rightTop: portrait ? lowerTop + Theme.px(316) : lowerTop
    readonly property real scaleWidth: portrait ? width * 0.5 : Theme.px(440)

    InkText {
        id: title
        x: Theme.edge
        y: (titleRule.y - height) / 2
        width: progress.x - x - Theme.px(16)
        text: root.model.title
        strong: true
        wrapMode: Text.WordWrap
        size: titleMetrics.advanceWidth > progress.x - x - Theme.px(16) ? Theme.lead : Theme.figure
    }
    TextMetrics {
        id: titleMetrics
        text: root.model.title
        font.family: Theme.family
        font.pixelSize: Theme.figure
        font.bold: true
    }
    Row {
        id: progress
        x: parent.width - width - Theme.edge
        y: Theme.px(root.compact ? 24 : 30)
        spacing: Theme.px(32)
        Repeater {
            model: root.model.progress
            Column {
                id: part
                required property choiceState modelData
                spacing: Theme.px(6)
                InkText {
                    text: part.modelData.label
                    strong: part.modelData.chosen
                    color: part.modelData.chosen ? Theme.ink : Theme.ink2
                }
                Rectangle {
                    width: parent.width
                    height: part.modelData.chosen ? Theme.px(6) : Theme.px(2)
                    color: Theme.ink
                }
            }
        }
    }
    Rule {
        id: titleRule
        y: Theme.px(root.compact ? 80 : 94)
        strong: true
        width: parent.width
    }
    StripSteps {
        id: steps
        x: Theme.edge
        y: titleRule.y + Theme.px(root.compact ? 16 : 24)
        room: root.width - 2 * Theme.edge
        perRow: root.portrait ? Math.max(1, Math.ceil(root.stepCount / Math.ceil(root.stepCount / 5))) : Math.max(1, root.stepCount)
        stepHeight: Theme.px(root.portrait ? 120 : root.compact ? 136 : 168)
        steps: root.model.steps
        onTriggered: id => root.triggered(id)
    }
    Rule {
        y: root.lowerTop
        strong: true
        width: parent.width
    }
    HeatScale {
        x: Theme.edge
        y: root.lowerTop + Theme.px(16)
        width: root.scaleWidth - 2 * Theme.edge
        height: (root.portrait ? root.rightTop : root.footTop) - y - Theme.px(root.portrait ? 12 : 14)
        inks: Theme.inks
        unit: Theme.unit
        family: Theme.family
        scaleState: root.model.scale
        Accessible.role: Accessible.Graphic
        Accessible.name: root.model.scale.spoken
    }
    Rule {
        x: root.scaleWidth
        y: root.lowerTop
        width: Theme.hair
        height: (root.portrait ? root.rightTop : root.footTop) - y
    }
    StripPreviewColumn {
        visible: !root.refused
        x: root.scaleWidth + Theme.edge
        y: root.lowerTop
        width: (root.portrait ? root.width : rightRule.x) - x - Theme.edge
        height: (root.portrait ? root.rightTop : root.footTop) - y
        compact: root.compact
        preview: root.model.preview
    }
    Rule {
        id: rightRule
        x: root.portrait ? 0 : root.width - Theme.px(368)
        y: root.rightTop
        strong: root.portrait
        width: root.portrait ? root.width : Theme.hair
        height: root.portrait ? Theme.strong : root.footTop - y
    }
    Item {
        visible: !root.refused
        x: root.portrait ? Theme.edge : rightRule.x + Theme.edge
        y: root.rightTop
        width: root.width - x - Theme.edge
        height: root.footTop - y

        InkText {
            id: where
            y: Theme.px(root.compact ? 8 : 14)
            width: parent.width
            elide: Text.ElideRight
            text: root.model.positionsHeading
            color: Theme.ink2
        }
        ChoiceRow {
            id: positions
            y: where.y + Theme.px(root.compact ? 34 : 40)
            room: where.width
            choices: root.model.positions
            onTriggered: id => root.triggered(id)
        }
        ChoiceRow {
            id: marks
            y: positions.y + positions.height + Theme.px(12)
            room: where.width
            each: true
            choices: root.model.marks
            onTriggered: id => root.triggered(id)
        }
        PressButton {
            visible: root.model.keep.id !== ""
            y: parent.height - height - Theme.px(16)
            width: parent.width
            height: Math.min(Theme.px(120), parent.height - marks.y - marks.height - Theme.px(28))
            label: root.model.keep.label
            hint: root.model.keep.hint
            primary: true
            onActivated: root.triggered(root.model.keep.id)
        }
        InkText {
            visible: root.model.keep.id === ""
            y: marks.y + marks.height + Theme.px(24)
            width: parent.width
            text: root.model.keep.label
            strong: true
            size: Theme.lead
            wrapMode: Text.WordWrap
        }
    }
    Rule {
        y: root.footTop
        strong: true
        width: parent.width
    }
    ChoiceRow {
        id: placements
        visible: !root.refused
        x: Theme.edge
        y: root.footTop + Theme.px(16)
        room: Math.min(Theme.px(520), leave.x - 2 * Theme.edge)
        choices: root.model.placements
        onTriggered: id => root.triggered(id)
    }
    InkText {
        visible: !root.refused && !root.portrait
        x: placements.x + placements.room + Theme.edge
        y: root.footTop + (Theme.actionBar - height) / 2
        width: leave.x - x - Theme.edge
        text: root.model.footNote
        color: Theme.ink2
        wrapMode: Text.WordWrap
    }
    PressButton {
        id: leave
        visible: !root.refused
        x: parent.width - width - Theme.edge
        y: root.footTop + Theme.px(16)
        width: Math.max(Theme.px(296), textWidth)
        label: root.model.leave.label
        onActivated: root.triggered(root.model.leave.id)
    }
    RefusalPanel {
        visible: root.refused
        x: root.portrait ? 0 : root.scaleWidth
        y: root.portrait ? root.rightTop : root.lowerTop
        width: root.width - x
        height: root.height - y
        refusal: root.refusal
        ownActions: root.refusalActions
        onTriggered: id => root.triggered(id)
    }
}
