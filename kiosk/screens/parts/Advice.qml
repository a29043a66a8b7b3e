pragma ComponentBehavior: Bound
import QtQuick
import Holdfast.Screens

// Headings with their sentences, what to do first and largest. Scrolls only if it must.
Flickable {
    id: root

    required property list<var> sections
    property bool compact: false

    contentHeight: column.height
    interactive: contentHeight > height + 1
    clip: interactive
    boundsBehavior: Flickable.StopAtBounds

    Column {
        id: column
        width: root.width
        Repeater {
            model: root.sections
            Column {
                id: section
                required property int index
                required property adviceSection modelData
                readonly property bool lead: modelData.weight === Kinds.Lead
                width: column.width
                InkText {
                    width: parent.width
                    text: section.modelData.heading
                    color: Theme.ink2
                    wrapMode: Text.WordWrap
                }
                Item {
                    width: 1
                    height: Theme.px(root.compact ? 2 : 8)
                }
                InkText {
                    width: parent.width
                    text: section.modelData.sentence
                    strong: section.lead
                    size: section.lead ? Theme.lead : Theme.text
                    wrapMode: Text.WordWrap
                }
                Item {
                    visible: rule.visible
                    width: 1
                    height: Theme.px(root.compact ? 5 : 10)
                }
                Rule {
                    id: rule
                    visible: section.index < root.sections.length - 1
                    strong: section.lead
                    width: parent.width
                }
                Item {
                    visible: rule.visible
                    width: 1
                    height: Theme.px(root.compact ? 3 : 7)
                }
            }
        }
    }
}
