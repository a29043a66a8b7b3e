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

    function labelOf(action: actionState, brief: bool): string {
        return brief && action.shortLabel !== "" ? action.shortLabel : action.label;
    }
    function needOf(index: int, brief: bool): real {
        return Math.max(Theme.button, metrics.advanceWidth(root.labelOf(root.actions[index], brief)) + Theme.px(32));
    }
    function sumOf(brief: bool): real {
        let sum = 0;
        for (let i = 0; i < root.count; ++i) {
            sum += root.needOf(i, brief);
        }
        return sum;
    }
    function widestOf(brief: bool): real {
        let widest = 0;
        for (let i = 0; i < root.count; ++i) {
            widest = Math.max(widest, root.needOf(i, brief));
        }
        return widest;
    }
    readonly property bool tight: root.sumOf(false) > root.room
    readonly property real equal: root.room / Math.max(1, root.count)
    readonly property bool even: root.widestOf(root.tight) <= root.equal
    readonly property real spare: (root.room - root.sumOf(root.tight)) / Math.max(1, root.count)

    FontMetrics {
        id: metrics
        font.family: Theme.family
        font.pixelSize: Theme.text
        font.bold: true
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
                width: root.even ? root.equal : root.needOf(index, root.tight) + root.spare
                height: Theme.button
                label: root.labelOf(modelData, root.tight)
                primary: modelData.primary
                onActivated: root.triggered(modelData.id)
            }
        }
    }
}
