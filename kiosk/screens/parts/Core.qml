pragma ComponentBehavior: Bound
import QtQuick
import Holdfast.Screens

// The print as it lies: top film first, cloth last. If the rows do not fit they scroll, and marked ones stay in sight.
Item {
    id: root

    required property list<var> layers
    required property clothState cloth
    readonly property real pitch: Theme.coreLayer
    readonly property real wanted: (root.layers.length + 1) * root.pitch
    readonly property bool scrolls: flick.contentHeight > flick.height + 1

    implicitHeight: root.wanted

    component LayerRow: Item {
        id: row
        required property layerState film
        property bool last: false
        width: root.width
        height: root.pitch
        CoreCell {
            width: Theme.core
            height: Theme.px(60)
            inks: Theme.inks
            unit: Theme.unit
            kind: row.film.culprit ? Kinds.Closed : row.film.mark
        }
        Rectangle {
            visible: row.film.culprit
            x: Theme.px(108)
            y: -Theme.px(2)
            width: parent.width - x
            height: root.pitch
            color: Theme.ink
        }
        InkText {
            x: Theme.px(120)
            width: parent.width - x
            elide: Text.ElideRight
            text: row.film.colour
            strong: true
            color: row.film.culprit ? Theme.paper : Theme.ink
        }
        InkText {
            x: Theme.px(120)
            y: Theme.px(28)
            width: parent.width - x
            elide: Text.ElideRight
            text: row.film.detail
            color: row.film.culprit ? Theme.paper : Theme.ink2
        }
        Rule {
            visible: !row.film.culprit && !row.last
            x: Theme.px(120)
            y: Theme.px(60)
            width: parent.width - x
        }
    }

    Flickable {
        id: flick
        width: parent.width
        height: Math.min(contentHeight, Math.max(1, Math.floor((root.height + 1) / root.pitch) - 1) * root.pitch)
        contentHeight: root.layers.length * root.pitch
        interactive: root.scrolls
        clip: root.scrolls
        boundsBehavior: Flickable.StopAtBounds
        Repeater {
            model: root.layers
            LayerRow {
                required property int index
                required property layerState modelData
                y: index * root.pitch
                film: modelData
                last: index === root.layers.length - 1
                visible: !root.scrolls || !modelData.culprit
            }
        }
    }
    Repeater {
        model: root.scrolls ? root.layers : []
        LayerRow {
            required property int index
            required property layerState modelData
            visible: modelData.culprit
            y: Math.max(0, Math.min(index * root.pitch - flick.contentY, flick.height - root.pitch))
            film: modelData
        }
    }
    Rectangle {
        visible: root.scrolls
        x: root.width - width
        y: flick.height * flick.contentY / Math.max(1, flick.contentHeight)
        width: Theme.px(4)
        height: flick.height * flick.height / Math.max(1, flick.contentHeight)
        color: Theme.ink
    }
    Item {
        y: flick.height
        width: parent.width
        height: root.pitch
        CoreCell {
            y: Theme.px(4)
            width: Theme.core
            height: Theme.px(17)
            inks: Theme.inks
            unit: Theme.unit
            cloth: true
        }
        Rectangle {
            visible: root.cloth.culprit
            x: Theme.px(108)
            y: -Theme.px(2)
            width: parent.width - x
            height: root.pitch
            color: Theme.paper
            border.width: Theme.marked
            border.color: Theme.ink
        }
        InkText {
            x: Theme.px(120)
            width: parent.width - x
            elide: Text.ElideRight
            text: root.cloth.name
            strong: true
        }
        InkText {
            x: Theme.px(120)
            y: Theme.px(28)
            width: parent.width - x
            elide: Text.ElideRight
            text: root.cloth.detail
            color: Theme.ink2
        }
    }
}
