pragma ComponentBehavior: Bound
import QtQuick
import Holdfast.Screens

// The runs of today, newest first; as many whole rows as fit, the rest by scrolling.
Item {
    id: root

    required property string heading
    required property string none
    required property list<var> rows
    signal triggered(string id)

    readonly property real headHeight: Theme.px(38)
    function heightOf(count: int): real {
        return root.headHeight + count * Theme.row;
    }

    InkText {
        width: parent.width
        elide: Text.ElideRight
        text: root.heading
        color: Theme.ink2
    }
    Rule {
        y: root.headHeight - height
        strong: true
        width: parent.width
    }
    InkText {
        y: root.headHeight + Theme.px(16)
        visible: root.rows.length === 0
        width: parent.width
        text: root.none
        wrapMode: Text.WordWrap
    }
    ListView {
        id: list
        y: root.headHeight
        width: parent.width
        height: Math.min(contentHeight, Math.max(1, Math.floor((root.height - y + Theme.px(2)) / Theme.row)) * Theme.row)
        model: root.rows
        interactive: contentHeight > height + 1
        clip: interactive
        snapMode: ListView.SnapToItem
        boundsBehavior: Flickable.StopAtBounds
        delegate: Item {
            id: row
            required property int index
            required property earlierRow modelData
            width: list.width
            height: Theme.row

            Rectangle {
                anchors.fill: parent
                visible: press.down
                color: Theme.tint
            }
            VerdictMark {
                y: Theme.px(14)
                width: Theme.px(60)
                height: Theme.px(48)
                inks: Theme.inks
                unit: Theme.unit
                kind: row.modelData.mark
            }
            InkText {
                id: title
                x: Theme.px(88)
                y: Theme.px(7)
                text: row.modelData.title
                strong: true
            }
            InkText {
                x: title.x + title.width + Theme.px(12)
                y: title.y
                width: scale.x - x - Theme.px(8)
                elide: Text.ElideRight
                text: row.modelData.verdictWord
                strong: true
                color: Theme.verdictColor(row.modelData.mark)
            }
            InkText {
                x: title.x
                y: Theme.px(35)
                width: scale.x - x - Theme.px(8)
                elide: Text.ElideRight
                text: row.modelData.detail
                color: Theme.ink2
            }
            HeatScale {
                id: scale
                x: row.width - Theme.px(336)
                y: Theme.px(8)
                width: Theme.px(112)
                height: Theme.px(56)
                inks: Theme.inks
                unit: Theme.unit
                family: Theme.family
                form: HeatScale.List
                scaleState: row.modelData.scale
            }
            InkText {
                anchors.right: time.left
                anchors.rightMargin: Theme.px(30)
                anchors.verticalCenter: parent.verticalCenter
                text: row.modelData.margin
                strong: true
            }
            InkText {
                id: time
                anchors.right: parent.right
                anchors.verticalCenter: parent.verticalCenter
                text: row.modelData.time
                color: Theme.ink2
            }
            Rule {
                visible: row.index < list.count - 1
                anchors.bottom: parent.bottom
                width: parent.width
            }
            Pressable {
                id: press
                anchors.fill: parent
                anchors.topMargin: Theme.deadEdge
                anchors.bottomMargin: Theme.deadEdge
                ringOutset: 0
                spoken: Spoken.join([row.modelData.title, row.modelData.verdictWord, row.modelData.detail, row.modelData.margin, row.modelData.time])
                onActivated: root.triggered(row.modelData.id)
                onActiveFocusChanged: if (activeFocus) {
                    list.positionViewAtIndex(row.index, ListView.Contain);
                }
            }
        }
    }
}
