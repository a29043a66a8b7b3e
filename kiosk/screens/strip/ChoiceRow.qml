pragma ComponentBehavior: Bound
import QtQuick
import Holdfast.Screens

// Choices side by side: one of them, or each on or off by itself. Of equal widths if every label stands in one line,
// else as the labels need in two.
Row {
    id: root

    required property list<var> choices
    required property real room
    property bool each: false
    readonly property int count: root.choices.length
    readonly property real free: root.room - (root.count - 1) * root.spacing
    readonly property real equal: root.free / Math.max(1, root.count)
    readonly property bool even: root.widest() <= root.equal
    readonly property real spare: (root.free - root.sum()) / Math.max(1, root.count)
    signal triggered(string id)

    function needOf(choice: choiceState): real {
        return Math.max(Theme.button, metrics.inTwoLines(choice.label) + Theme.px(20));
    }
    function sum(): real {
        let need = 0;
        for (let i = 0; i < root.count; ++i) {
            need += root.needOf(root.choices[i]);
        }
        return need;
    }
    function widest(): real {
        let need = 0;
        for (let i = 0; i < root.count; ++i) {
            need = Math.max(need, metrics.advanceWidth(root.choices[i].label) + Theme.px(20));
        }
        return need;
    }

    spacing: Theme.px(12)
    LabelMetrics {
        id: metrics
    }
    Repeater {
        model: root.choices
        PressButton {
            required property choiceState modelData
            width: root.even ? root.equal : root.needOf(modelData) + root.spare
            role: root.each ? Accessible.CheckBox : Accessible.RadioButton
            Accessible.checkable: true
            Accessible.checked: modelData.chosen
            label: modelData.label
            primary: modelData.chosen
            onActivated: root.triggered(modelData.id)
        }
    }
}
