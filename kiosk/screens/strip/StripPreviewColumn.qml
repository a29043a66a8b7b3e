import QtQuick
import Holdfast.Screens

// What the chosen step would prove; set at 40 so that nobody takes it for a verdict.
Item {
    id: root

    required property stripPreview preview
    property bool compact: false

    InkText {
        id: heading
        y: Theme.px(root.compact ? 8 : 14)
        width: parent.width
        elide: Text.ElideRight
        text: root.preview.heading
        color: Theme.ink2
    }
    VerdictMark {
        id: mark
        y: heading.y + Theme.px(root.compact ? 30 : 40)
        width: Theme.px(100)
        height: Theme.px(80)
        visible: root.preview.word !== ""
        inks: Theme.inks
        unit: Theme.unit
        kind: root.preview.mark
    }
    InkText {
        x: Theme.px(123)
        y: mark.y + Theme.px(5)
        width: parent.width - x
        text: root.preview.word
        strong: true
        color: Theme.verdictColor(root.preview.mark)
        size: wordMetrics.advanceWidth > width ? Theme.lead : Theme.figure
    }
    TextMetrics {
        id: wordMetrics
        text: root.preview.word
        font.family: Theme.family
        font.pixelSize: Theme.figure
        font.bold: true
    }
    InkText {
        x: Theme.px(123)
        y: mark.y + Theme.px(53)
        width: parent.width - x
        text: root.preview.margin
        strong: true
        wrapMode: Text.WordWrap
    }
    InkText {
        id: sentence
        y: root.preview.word === "" ? mark.y : mark.y + Theme.px(root.compact ? 86 : 92)
        width: parent.width
        text: root.preview.sentence
        wrapMode: Text.WordWrap
    }
    InkText {
        y: Math.max(sentence.y + sentence.height + Theme.px(4), parent.height - height - Theme.px(root.compact ? 8 : 14))
        width: parent.width
        text: root.preview.note
        color: Theme.ink2
        wrapMode: Text.WordWrap
    }
}
