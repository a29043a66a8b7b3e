pragma ComponentBehavior: Bound
import QtQuick
import Holdfast.Screens

// What is on hold here.
Item {
    id: root

    required property string heading
    required property string none
    required property list<var> rows
    signal triggered(string id)
    readonly property real headHeight: Theme.px(38)

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
            required property holdRow modelData
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
                x: Theme.px(84)
                y: Theme.px(7)
                width: parent.width - x
                elide: Text.ElideRight
                text: row.modelData.title
                strong: true
            }
            InkText {
                x: Theme.px(84)
                y: Theme.px(35)
                width: parent.width - x
                elide: Text.ElideRight
                text: row.modelData.detail
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
                spoken: Spoken.join([row.modelData.title, row.modelData.detail])
                onActivated: root.triggered(row.modelData.id)
                onActiveFocusChanged: if (activeFocus) {
                    list.positionViewAtIndex(row.index, ListView.Contain);
                }
            }
        }
    }
}
