import QtQuick
import Holdfast.Screens

// The page's actions, left to right in the order of the work. Equal widths if every label fits, else as the labels need.
Item {
    id: root

    required property list<var> actions
    signal triggered(string id)

    height: Theme.actionBar
    readonly property real gap: Theme.px(15)
    readonly property real room: root.width - 2 * Theme.edge - Math.max(0, root.actions.length - 1) * root.gap

    function widthsOf(labels: list<string>): list<real> {
        const need = labels.map(label => Math.max(Theme.button, metrics.advanceWidth(label) + Theme.px(32)));
        const equal = root.room / Math.max(1, need.length);
        if (Math.max(...need, 0) <= equal) {
            return need.map(() => equal);
        }
        const spare = (root.room - need.reduce((sum, n) => sum + n, 0)) / need.length;
        return need.map(n => n + spare);
    }
    function shortOf(action: actionState): string {
        return action.shortLabel !== "" ? action.shortLabel : action.label;
    }
    readonly property list<string> fullLabels: root.actions.map(action => action.label)
    readonly property bool tight: root.fullLabels.reduce((sum, label) => sum + metrics.advanceWidth(label) + Theme.px(32), 0) > root.room
    readonly property list<string> labels: root.tight ? root.actions.map(action => root.shortOf(action)) : root.fullLabels
    readonly property list<real> widths: root.widthsOf(root.labels)

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
                width: root.widths[index] ?? 0
                height: Theme.button
                label: root.labels[index] ?? ""
                primary: modelData.primary
                onActivated: root.triggered(modelData.id)
            }
        }
    }
}
