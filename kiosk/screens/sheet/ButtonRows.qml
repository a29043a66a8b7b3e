pragma ComponentBehavior: Bound
import QtQuick
import Holdfast.Screens

// Buttons in as many rows as they need. `fill`: each row takes the whole width. `choosing`: one of them is chosen.
Item {
    id: root

    required property list<var> actions
    property bool fill: true
    property bool choosing: false
    property string chosenId: ""
    property bool brief: false
    readonly property int count: root.actions.length
    readonly property real gap: Theme.px(15)
    readonly property real least: Theme.px(root.fill ? 112 : 96)
    readonly property list<rect> boxes: root.laidOut()
    signal triggered(string id)

    implicitHeight: root.count > 0 ? root.boxes[root.count - 1].y + root.boxes[root.count - 1].height : 0

    function labelOf(action: actionState): string {
        return root.brief && action.shortLabel !== "" ? action.shortLabel : action.label;
    }
    function needOf(index: int): real {
        const label = metrics.advanceWidth(root.labelOf(root.actions[index])) + Theme.px(34);
        return Math.min(root.width, Math.max(root.least, label));
    }
    // A label wider than the row wraps in a higher button; wrapping at words loses up to a fifth of each line.
    function heightOf(index: int): real {
        const lines = Math.ceil(1.2 * metrics.advanceWidth(root.labelOf(root.actions[index])) / Math.max(1, root.width - Theme.px(20)));
        return root.needOf(index) < root.width ? Theme.button : Math.max(Theme.button, lines * Theme.px(28) + Theme.px(12));
    }
    // Two lines stand in a button.
    function twoLinesOf(index: int): real {
        return Math.max(root.least, metrics.inTwoLines(root.labelOf(root.actions[index])) + Theme.px(26));
    }
    // Equal buttons in so many rows if their labels stand in them, in two lines each if they must; else 0.
    function evenWidth(rows: int): real {
        const columns = Math.ceil(root.count / rows);
        const each = (root.width - (columns - 1) * root.gap) / columns;
        for (let i = 0; i < root.count; ++i) {
            if (!root.fill || root.twoLinesOf(i) > each) {
                return 0;
            }
        }
        return each;
    }
    // More than two rows are brought to two where that is possible.
    function evenOf(): real {
        const one = root.evenWidth(1);
        return one > 0 || root.count < 5 ? one : root.evenWidth(2);
    }
    function laidOut(): list<rect> {
        const boxes = [];
        const even = root.evenOf();
        let y = 0;
        for (let first = 0; first < root.count; ) {
            let sum = even > 0 ? even : root.needOf(first);
            let end = first + 1;
            for (; end < root.count; ++end) {
                const next = root.gap + (even > 0 ? even : root.needOf(end));
                if (sum + next > root.width + 1) {
                    break;
                }
                sum += next;
            }
            const spare = root.fill ? (root.width - sum) / (end - first) : 0;
            const high = root.heightOf(first);
            let x = 0;
            for (let i = first; i < end; ++i) {
                const wide = (even > 0 ? even : root.needOf(i)) + spare;
                boxes.push(Qt.rect(Math.round(x), y, Math.floor(x + wide) - Math.round(x), high));
                x += wide + root.gap;
            }
            y += high + root.gap;
            first = end;
        }
        return boxes;
    }

    LabelMetrics {
        id: metrics
    }
    Repeater {
        model: root.actions
        Pressable {
            id: button
            required property int index
            required property actionState modelData
            readonly property bool primary: modelData.primary && !root.choosing
            readonly property bool chosen: root.choosing && modelData.id === root.chosenId
            readonly property bool filled: (button.primary || button.chosen) !== button.down
            readonly property rect box: button.index < root.boxes.length ? root.boxes[button.index] : Qt.rect(0, 0, 0, 0)
            x: box.x
            y: box.y
            width: box.width
            height: box.height
            role: root.choosing ? Accessible.RadioButton : Accessible.Button
            Accessible.checkable: root.choosing
            Accessible.checked: button.chosen
            spoken: modelData.label
            onActivated: root.triggered(modelData.id)
            Rectangle {
                anchors.fill: parent
                color: button.filled ? Theme.ink : Theme.paper
                border.width: Theme.strong
                border.color: Theme.ink
            }
            InkText {
                anchors.centerIn: parent
                width: parent.width - Theme.px(16)
                text: root.labelOf(button.modelData)
                strong: !root.choosing || button.chosen
                color: button.filled ? Theme.paper : Theme.ink
                horizontalAlignment: Text.AlignHCenter
                wrapMode: Text.Wrap
            }
        }
    }
}
