import QtQuick
import Holdfast.Screens

// A small heat scale with its sentence beside it; larger where it has a trace to show.
Item {
    id: root

    required property SheetBlockModel block
    readonly property bool traced: root.block.traced

    implicitHeight: Math.max(scale.height, words.height) + Theme.px(16)
    HeatScale {
        id: scale
        y: Theme.px(8)
        width: Theme.px(root.traced ? 280 : 112)
        height: Theme.px(root.traced ? 136 : 56)
        inks: Theme.inks
        unit: Theme.unit
        family: Theme.family
        form: root.traced ? HeatScale.Home : HeatScale.List
        scaleState: root.block.scale
        Accessible.role: Accessible.Graphic
        Accessible.name: root.block.scale.spoken
    }
    InkText {
        id: words
        x: scale.width + Theme.edge
        y: scale.y + Math.max(0, (scale.height - height) / 2)
        width: parent.width - x
        text: root.block.text
        wrapMode: Text.Wrap
    }
}
