pragma ComponentBehavior: Bound
import QtQuick
import Holdfast.Screens

// The readings of the lot and its state: the right column when nothing is wrong.
Item {
    id: root

    required property RunPageModel model
    property bool compact: false
    readonly property real rowHeight: Theme.px(root.compact ? 56 : 64)
    implicitHeight: foot.y + foot.height

    ListView {
        id: list
        width: parent.width
        height: Math.min(contentHeight, Math.max(root.rowHeight, root.height - foot.height - Theme.px(10)))
        model: root.model.readings
        interactive: contentHeight > height + 1
        clip: interactive
        boundsBehavior: Flickable.StopAtBounds
        delegate: Item {
            id: row
            required property int index
            required property readingRow modelData
            width: list.width
            height: root.rowHeight
            VerdictMark {
                anchors.verticalCenter: parent.verticalCenter
                width: Theme.px(60)
                height: Theme.px(48)
                inks: Theme.inks
                unit: Theme.unit
                kind: row.modelData.mark
            }
            InkText {
                x: Theme.px(84)
                width: margin.x - x - Theme.px(8)
                elide: Text.ElideRight
                anchors.verticalCenter: parent.verticalCenter
                text: row.modelData.where
                strong: row.modelData.current
            }
            InkText {
                id: margin
                anchors.right: parent.right
                anchors.verticalCenter: parent.verticalCenter
                text: row.modelData.margin
                strong: true
            }
            Rule {
                anchors.bottom: parent.bottom
                width: parent.width
                strong: row.index === list.count - 1
            }
        }
    }
    Column {
        id: foot
        y: list.height + Theme.px(root.compact ? 6 : 12)
        width: parent.width
        InkText {
            width: parent.width
            text: root.model.lotHeading
            color: Theme.ink2
            wrapMode: Text.WordWrap
        }
        InkText {
            width: parent.width
            text: root.model.lotState
            strong: true
            size: implicitTooWide ? Theme.lead : Theme.figure
            readonly property bool implicitTooWide: lotMetrics.advanceWidth > root.width
        }
        Item {
            width: 1
            height: Theme.px(root.compact ? 0 : 6)
        }
        InkText {
            width: parent.width
            text: root.model.lotNote
            color: Theme.ink2
            wrapMode: Text.WordWrap
        }
    }
    TextMetrics {
        id: lotMetrics
        text: root.model.lotState
        font.family: Theme.family
        font.pixelSize: Theme.figure
        font.bold: true
    }
}
