pragma ComponentBehavior: Bound
import QtQuick
import Holdfast.Screens

// Rows to press; those with depth hang on ruled elbows under the row they belong to.
Column {
    id: root

    required property SheetBlockModel block
    signal triggered(string id)
    readonly property real step: Theme.px(32)

    Repeater {
        id: rows
        model: root.block.rows
        Item {
            id: row
            required property int index
            required property sheetRow entry
            readonly property bool filled: row.entry.chosen !== press.down
            readonly property real depth: row.entry.indent * root.step
            readonly property int trunks: root.block.trunks[row.index] ?? 0
            width: root.width
            height: Math.max(Theme.row, texts.implicitHeight + Theme.px(16))

            Repeater {
                model: row.entry.indent
                Item {
                    id: elbow
                    required property int index
                    readonly property bool last: index === row.entry.indent - 1
                    readonly property bool goesOn: (row.trunks & (1 << index)) !== 0
                    x: index * root.step + Theme.px(11)
                    Rectangle {
                        visible: elbow.last || elbow.goesOn
                        width: Theme.strong
                        height: elbow.goesOn ? row.height : row.height / 2
                        color: Theme.ink2
                    }
                    Rectangle {
                        visible: elbow.last
                        y: row.height / 2 - height
                        width: Theme.px(14)
                        height: Theme.strong
                        color: Theme.ink2
                    }
                }
            }
            Rectangle {
                x: row.depth
                width: parent.width - x
                height: parent.height
                visible: row.filled
                color: Theme.ink
            }
            SheetRowTexts {
                id: texts
                x: row.depth + (row.filled ? Theme.gutter : 0)
                anchors.verticalCenter: parent.verticalCenter
                width: parent.width - x - (row.filled ? Theme.gutter : 0)
                entry: row.entry
                filled: row.filled
            }
            Rule {
                visible: row.index < rows.count - 1
                x: row.depth
                anchors.bottom: parent.bottom
                width: parent.width - x
            }
            SheetRowPress {
                id: press
                anchors.leftMargin: row.depth
                filled: row.filled
                enabledTouch: row.entry.id !== ""
                spoken: texts.spoken
                onActivated: root.triggered(row.entry.id)
            }
        }
    }
}
