import QtQuick
import Holdfast.Screens

// The head of every page: title, crew, probe, due, hold, clock. Portrait: two rows.
Item {
    id: root

    required property HeaderModel model
    property bool portrait: false
    signal opened(string place)

    height: root.portrait ? 2 * Theme.header : Theme.header

    HeaderCellView {
        id: title
        x: Theme.edge
        width: (root.portrait ? clockLine.x : cells.x) - x
        cell: root.model.title
        ruled: false
        fill: true
        onOpened: place => root.opened(place)
    }
    Row {
        id: clockLine
        visible: root.portrait
        anchors.right: parent.right
        anchors.rightMargin: Theme.edge
        y: Theme.px(8)
        spacing: Theme.px(22)
        InkText {
            visible: root.model.demo
            text: "DEMO"
            strong: true
        }
        InkText {
            text: root.model.clock.what
            strong: true
        }
    }
    Row {
        id: cells
        x: root.portrait ? Theme.edge - Theme.px(16) : parent.width - width
        y: root.portrait ? Theme.header : 0
        width: root.portrait ? parent.width - x : implicitWidth

        HeaderCellView {
            cell: root.model.crew
            least: Theme.px(root.portrait ? 130 : 146)
            ruled: !root.portrait
            leftPad: root.portrait ? Theme.px(16) : 0
            onOpened: place => root.opened(place)
        }
        HeaderCellView {
            cell: root.model.probe
            least: Theme.px(root.portrait ? 214 : 182)
            onOpened: place => root.opened(place)
        }
        HeaderCellView {
            cell: root.model.due
            least: Theme.px(root.portrait ? 236 : 210)
            onOpened: place => root.opened(place)
        }
        HeaderCellView {
            cell: root.model.hold
            least: Theme.px(137)
            onOpened: place => root.opened(place)
        }
        HeaderCellView {
            visible: !root.portrait
            cell: root.model.clock
            how: root.model.demo ? "DEMO" : root.model.clock.how
            least: Theme.px(125)
            onOpened: place => root.opened(place)
        }
    }
    Rule {
        strong: true
        anchors.bottom: parent.bottom
        width: parent.width
    }
}
