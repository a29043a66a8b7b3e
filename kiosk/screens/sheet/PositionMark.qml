import QtQuick
import Holdfast.Screens

// At the side of what scrolls: a thin rule, and on it how much of the whole is seen and where.
Item {
    id: root

    required property Flickable of
    readonly property bool more: root.of.contentHeight > root.of.height + 1

    visible: root.more
    width: Theme.marked
    Rule {
        x: (parent.width - width) / 2
        width: Theme.hair
        height: parent.height
    }
    Rectangle {
        y: Math.max(0, Math.min(root.of.visibleArea.yPosition * parent.height, parent.height - height))
        width: parent.width
        height: Math.max(Theme.px(24), root.of.visibleArea.heightRatio * parent.height)
        color: Theme.ink
    }
}
