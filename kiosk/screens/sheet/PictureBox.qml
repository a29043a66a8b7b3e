import QtQuick
import Holdfast.Screens

// A picture of the book; its word where there is none, a dashed frame where it is due.
Item {
    id: root

    required property url source
    required property string word
    property bool due: false
    property bool whole: false // nothing of it is cut off
    readonly property bool shown: picture.status === Image.Ready

    Rectangle {
        anchors.fill: parent
        visible: !root.due
        color: Theme.tint
    }
    Image {
        id: picture
        anchors.fill: parent
        visible: root.shown && !root.due
        source: root.due ? "" : root.source
        asynchronous: true
        fillMode: root.whole ? Image.PreserveAspectFit : Image.PreserveAspectCrop
        sourceSize.width: Math.max(1, Math.round(width))
        sourceSize.height: Math.max(1, Math.round(height))
        mipmap: true
        clip: true
    }
    DashedBox {
        anchors.fill: parent
        visible: root.due
        inks: Theme.inks
        unit: Theme.unit
    }
    InkText {
        anchors.centerIn: parent
        visible: text !== "" && (root.due || !root.shown)
        width: parent.width - Theme.px(8)
        text: root.word
        strong: root.due
        horizontalAlignment: Text.AlignHCenter
        wrapMode: Text.Wrap
    }
}
