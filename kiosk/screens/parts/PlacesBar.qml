pragma ComponentBehavior: Bound
import QtQuick
import Holdfast.Screens

// The places that exist; the one that stands here is filled.
Item {
    id: root

    required property list<var> places
    required property string place
    signal triggered(string id)

    height: Theme.placesBar

    Row {
        id: cells
        Repeater {
            model: root.places
            Item {
                id: cell
                required property int index
                required property placeState modelData
                readonly property bool chosen: modelData.id === root.place
                width: Math.max(Theme.px(135), name.implicitWidth + Theme.px(40))
                height: Theme.placesBar

                Rectangle {
                    anchors.fill: parent
                    color: cell.chosen !== press.down ? Theme.ink : Theme.paper
                }
                Rule {
                    visible: !cell.chosen
                    width: Theme.hair
                    height: Theme.px(40)
                    anchors.right: parent.right
                    anchors.verticalCenter: parent.verticalCenter
                }
                InkText {
                    id: name
                    anchors.centerIn: parent
                    text: cell.modelData.label
                    strong: cell.chosen
                    color: cell.chosen !== press.down ? Theme.paper : Theme.ink
                }
                Pressable {
                    id: press
                    anchors.fill: parent
                    anchors.margins: Theme.deadEdge
                    ringOutset: 0
                    role: Accessible.PageTab
                    spoken: cell.modelData.label
                    onActivated: root.triggered(cell.modelData.id)
                }
                Rectangle {
                    anchors.fill: press
                    visible: press.activeFocus && cell.chosen
                    color: "transparent"
                    border.width: Theme.focusWidth
                    border.color: Theme.paper
                }
            }
        }
    }
    Rule {
        strong: true
        width: parent.width
    }
}
