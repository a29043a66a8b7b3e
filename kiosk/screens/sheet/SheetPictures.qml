pragma ComponentBehavior: Bound
import QtQuick
import Holdfast.Screens

// A row of pictures: in the columns of the chart above if they fit there, else in rows of their own, each with its label.
SheetLabelled {
    id: root

    signal triggered(string id)
    readonly property real each: root.widthOf(root.block.underChart)
    readonly property real gap: Theme.px(14)
    readonly property real high: Theme.px(60)
    readonly property list<real> lefts: root.columnsOf(root.block.chart)
    readonly property bool inColumns: root.lefts.length > 0
    readonly property int perRow: Math.max(1, Math.floor((root.contentWidth + root.gap) / (root.cell + root.gap)))
    readonly property real cell: Math.max(root.each, root.labelOf(root.block.underChart))
    readonly property real line: root.inColumns ? root.high : root.high + Theme.px(32)

    contentNeeds: Theme.px(480)
    topAir: Theme.px(root.block.underChart ? 2 : 8)

    // Their argument is what they depend on: it is told anew with the pictures.
    function widthOf(underChart: bool): real {
        return Math.max(Theme.px(80), root.block.pictureWordWidth(Theme.unit, Theme.family) + Theme.px(12));
    }
    function labelOf(underChart: bool): real {
        return root.block.pictureLabelWidth(Theme.unit, Theme.family);
    }
    function columnsOf(chart: gradeChartState): list<real> {
        return root.block.pictureLefts(root.contentWidth, Theme.unit, Theme.family, root.each, Theme.px(12));
    }

    Repeater {
        model: root.block.pictures
        Item {
            id: cell
            required property int index
            required property pictureEntry entry
            readonly property int row: root.inColumns ? 0 : Math.floor(cell.index / root.perRow)
            x: root.inColumns ? root.lefts[cell.index] ?? 0 : (cell.index % root.perRow) * (root.cell + root.gap)
            y: cell.row * (root.line + root.gap)
            width: root.inColumns ? root.each : root.cell
            height: root.line

            Pressable {
                width: root.each
                height: root.high
                enabledTouch: cell.entry.id !== ""
                role: cell.entry.id !== "" ? Accessible.Button : Accessible.Graphic
                spoken: cell.entry.spoken !== "" ? cell.entry.spoken : Spoken.join([root.block.text, cell.entry.label, cell.entry.word])
                onActivated: root.triggered(cell.entry.id)
                PictureBox {
                    id: picture
                    anchors.fill: parent
                    source: cell.entry.source
                    word: cell.entry.word
                    due: cell.entry.due
                }
                Rectangle {
                    anchors.fill: parent
                    visible: cell.entry.id !== "" && !cell.entry.due
                    color: "transparent"
                    border.width: parent.down ? Theme.marked : Theme.hair
                    border.color: Theme.ink
                }
            }
            InkText {
                visible: !root.inColumns
                y: root.high + Theme.px(2)
                width: root.cell
                text: cell.entry.label
                strong: cell.entry.due
                color: cell.entry.due ? Theme.ink : Theme.ink2
                wrapMode: Text.Wrap
            }
        }
    }
}
