pragma ComponentBehavior: Bound
import QtQuick
import Holdfast.Screens

// The classes of cracks as keys, each with its drawing; one of them chosen.
SheetLabelled {
    id: root

    signal triggered(string id)
    readonly property int count: root.block.cracks.length
    readonly property real gap: Theme.px(15)
    readonly property int perRow: root.widthOf(root.count) >= root.need() ? root.count : 2
    readonly property real each: root.widthOf(root.perRow)
    readonly property real high: Theme.px(root.inTwo() ? 140 : 112)

    function widthOf(columns: int): real {
        return Math.floor((root.contentWidth - (columns - 1) * root.gap) / Math.max(1, columns));
    }
    // The longest word of a label, with the key's edges.
    function need(): real {
        let need = Theme.px(100);
        for (let i = 0; i < root.count; ++i) {
            need = Math.max(need, metrics.inTwoLines(root.labelOf(root.block.cracks[i])) + Theme.px(20));
        }
        return need;
    }
    function inTwo(): bool {
        for (let i = 0; i < root.count; ++i) {
            if (metrics.advanceWidth(root.labelOf(root.block.cracks[i])) > root.each - Theme.px(16)) {
                return true;
            }
        }
        return false;
    }
    function labelOf(key: crackKey): string {
        return key.label;
    }

    LabelMetrics {
        id: metrics
    }
    Repeater {
        model: root.block.cracks
        Pressable {
            id: key
            required property int index
            required property crackKey modelData
            readonly property bool chosen: key.modelData.id === root.block.chosenId
            readonly property bool filled: key.chosen !== key.down
            x: (key.index % root.perRow) * (root.each + root.gap)
            y: Math.floor(key.index / root.perRow) * (root.high + root.gap)
            width: root.each
            height: root.high
            role: Accessible.RadioButton
            Accessible.checkable: true
            Accessible.checked: key.chosen
            spoken: Spoken.join([key.modelData.label, root.spokenLabel])
            onActivated: root.triggered(key.modelData.id)
            Rectangle {
                anchors.fill: parent
                color: key.filled ? Theme.ink : Theme.paper
                border.width: Theme.strong
                border.color: Theme.ink
            }
            CrackSwatch {
                anchors.horizontalCenter: parent.horizontalCenter
                y: Theme.px(14)
                width: Theme.px(80)
                height: Theme.px(52)
                inks: Theme.inks
                unit: Theme.unit
                crack: key.modelData.crack
            }
            InkText {
                y: Theme.px(74)
                anchors.horizontalCenter: parent.horizontalCenter
                width: parent.width - Theme.px(16)
                text: key.modelData.label
                strong: true
                color: key.filled ? Theme.paper : Theme.ink
                horizontalAlignment: Text.AlignHCenter
                wrapMode: Text.Wrap
            }
        }
    }
}
