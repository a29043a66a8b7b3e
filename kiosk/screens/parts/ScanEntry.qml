pragma ComponentBehavior: Bound
import QtQuick
import Holdfast.Screens

// A pad of our own for the 31 signs of a code, when the scanner is away. Keys of a keyboard work too.
Rectangle {
    id: root

    required property scanEntryTexts texts
    property bool portrait: false
    property string code: ""
    readonly property string signs: "0123456789ACDEFGHJKLMNPQRTUVWXY"
    readonly property int columns: 8
    readonly property real gap: Theme.px(12)
    readonly property real keyWidth: (width - 2 * Theme.edge - (columns - 1) * gap) / columns
    readonly property int rows: Math.ceil((root.signs.length + 1) / root.columns)
    readonly property real keyHeight: Math.min(Theme.px(96), (bottomRow.y - keys.y - root.gap) / root.rows - root.gap)
    signal entered(string code)
    signal dismissed

    color: Theme.paper
    // It may be made when it is opened first, or long before.
    Component.onCompleted: root.begin()
    onVisibleChanged: root.begin()
    Accessible.role: Accessible.Dialog
    Accessible.name: root.texts.title

    function begin() {
        root.code = "";
        if (visible) {
            root.forceActiveFocus();
        }
    }
    function put(sign: string) {
        if (root.code.length < 12) {
            root.code += sign;
        }
    }
    function erase() {
        root.code = root.code.slice(0, -1);
    }
    function finish() {
        if (root.code !== "") {
            root.entered(root.code);
        }
    }
    Keys.onPressed: event => {
        const sign = event.text.toUpperCase();
        if (sign.length === 1 && root.signs.includes(sign)) {
            root.put(sign);
            event.accepted = true;
        } else if (event.key === Qt.Key_Backspace) {
            root.erase();
            event.accepted = true;
        } else if (event.key === Qt.Key_Escape) {
            root.dismissed();
            event.accepted = true;
        } else if (event.key === Qt.Key_Return || event.key === Qt.Key_Enter) {
            root.finish();
            event.accepted = true;
        }
    }
    MouseArea {
        anchors.fill: parent
    }
    InkText {
        id: title
        x: Theme.edge
        y: Theme.px(16)
        text: root.texts.title
        strong: true
        size: Theme.lead
    }
    InkText {
        x: root.portrait ? Theme.edge : title.x + title.width + Theme.px(24)
        y: root.portrait ? Theme.px(52) : Theme.px(21)
        text: root.texts.hint
        color: Theme.ink2
    }
    Rectangle {
        id: field
        x: Theme.edge
        y: root.portrait ? Theme.px(92) : Theme.px(60)
        width: parent.width - 2 * x
        height: Theme.px(72)
        color: Theme.clear
        border.width: Theme.strong
        border.color: Theme.ink
        Accessible.role: Accessible.EditableText
        Accessible.name: root.code
        InkText {
            anchors.verticalCenter: parent.verticalCenter
            x: Theme.px(16)
            text: root.code
            strong: true
            size: Theme.figure
            font.letterSpacing: Theme.px(4)
        }
    }
    Grid {
        id: keys
        x: Theme.edge
        y: field.y + field.height + Theme.px(16)
        columns: root.columns
        spacing: root.gap
        Repeater {
            model: root.signs.length
            PressButton {
                required property int index
                width: root.keyWidth
                height: root.keyHeight
                label: root.signs[index]
                size: Theme.lead
                onActivated: root.put(label)
            }
        }
        PressButton {
            width: root.keyWidth
            height: root.keyHeight
            label: root.texts.erase
            onActivated: root.erase()
        }
    }
    Row {
        id: bottomRow
        x: Theme.edge
        y: parent.height - Theme.px(80)
        spacing: Theme.gutter
        readonly property real each: (root.width - 2 * x - spacing) / 2
        PressButton {
            width: bottomRow.each
            label: root.texts.enter
            primary: true
            onActivated: root.finish()
        }
        PressButton {
            width: bottomRow.each
            label: root.texts.leave
            onActivated: root.dismissed()
        }
    }
}
