pragma ComponentBehavior: Bound
import QtQuick
import Holdfast.Screens

// The list of a sheet. One stop of the Tab key: the arrow keys walk along it. Its rows are made as they come into view.
Item {
    id: root

    required property SheetPageModel model
    property bool compact: false
    readonly property real headHeight: head.y + head.height + Theme.px(root.compact ? 6 : 10)
    // A row half scrolled away must not come too near to the places below it.
    readonly property real foot: buttons.count > 0 ? buttons.y - Theme.gutter : root.height - Theme.deadEdge
    signal triggered(string id)

    Connections {
        target: root.model
        function onChoiceReplaced() {
            if (root.model.chosenIndex >= 0) {
                list.goTo(root.model.chosenIndex);
            }
        }
        function onListReplaced() {
            list.goTo(Math.max(0, root.model.chosenIndex));
        }
    }

    InkText {
        id: head
        x: Theme.edge
        y: Theme.px(root.compact ? 8 : 14)
        width: parent.width - 2 * x
        text: root.model.heading
        color: Theme.ink2
        wrapMode: Text.Wrap
    }
    Rule {
        id: headRule
        x: Theme.edge
        y: root.headHeight - height
        strong: true
        width: parent.width - 2 * x
    }
    InkText {
        x: Theme.edge
        y: root.headHeight + Theme.px(16)
        visible: list.count === 0
        width: parent.width - 2 * x
        text: root.model.listNone
        wrapMode: Text.Wrap
    }
    ListView {
        id: list
        y: root.headHeight
        width: parent.width - Theme.edge
        height: root.foot - y
        model: root.model.list
        interactive: contentHeight > height + 1
        clip: true
        reuseItems: true
        cacheBuffer: 4 * Theme.row
        boundsBehavior: Flickable.StopAtBounds
        // The view follows keys and choices, not rows that come in above.
        highlightFollowsCurrentItem: false
        keyNavigationEnabled: false
        Accessible.role: Accessible.List
        Accessible.name: root.model.heading

        function goTo(index: int) {
            list.currentIndex = Math.max(0, Math.min(list.count - 1, index));
            list.positionViewAtIndex(list.currentIndex, ListView.Contain);
        }
        function stepsOf(key: int): int {
            const page = Math.max(1, Math.floor(list.height / Theme.row));
            switch (key) {
            case Qt.Key_Down:
                return 1;
            case Qt.Key_Up:
                return -1;
            case Qt.Key_PageDown:
                return page;
            case Qt.Key_PageUp:
                return -page;
            case Qt.Key_Home:
                return -list.count;
            case Qt.Key_End:
                return list.count;
            default:
                return 0;
            }
        }
        Keys.onPressed: event => {
            const steps = list.stepsOf(event.key);
            if (steps !== 0) {
                list.goTo(list.currentIndex + steps);
                event.accepted = true;
            }
        }
        delegate: FocusScope {
            id: row
            required property int index
            required property sheetRow entry
            readonly property bool filled: row.entry.chosen !== press.down
            property bool pooled: false
            visible: !pooled
            ListView.onPooled: pooled = true
            ListView.onReused: pooled = false
            width: list.width
            height: Math.max(Theme.row, texts.implicitHeight + Theme.px(16))

            Rectangle {
                anchors.fill: parent
                visible: row.filled
                color: Theme.ink
            }
            SheetRowTexts {
                id: texts
                x: Theme.edge
                anchors.verticalCenter: parent.verticalCenter
                width: parent.width - x - (row.filled ? Theme.gutter : 0)
                entry: row.entry
                filled: row.filled
            }
            Rule {
                visible: row.index < list.count - 1
                x: Theme.edge
                anchors.bottom: parent.bottom
                width: parent.width - x
            }
            SheetRowPress {
                id: press
                readonly property bool walked: true
                anchors.leftMargin: Theme.deadEdge
                focus: true
                // It may not fall while the focus is still here.
                activeFocusOnTab: (row.ListView.isCurrentItem && enabledTouch) || activeFocus
                filled: row.filled
                enabledTouch: row.entry.id !== ""
                role: Accessible.ListItem
                Accessible.selected: row.entry.chosen
                spoken: texts.spoken
                onActivated: root.triggered(row.entry.id)
                onActiveFocusChanged: if (activeFocus) {
                    list.goTo(row.index);
                }
            }
        }
    }
    PositionMark {
        x: parent.width - Theme.px(14)
        y: root.headHeight
        height: list.height
        of: list
    }
    ButtonRows {
        id: buttons
        x: Theme.edge
        y: parent.height - height - Theme.px(16)
        width: parent.width - 2 * x
        actions: root.model.listActions
        onTriggered: id => root.triggered(id)
    }
}
