pragma ComponentBehavior: Bound
import QtQuick
import Holdfast.Screens

// Ways out of a closed window, easiest first; the first is the black one. Scrolls only if it must.
Flickable {
    id: root

    required property list<var> ways
    property string more: ""
    signal triggered(string id)

    readonly property real gap: height >= ways.length * Theme.px(96) - Theme.px(16) ? Theme.px(16) : Theme.px(12)
    readonly property real rowHeight: Math.max(Theme.px(62), Math.min(Theme.px(80), Math.floor((height + gap) / Math.max(1, ways.length)) - gap))
    contentHeight: column.height
    interactive: contentHeight > height + 1
    clip: interactive
    boundsBehavior: Flickable.StopAtBounds

    function show(item: Item) {
        const top = item.y;
        if (top < contentY || top + item.height > contentY + height) {
            contentY = Math.max(0, Math.min(top, contentHeight - height));
        }
    }

    Column {
        id: column
        width: root.width
        spacing: root.gap
        Repeater {
            model: root.ways
            Pressable {
                id: way
                required property int index
                required property wayOutState modelData
                readonly property bool filled: (index === 0) !== down
                width: column.width
                height: root.rowHeight
                spoken: (index + 1) + ", " + modelData.title + ", " + modelData.detail
                onActivated: root.triggered(modelData.id)
                onActiveFocusChanged: if (activeFocus) {
                    root.show(way);
                }
                Rectangle {
                    anchors.fill: parent
                    color: way.filled ? Theme.ink : Theme.paper
                    border.width: Theme.strong
                    border.color: Theme.ink
                }
                InkText {
                    x: Theme.px(16)
                    anchors.verticalCenter: parent.verticalCenter
                    text: way.index + 1
                    strong: true
                    size: Theme.figure
                    color: way.filled ? Theme.paper : Theme.ink
                }
                Column {
                    x: Theme.px(60)
                    width: parent.width - x - Theme.px(12)
                    anchors.verticalCenter: parent.verticalCenter
                    InkText {
                        width: parent.width
                        elide: Text.ElideRight
                        text: way.modelData.title
                        strong: true
                        color: way.filled ? Theme.paper : Theme.ink
                    }
                    InkText {
                        width: parent.width
                        elide: Text.ElideRight
                        text: way.modelData.detail
                        color: way.filled ? Theme.paper : Theme.ink2
                    }
                }
            }
        }
        InkText {
            visible: text !== ""
            width: parent.width
            text: root.more
            color: Theme.ink2
            wrapMode: Text.WordWrap
        }
    }
}
