pragma ComponentBehavior: Bound
import QtQuick
import Holdfast.Screens

// A history: when at the left, then what, with its mark and its picture.
Item {
    id: root

    required property SheetBlockModel block
    signal triggered(string id)
    readonly property real when: Theme.px(96)

    implicitHeight: rows.height
    Rule {
        visible: root.block.ruled
        width: parent.width
    }
    Column {
        id: rows
        width: parent.width
        Repeater {
            id: entries
            model: root.block.trail
            Item {
                id: row
                required property int index
                required property trailEntry entry
                readonly property bool pictured: row.entry.pictured
                readonly property color lettering: press.down ? Theme.paper : Theme.ink
                readonly property color second: press.down ? Theme.paper : Theme.ink2
                width: root.width
                height: Math.max(Theme.row, when.height + Theme.px(16), texts.height + Theme.px(16), row.pictured ? Theme.px(76) : 0)

                Rectangle {
                    anchors.fill: parent
                    visible: press.down
                    color: Theme.ink
                }
                Column {
                    id: when
                    x: press.down ? Theme.px(6) : 0
                    anchors.verticalCenter: parent.verticalCenter
                    width: root.when - Theme.px(12)
                    InkText {
                        visible: text !== ""
                        width: parent.width
                        text: row.entry.time
                        strong: row.entry.strong
                        color: row.lettering
                        wrapMode: Text.Wrap
                    }
                    InkText {
                        visible: text !== ""
                        width: parent.width
                        text: row.entry.day
                        color: row.second
                        wrapMode: Text.Wrap
                    }
                }
                VerdictMark {
                    visible: row.entry.marked
                    x: root.when
                    anchors.verticalCenter: parent.verticalCenter
                    width: Theme.px(60)
                    height: Theme.px(48)
                    inks: !press.down ? Theme.inks : Theme.dark ? Palettes.light : Palettes.dark
                    unit: Theme.unit
                    kind: row.entry.mark
                }
                Column {
                    id: texts
                    x: root.when + (row.entry.marked ? Theme.px(76) : 0)
                    anchors.verticalCenter: parent.verticalCenter
                    width: row.width - x - (row.pictured ? Theme.px(96) : press.down ? Theme.px(6) : 0)
                    Item {
                        id: line
                        readonly property real gap: row.entry.value === "" ? 0 : Theme.gutter
                        width: parent.width
                        height: Math.max(title.height, value.height)
                        InkText {
                            id: title
                            width: parent.width - value.width - line.gap
                            text: row.entry.title
                            strong: row.entry.strong
                            color: row.lettering
                            wrapMode: Text.Wrap
                        }
                        InkText {
                            id: value
                            x: parent.width - width
                            width: Math.min(implicitWidth, Math.max(parent.width * 0.5, parent.width - title.implicitWidth - line.gap))
                            text: row.entry.value
                            strong: row.entry.strong
                            color: row.lettering
                            horizontalAlignment: Text.AlignRight
                            wrapMode: Text.Wrap
                        }
                    }
                    InkText {
                        visible: text !== ""
                        width: parent.width
                        text: row.entry.detail
                        color: row.second
                        wrapMode: Text.Wrap
                    }
                }
                PictureBox {
                    visible: row.pictured
                    x: row.width - width
                    anchors.verticalCenter: parent.verticalCenter
                    width: Theme.px(80)
                    height: Theme.px(60)
                    source: row.entry.source
                    word: ""
                }
                Rule {
                    visible: row.index < entries.count - 1
                    anchors.bottom: parent.bottom
                    width: parent.width
                }
                SheetRowPress {
                    id: press
                    enabledTouch: row.entry.id !== ""
                    spoken: Spoken.join([row.entry.day, row.entry.time, row.entry.title, row.entry.detail, row.entry.value])
                    onActivated: root.triggered(row.entry.id)
                }
            }
        }
    }
}
