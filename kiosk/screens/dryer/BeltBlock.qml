import QtQuick
import Holdfast.Screens

// What runs here now: mark, word, a note, and the reading on a small heat scale. A long word makes the scale narrower.
Item {
    id: root

    required property beltState belt
    property bool compact: false
    signal triggered(string id)

    readonly property real scaleWide: Theme.px(280)
    readonly property real scaleNarrow: Theme.px(200)
    readonly property real wordX: Theme.px(184)
    function roomBeside(scaleWidth: real): real {
        return root.width - root.wordX - Theme.px(24) - (root.belt.showScale ? scaleWidth : 0);
    }
    readonly property bool wordLarge: large.advanceWidth <= root.roomBeside(root.scaleWide)
    readonly property bool wordMedium: medium.advanceWidth <= root.roomBeside(root.scaleNarrow)

    implicitHeight: Theme.px(compact ? 148 : 176)

    TextMetrics {
        id: large
        text: root.belt.word
        font.family: Theme.family
        font.pixelSize: Theme.verdict
        font.bold: true
        font.letterSpacing: Theme.trackingOf(Theme.verdict)
    }
    TextMetrics {
        id: medium
        text: root.belt.word
        font.family: Theme.family
        font.pixelSize: Theme.margin
        font.bold: true
        font.letterSpacing: Theme.trackingOf(Theme.margin)
    }
    Pressable {
        anchors.fill: parent
        anchors.topMargin: Theme.deadEdge
        anchors.bottomMargin: Theme.deadEdge
        ringOutset: 0
        enabledTouch: root.belt.actionId !== ""
        spoken: Spoken.join([root.belt.word, root.belt.note, root.belt.sentence])
        onActivated: root.triggered(root.belt.actionId)
    }
    VerdictMark {
        y: Theme.px(root.compact ? 4 : 14)
        width: Theme.px(160)
        height: Theme.px(128)
        inks: Theme.inks
        unit: Theme.unit
        kind: root.belt.mark
    }
    InkText {
        id: word
        x: root.wordX
        y: Theme.px(root.compact ? 92 : 114) - baselineOffset - (root.wordLarge ? 0 : Theme.px(20))
        text: root.belt.word
        strong: true
        color: Theme.verdictColor(root.belt.mark)
        size: root.wordLarge ? Theme.verdict : root.wordMedium ? Theme.margin : Theme.figure
    }
    InkText {
        id: note
        x: root.wordX
        y: Theme.px(root.compact ? 104 : 128) - (!root.wordLarge ? Theme.px(16) : 0)
        width: root.roomBeside(scale.width)
        text: root.belt.note !== "" ? root.belt.note : root.belt.sentence
        strong: root.belt.note !== ""
        wrapMode: Text.WordWrap
    }
    HeatScale {
        id: scale
        visible: root.belt.showScale
        x: root.width - width
        y: Theme.px(root.compact ? 6 : 22)
        width: root.wordLarge ? root.scaleWide : root.scaleNarrow
        height: Theme.px(136)
        inks: Theme.inks
        unit: Theme.unit
        family: Theme.family
        form: HeatScale.Home
        scaleState: root.belt.scale
        Accessible.role: Accessible.Graphic
        Accessible.name: root.belt.scale.spoken
    }
}
