pragma ComponentBehavior: Bound
import QtQuick
import Holdfast.Screens

// The blocks under one another. What gets the focus comes into view.
Item {
    id: root

    required property SheetPageModel model
    required property var blocks
    property var more: null // blocks of another column, under these
    signal triggered(string id)

    readonly property Item focused: root.Window.activeFocusItem
    onFocusedChanged: root.follow()
    // The held point of a chart moves with the focus on it.
    Connections {
        target: root.focused
        function onYChanged() {
            root.follow();
        }
    }
    Connections {
        target: root.model
        function onDetailReplaced() {
            flick.contentY = 0;
        }
    }

    function follow() {
        for (let item = root.focused; item !== null; item = item.parent) {
            if (item === column) {
                root.show(root.focused);
                return;
            }
        }
    }
    function show(item: Item) {
        const air = Theme.px(12);
        const top = item.mapToItem(column, 0, 0).y - air;
        const bottom = top + item.height + 2 * air;
        const least = Math.max(0, Math.min(bottom, flick.contentHeight) - flick.height);
        flick.contentY = Math.max(0, Math.min(Math.max(flick.contentY, least), top));
    }

    Flickable {
        id: flick
        // The focus ring stands outside of its control and must not be cut.
        x: -Theme.focusOutset
        width: parent.width + 2 * Theme.focusOutset
        height: parent.height
        contentHeight: column.height
        interactive: contentHeight > height + 1
        clip: true
        boundsBehavior: Flickable.StopAtBounds
        Column {
            id: column
            x: Theme.focusOutset
            width: root.width
            topPadding: Theme.px(6)
            bottomPadding: Theme.px(12)
            Repeater {
                model: root.blocks
                SheetBlockView {
                    width: column.width
                    onTriggered: id => root.triggered(id)
                }
            }
            Item {
                visible: root.more !== null
                width: column.width
                height: Theme.px(18)
                Rule {
                    y: Theme.px(14)
                    strong: true
                    width: parent.width
                }
            }
            Repeater {
                model: root.more
                SheetBlockView {
                    width: column.width
                    onTriggered: id => root.triggered(id)
                }
            }
        }
    }
    PositionMark {
        x: parent.width + Theme.px(12)
        height: parent.height
        of: flick
    }
}
