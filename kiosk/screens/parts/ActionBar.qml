pragma ComponentBehavior: Bound
import QtQuick
import Holdfast.Screens

// The page's actions, left to right in the order of the work. Equal widths if every label fits, else as the labels need.
Item {
    id: root

    required property list<var> actions
    signal triggered(string id)

    height: Theme.actionBar
    readonly property real gap: Theme.px(15)
    readonly property real room: root.width - 2 * Theme.edge - Math.max(0, root.count - 1) * root.gap

    readonly property int count: root.actions.length

    // How labels stand: 0 in full, 1 short, 2 short and in two lines.
    function labelOf(action: actionState, tightness: int): string {
        return tightness > 0 && action.shortLabel !== "" ? action.shortLabel : action.label;
    }
    function needOf(index: int, tightness: int): real {
        const label = root.labelOf(root.actions[index], tightness);
        if (tightness < 2) {
            return Math.max(Theme.button, metrics.advanceWidth(label) + Theme.px(32));
        }
        return Math.max(Theme.button, metrics.inTwoLines(label) + Theme.px(24));
    }
    function sumOf(tightness: int): real {
        let sum = 0;
        for (let i = 0; i < root.count; ++i) {
            sum += root.needOf(i, tightness);
        }
        return sum;
    }
    function widestOf(tightness: int): real {
        let widest = 0;
        for (let i = 0; i < root.count; ++i) {
            widest = Math.max(widest, root.needOf(i, tightness));
        }
        return widest;
    }
    readonly property int tightness: root.sumOf(0) <= root.room ? 0 : root.sumOf(1) <= root.room ? 1 : 2
    readonly property real equal: root.room / Math.max(1, root.count)
    readonly property bool even: root.widestOf(root.tightness) <= root.equal
    readonly property real spare: (root.room - root.sumOf(root.tightness)) / Math.max(1, root.count)

    LabelMetrics {
        id: metrics
    }
    Rule {
        strong: true
        width: parent.width
    }
    Row {
        x: Theme.edge
        y: Theme.px(16)
        spacing: root.gap
        Repeater {
            model: root.actions
            PressButton {
                required property int index
                required property actionState modelData
                width: root.even ? root.equal : root.needOf(index, root.tightness) + root.spare
                height: Theme.button
                label: root.labelOf(modelData, root.tightness)
                primary: modelData.primary
                onActivated: root.triggered(modelData.id)
            }
        }
    }
}
