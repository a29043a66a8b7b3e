pragma ComponentBehavior: Bound
import QtQuick
import Holdfast.Screens

// What should lie on the shelf, a box a row: filled when it was counted there. The sum under it.
Item {
    id: root

    required property SheetBlockModel block
    signal triggered(string id)

    implicitHeight: rows.height + sum.height + Theme.px(14)
    Rule {
        visible: root.block.ruled
        width: parent.width
    }
    Column {
        id: rows
        width: parent.width
        Repeater {
            model: root.block.ticks
            Item {
                id: row
                required property int index
                required property tickEntry entry
                readonly property color lettering: press.down ? Theme.paper : Theme.ink
                width: root.width
                height: Math.max(Theme.row, left.height + Theme.px(16), right.height + Theme.px(16))

                Rectangle {
                    anchors.fill: parent
                    visible: press.down
                    color: Theme.ink
                }
                Rectangle {
                    id: box
                    x: Theme.px(8)
                    anchors.verticalCenter: parent.verticalCenter
                    width: Theme.px(32)
                    height: width
                    color: press.down ? Theme.ink : Theme.clear
                    border.width: Theme.px(3)
                    border.color: row.lettering
                    Rectangle {
                        anchors.fill: parent
                        anchors.margins: Theme.px(7)
                        visible: row.entry.ticked
                        color: row.lettering
                    }
                }
                Column {
                    id: left
                    x: box.x + box.width + Theme.px(20)
                    anchors.verticalCenter: parent.verticalCenter
                    width: parent.width - x - right.width - Theme.gutter
                    InkText {
                        width: parent.width
                        text: row.entry.title
                        strong: true
                        color: row.lettering
                        wrapMode: Text.Wrap
                    }
                    InkText {
                        visible: text !== ""
                        width: parent.width
                        text: row.entry.detail
                        color: press.down ? Theme.paper : Theme.ink2
                        wrapMode: Text.Wrap
                    }
                }
                Column {
                    id: right
                    x: parent.width - width - Theme.px(8)
                    anchors.verticalCenter: parent.verticalCenter
                    width: Math.min(Math.max(value.implicitWidth, word.implicitWidth), row.width * 0.4)
                    InkText {
                        id: value
                        visible: text !== ""
                        width: parent.width
                        text: row.entry.value
                        strong: true
                        color: row.lettering
                        horizontalAlignment: Text.AlignRight
                        wrapMode: Text.Wrap
                    }
                    InkText {
                        id: word
                        visible: text !== ""
                        width: parent.width
                        text: row.entry.word
                        color: row.lettering
                        horizontalAlignment: Text.AlignRight
                        wrapMode: Text.Wrap
                    }
                }
                Rule {
                    anchors.bottom: parent.bottom
                    width: parent.width
                }
                SheetRowPress {
                    id: press
                    enabledTouch: row.entry.id !== ""
                    role: Accessible.CheckBox
                    Accessible.checkable: true
                    Accessible.checked: row.entry.ticked
                    spoken: Spoken.join([row.entry.title, row.entry.detail, row.entry.value, row.entry.word])
                    onActivated: root.triggered(row.entry.id)
                }
            }
        }
    }
    Column {
        id: sum
        y: rows.height + Theme.px(10)
        width: parent.width
        InkText {
            visible: text !== ""
            width: parent.width
            text: root.block.text
            strong: true
            size: Theme.lead
            wrapMode: Text.Wrap
        }
        InkText {
            visible: text !== ""
            width: parent.width
            text: root.block.note
            color: Theme.ink2
            wrapMode: Text.Wrap
        }
    }
}
