import QtQuick
import Holdfast.Screens

// The print as it lies and the window it makes.
Item {
    id: root

    required property RunPageModel model
    property bool withWindow: true
    property string caution: ""
    property bool compact: false
    readonly property real footGap: root.withWindow ? Theme.px(root.compact ? 4 : 22) : 0

    InkText {
        id: heading
        y: Theme.px(root.compact ? 8 : 14)
        width: parent.width
        elide: Text.ElideRight
        text: root.model.printHeading
        color: Theme.ink2
    }
    Core {
        id: core
        y: heading.y + Theme.px(root.compact ? 36 : 44)
        width: parent.width
        height: Math.min(wanted, Math.floor((root.height - y - foot.height - root.footGap - Theme.px(root.compact ? 2 : 6)) / pitch) * pitch)
        layers: root.model.layers
        cloth: root.model.cloth
    }
    Column {
        id: foot
        y: root.withWindow ? core.y + core.height + root.footGap : root.height - height - Theme.px(10)
        width: parent.width
        Rule {
            visible: root.withWindow
            strong: true
            width: parent.width
        }
        Item {
            visible: root.withWindow
            width: 1
            height: Theme.px(root.compact ? 2 : 11)
        }
        InkText {
            visible: root.withWindow
            width: parent.width
            elide: Text.ElideRight
            text: root.model.windowHeading
            color: Theme.ink2
        }
        InkText {
            visible: root.withWindow
            text: root.model.windowText
            strong: true
            size: windowMetrics.advanceWidth > root.width ? Theme.lead : Theme.figure
        }
        InkText {
            visible: text !== ""
            width: parent.width
            text: root.caution
            color: Theme.ink2
            wrapMode: Text.WordWrap
        }
    }
    TextMetrics {
        id: windowMetrics
        text: root.model.windowText
        font.family: Theme.family
        font.pixelSize: Theme.figure
        font.bold: true
    }
}
