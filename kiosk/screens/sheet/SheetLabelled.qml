import QtQuick
import Holdfast.Screens

// What the blocks of tests share: a thin rule, what it is at the left, bold over plain, and the thing beside it; under it
// where the thing needs more width, a word of the label does, or there is none.
Item {
    id: root

    required property SheetBlockModel block
    property real contentNeeds: Theme.px(360)
    property real overhang: 0 // of the thing into the label's column
    property bool stacked: false
    property real topAir: Theme.px(8)
    readonly property bool labelled: root.block.text !== "" || root.block.note !== ""
    readonly property real column: Theme.px(176)
    readonly property real labelRoom: root.column - Theme.gutter - root.overhang
    readonly property bool beside: root.labelled && !root.stacked && root.width - root.column >= root.contentNeeds && root.longestWord() <= root.labelRoom
    readonly property real contentX: root.beside ? root.column : 0
    readonly property real contentY: root.topAir + (root.labelled && !root.beside ? label.height + Theme.px(6) : 0)
    readonly property string spokenLabel: Spoken.join([root.block.text, root.block.note])
    default property alias content: box.data
    readonly property alias contentWidth: box.width

    implicitHeight: Math.max(root.contentY + box.childrenRect.y + box.childrenRect.height, root.labelled ? label.y + label.height : 0) + Theme.px(6)

    function longestWord(): real {
        let need = 0;
        for (const word of root.block.text.split(" ")) {
            need = Math.max(need, metrics.advanceWidth(word));
        }
        for (const word of root.block.note.split(" ")) {
            need = Math.max(need, metrics.advanceWidth(word)); // plain is narrower than bold
        }
        return need;
    }

    LabelMetrics {
        id: metrics
    }
    Rule {
        visible: root.block.ruled
        width: parent.width
    }
    Column {
        id: label
        visible: root.labelled
        y: root.topAir
        width: root.beside ? root.labelRoom : root.width
        InkText {
            visible: text !== ""
            width: parent.width
            text: root.block.text
            strong: true
            wrapMode: Text.Wrap
        }
        InkText {
            visible: text !== ""
            width: parent.width
            text: root.block.note
            color: Theme.ink2
            wrapMode: Text.Wrap
        }
    }
    Item {
        id: box
        x: root.contentX
        y: root.contentY
        width: root.width - x
        height: childrenRect.height
    }
}
