import QtQuick
import Holdfast.Screens

// The verdict band. It never moves and nothing in it is animated. Portrait: margin under the word.
Item {
    id: root

    required property bandState band
    property bool portrait: false

    readonly property color verdictColor: Theme.verdictColor(root.band.mark)
    readonly property string shownWord: root.band.liveFigure !== "" ? root.band.liveFigure : root.band.word
    readonly property real wordRoom: (root.portrait ? root.width : side.x) - word.x - Theme.edge

    height: root.portrait ? Theme.bandPortrait : Theme.band
    Accessible.role: Accessible.Notification
    Accessible.name: Spoken.join([root.shownWord, root.band.margin, root.band.status, root.band.marginNote])

    VerdictMark {
        x: Theme.edge
        y: root.portrait ? Theme.px(24) : Theme.px(12)
        width: Theme.px(160)
        height: Theme.px(128)
        inks: Theme.inks
        unit: Theme.unit
        kind: root.band.mark
    }
    InkText {
        x: Theme.edge
        y: Theme.px(56)
        width: Theme.px(160)
        horizontalAlignment: Text.AlignHCenter
        text: root.band.markNote
        color: Theme.ink2
    }
    TextMetrics {
        id: atFullSize
        text: root.shownWord
        font.family: Theme.family
        font.pixelSize: Theme.verdict
        font.bold: true
        font.letterSpacing: Theme.trackingOf(Theme.verdict)
    }
    TextMetrics {
        id: marginAtFullSize
        text: root.band.margin
        font.family: Theme.family
        font.pixelSize: Theme.margin
        font.bold: true
        font.letterSpacing: Theme.trackingOf(Theme.margin)
    }
    InkText {
        id: word
        x: Theme.px(208)
        // The baseline stands at 120 (portrait 100 or 84) from the band's top, whatever the size.
        y: Theme.px(root.portrait ? (large ? 100 : 84) : 120) - baselineOffset
        readonly property bool large: atFullSize.advanceWidth <= root.wordRoom
        text: root.shownWord
        strong: true
        color: root.verdictColor
        size: large ? Theme.verdict : Theme.margin
    }
    Column {
        id: side
        x: root.portrait ? word.x : root.width - Theme.px(352)
        y: root.portrait ? Theme.px(118) : root.band.margin === "" ? Theme.px(43) : Theme.px(18)
        width: root.width - x - Theme.px(16)
        InkText {
            // A range, "+4 to +26 °F", may be too wide for one line.
            readonly property bool wide: marginAtFullSize.advanceWidth > parent.width
            visible: text !== ""
            text: root.band.margin !== "" ? root.band.margin : root.band.status
            strong: true
            color: root.band.margin !== "" ? root.verdictColor : Theme.ink
            size: root.band.margin === "" || root.portrait ? Theme.lead : wide ? Theme.figure : Theme.margin
            width: parent.width
            wrapMode: Text.WordWrap
        }
        InkText {
            width: parent.width
            text: root.band.marginNote
            wrapMode: Text.WordWrap
        }
    }
    Rule {
        strong: true
        anchors.bottom: parent.bottom
        width: parent.width
    }
}
