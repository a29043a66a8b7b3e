pragma ComponentBehavior: Bound
import QtQuick
import Holdfast.Screens

// Types the text of a field by touch. A keyboard writes into the same line; a scan never gets here, the wedge filter
// takes its keys before.
Rectangle {
    id: root

    required property typePadState pad
    property bool portrait: false
    property bool capitals: false
    readonly property bool digits: root.pad.keys === SheetKinds.Number || root.pad.keys === SheetKinds.Date || root.pad.keys === SheetKinds.Secret
    readonly property bool upper: root.pad.keys === SheetKinds.Code || root.capitals
    readonly property real gap: Theme.px(12)
    readonly property real keysTop: line.y + line.height + Theme.px(12)
    signal entered(string text)
    signal dismissed

    color: Theme.paper
    Accessible.role: Accessible.Dialog
    Accessible.name: root.pad.label
    onVisibleChanged: root.begin()
    onPadChanged: root.begin()
    Component.onCompleted: root.begin()

    function begin() {
        if (root.visible && root.pad.id !== "") {
            input.text = root.pad.text;
            root.capitals = root.pad.keys === SheetKinds.Text && root.pad.text === "";
            input.forceActiveFocus();
        }
    }
    function put(sign: string) {
        input.insert(input.cursorPosition, sign);
        input.tidy();
        // Only the first letter of a text is a capital by itself.
        root.capitals = root.capitals && input.text.length > 1;
    }
    function erase() {
        input.remove(input.cursorPosition - 1, input.cursorPosition);
    }
    Keys.onEscapePressed: root.dismissed()
    // A key of the pad has the focus: what is typed still belongs to the line.
    Keys.onPressed: event => {
        if (event.key === Qt.Key_Backspace) {
            root.erase();
            event.accepted = true;
        } else if (event.text.length === 1 && event.text >= " " && event.key !== Qt.Key_Delete) {
            root.put(event.text);
            event.accepted = true;
        }
    }
    MouseArea {
        anchors.fill: parent
    }
    InkText {
        id: label
        x: Theme.edge
        y: Theme.px(12)
        width: Math.min(implicitWidth, parent.width - 2 * x)
        text: root.pad.label
        strong: true
        size: Theme.lead
        wrapMode: Text.Wrap
    }
    InkText {
        id: hint
        readonly property real beside: label.x + label.width + Theme.edge
        readonly property bool under: root.width - beside - Theme.edge < implicitWidth
        x: under ? Theme.edge : beside
        y: under ? label.y + label.height : label.y + Theme.px(5)
        width: root.width - x - Theme.edge
        visible: text !== ""
        text: root.pad.hint
        color: Theme.ink2
        wrapMode: Text.Wrap
    }
    Rectangle {
        id: line
        x: Theme.edge
        y: Math.max(label.y + label.height, hint.visible ? hint.y + hint.height : 0) + Theme.px(6)
        width: parent.width - 2 * x
        height: Math.max(Theme.px(root.digits ? 72 : 64), input.contentHeight + Theme.px(20))
        color: Theme.clear
        border.width: Theme.strong
        border.color: Theme.ink
        TextInput {
            id: input
            x: Theme.px(16)
            anchors.verticalCenter: parent.verticalCenter
            width: parent.width - 2 * x
            color: Theme.ink
            selectionColor: Theme.ink
            selectedTextColor: Theme.paper
            font.family: Theme.family
            font.bold: true
            font.pixelSize: root.digits ? Theme.figure : Theme.lead
            wrapMode: TextInput.Wrap
            maximumLength: root.digits ? 24 : 120
            echoMode: root.pad.keys === SheetKinds.Secret ? TextInput.Password : TextInput.Normal
            passwordCharacter: "•"
            inputMethodHints: Qt.ImhNoPredictiveText
            Accessible.role: Accessible.EditableText
            Accessible.name: root.pad.label
            onTextEdited: tidy()
            onAccepted: root.entered(text)

            // What the field cannot hold never stands there; a comma is a point to a number.
            function tidied(): string {
                switch (root.pad.keys) {
                case SheetKinds.Number:
                    return input.text.replace(/,/g, ".").replace(/−/g, "-").replace(/[^0-9.\-]/g, "");
                case SheetKinds.Date:
                    return input.text.replace(/[./]/g, "-").replace(/[^0-9\-]/g, "");
                case SheetKinds.Code:
                    return input.text.toUpperCase();
                default:
                    return input.text;
                }
            }
            function tidy() {
                const tidied = input.tidied();
                if (tidied !== input.text) {
                    const fromEnd = input.text.length - input.cursorPosition;
                    input.text = tidied;
                    input.cursorPosition = Math.max(0, tidied.length - fromEnd);
                }
            }
            cursorDelegate: Rectangle {
                visible: input.activeFocus
                width: Theme.px(3)
                color: Theme.ink
            }
        }
    }
    PadKeys {
        id: keys
        x: Theme.edge
        y: root.keysTop
        width: root.width - 2 * x
        height: (root.digits ? bottomRow.y : shiftRow.y) - y - root.gap
        portrait: root.portrait
        gap: root.gap
        kind: root.pad.keys
        letters: root.pad.letters
        upper: root.upper
        onTyped: sign => root.put(sign)
    }
    Row {
        id: shiftRow
        x: Theme.edge
        y: bottomRow.y - Theme.button - root.gap
        visible: !root.digits
        spacing: root.gap
        readonly property real unit: (root.width - 2 * x - 2 * spacing) / 4
        PressButton {
            visible: root.pad.keys === SheetKinds.Text
            width: shiftRow.unit
            label: root.pad.shift
            role: Accessible.CheckBox
            Accessible.checkable: true
            Accessible.checked: root.capitals
            onActivated: root.capitals = !root.capitals
        }
        PressButton {
            width: root.pad.keys === SheetKinds.Text ? 2 * shiftRow.unit : 3 * shiftRow.unit + shiftRow.spacing
            label: root.pad.space
            onActivated: root.put(" ")
        }
        PressButton {
            width: shiftRow.unit
            label: root.pad.erase
            onActivated: root.erase()
        }
    }
    Row {
        id: bottomRow
        x: Theme.edge
        y: parent.height - height - Theme.px(14)
        spacing: Theme.gutter
        readonly property int count: root.digits ? 3 : 2
        readonly property real each: (root.width - 2 * x - (count - 1) * spacing) / count
        PressButton {
            visible: root.digits
            width: bottomRow.each
            label: root.pad.erase
            onActivated: root.erase()
        }
        PressButton {
            width: bottomRow.each
            label: root.pad.enter
            primary: true
            onActivated: root.entered(input.text)
        }
        PressButton {
            width: bottomRow.each
            label: root.pad.leave
            onActivated: root.dismissed()
        }
    }
}
