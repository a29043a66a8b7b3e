pragma ComponentBehavior: Bound
import QtQuick
import Holdfast.Screens

// Two halves side by side; under them their colours, edge to edge, so that the eye can judge; then the grade.
SheetLabelled {
    id: root

    signal triggered(string id)
    readonly property halvesState halves: root.block.halves
    readonly property list<var> both: [root.halves.left, root.halves.right]
    readonly property bool pictured: root.both[0].source.toString() + root.both[1].source.toString() + root.both[0].word + root.both[1].word !== ""
    readonly property bool measured: root.both[0].measured || root.both[1].measured
    readonly property bool upright: root.Window.height > root.Window.width
    readonly property real gap: Theme.px(12)
    readonly property real half: Math.floor((root.contentWidth - root.gap) / 2)

    stacked: true

    Column {
        width: root.contentWidth
        spacing: Theme.px(8)
        Row {
            spacing: root.gap
            Repeater {
                model: root.both
                Column {
                    id: side
                    required property halfEntry modelData
                    width: root.half
                    spacing: Theme.px(4)
                    InkText {
                        width: parent.width
                        text: side.modelData.caption
                        strong: true
                        wrapMode: Text.Wrap
                    }
                    Pressable {
                        id: press
                        visible: root.pictured
                        width: parent.width
                        height: Math.min(Math.round(width * 0.62), Theme.px(root.upright ? 240 : 184))
                        enabledTouch: side.modelData.id !== ""
                        role: side.modelData.id !== "" ? Accessible.Button : Accessible.Graphic
                        spoken: Spoken.join([side.modelData.caption, side.modelData.word])
                        onActivated: root.triggered(side.modelData.id)
                        PictureBox {
                            anchors.fill: parent
                            source: side.modelData.source
                            word: side.modelData.word
                            whole: true
                        }
                        Rectangle {
                            anchors.fill: parent
                            visible: side.modelData.id !== ""
                            color: "transparent"
                            border.width: press.down ? Theme.marked : Theme.hair
                            border.color: Theme.ink
                        }
                    }
                }
            }
        }
        Rectangle {
            visible: root.measured
            width: root.contentWidth
            height: Theme.px(64)
            color: "transparent"
            border.width: Theme.hair
            border.color: Theme.ink
            Repeater {
                model: root.both
                Rectangle {
                    id: patch
                    required property int index
                    required property halfEntry modelData
                    visible: modelData.measured
                    x: patch.index === 0 ? Theme.hair : Math.round(parent.width / 2)
                    y: Theme.hair
                    width: patch.index === 0 ? Math.round(parent.width / 2) - Theme.hair : parent.width - x - Theme.hair
                    height: parent.height - 2 * Theme.hair
                    color: modelData.measured ? modelData.colour : Theme.paper
                    Accessible.role: Accessible.Graphic
                    Accessible.name: Spoken.join([modelData.caption, modelData.figures])
                }
            }
        }
        Row {
            visible: root.measured
            spacing: root.gap
            Repeater {
                model: root.both
                InkText {
                    required property halfEntry modelData
                    width: root.half
                    text: modelData.figures
                    wrapMode: Text.Wrap
                }
            }
        }
        Item {
            visible: root.halves.grade !== "" || root.halves.gradeNote !== ""
            width: root.contentWidth
            height: Math.max(grade.height, note.height)
            Accessible.role: Accessible.StaticText
            Accessible.name: Spoken.join([root.halves.grade, root.halves.gradeNote])
            InkText {
                id: grade
                visible: text !== ""
                text: root.halves.grade
                strong: true
                size: Theme.figure
            }
            InkText {
                id: note
                x: grade.visible ? grade.width + Theme.px(20) : 0
                anchors.verticalCenter: parent.verticalCenter
                width: parent.width - x
                text: root.halves.gradeNote
                color: Theme.ink2
                wrapMode: Text.Wrap
            }
        }
    }
}
