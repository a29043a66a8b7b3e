pragma ComponentBehavior: Bound
import QtQuick
import Holdfast.Screens

// What the print did at each pull, drawn; what it comes to at the right.
SheetLabelled {
    id: root

    readonly property bool found: root.block.result !== "" || root.block.resultNote !== ""
    readonly property real swatch: Theme.px(72)
    readonly property real gap: Theme.px(12)
    readonly property real resultNeeds: Math.max(word.implicitWidth, note.implicitWidth)
    // Beside the pulls if all of it stands in one row, else under them.
    readonly property bool inRow: root.pullsNeed() + root.gap + root.resultNeeds <= root.contentWidth

    function cellOf(pull: pullEntry): real {
        return root.swatch + root.gap + Math.max(metrics.advanceWidth(pull.elongation), metrics.advanceWidth(pull.seen)) + Theme.px(12);
    }
    function pullsNeed(): real {
        let need = 0;
        for (let i = 0; i < root.block.pulls.length; ++i) {
            need += root.cellOf(root.block.pulls[i]) + (i > 0 ? root.gap : 0);
        }
        return need;
    }

    LabelMetrics {
        id: metrics
    }
    Flow {
        id: pulls
        width: root.contentWidth - (root.found && root.inRow ? root.resultNeeds : 0)
        spacing: root.gap
        Repeater {
            model: root.block.pulls
            Item {
                id: pull
                required property pullEntry modelData
                width: Math.min(pulls.width, root.cellOf(pull.modelData))
                height: Math.max(Theme.px(56), texts.height)
                Accessible.role: Accessible.StaticText
                Accessible.name: Spoken.join([root.block.text, pull.modelData.elongation, pull.modelData.seen])
                CrackSwatch {
                    y: Theme.px(4)
                    width: root.swatch
                    height: Theme.px(48)
                    inks: Theme.inks
                    unit: Theme.unit
                    crack: pull.modelData.crack
                    planned: !pull.modelData.done
                }
                Column {
                    id: texts
                    x: root.swatch + root.gap
                    width: pull.width - x
                    InkText {
                        width: parent.width
                        text: pull.modelData.elongation
                        strong: true
                        wrapMode: Text.Wrap
                    }
                    InkText {
                        width: parent.width
                        text: pull.modelData.seen
                        wrapMode: Text.Wrap
                    }
                }
            }
        }
    }
    Column {
        id: result
        visible: root.found
        x: root.inRow ? root.contentWidth - width : 0
        y: root.inRow ? 0 : pulls.height + Theme.px(8)
        width: root.inRow ? root.resultNeeds : root.contentWidth
        InkText {
            id: word
            visible: text !== ""
            width: parent.width
            text: root.block.result
            strong: true
            horizontalAlignment: root.inRow ? Text.AlignRight : Text.AlignLeft
            wrapMode: Text.Wrap
        }
        InkText {
            id: note
            visible: text !== ""
            width: parent.width
            text: root.block.resultNote
            color: Theme.ink2
            horizontalAlignment: root.inRow ? Text.AlignRight : Text.AlignLeft
            wrapMode: Text.Wrap
        }
    }
}
