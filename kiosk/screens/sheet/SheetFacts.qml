pragma ComponentBehavior: Bound
import QtQuick
import Holdfast.Screens

// What is so: title left, value right, nothing to press.
Column {
    id: root

    required property SheetBlockModel block

    Repeater {
        id: facts
        model: root.block.rows
        Item {
            id: fact
            required property int index
            required property sheetRow entry
            width: root.width
            height: Math.max(Theme.px(48), texts.implicitHeight + Theme.px(20))
            Accessible.role: Accessible.StaticText
            Accessible.name: texts.spoken
            SheetRowTexts {
                id: texts
                anchors.verticalCenter: parent.verticalCenter
                width: parent.width
                entry: fact.entry
            }
            Rule {
                visible: fact.index < facts.count - 1
                anchors.bottom: parent.bottom
                width: parent.width
            }
        }
    }
}
