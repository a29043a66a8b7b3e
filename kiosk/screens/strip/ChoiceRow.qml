pragma ComponentBehavior: Bound
import QtQuick
import Holdfast.Screens

// Choices side by side in equal widths: one of them, or each on or off by itself.
Row {
    id: root

    required property list<var> choices
    required property real room
    property bool each: false
    signal triggered(string id)

    spacing: Theme.px(12)
    Repeater {
        model: root.choices
        PressButton {
            required property choiceState modelData
            width: (root.room - (root.choices.length - 1) * root.spacing) / root.choices.length
            role: root.each ? Accessible.CheckBox : Accessible.RadioButton
            Accessible.checkable: true
            Accessible.checked: modelData.chosen
            label: modelData.label
            primary: modelData.chosen
            onActivated: root.triggered(modelData.id)
        }
    }
}
