pragma ComponentBehavior: Bound
import QtQuick
import Holdfast.Screens

// The signs of a pad: digits, letters of the language and what names and references need; or digits alone, large.
Grid {
    id: root

    required property int kind
    required property string letters
    property bool upper: false
    property bool portrait: false
    property real gap: 0
    signal typed(string sign)

    readonly property bool digits: root.kind === SheetKinds.Number || root.kind === SheetKinds.Date || root.kind === SheetKinds.Secret
    readonly property string shownLetters: root.upper ? root.letters.toUpperCase() : root.letters
    readonly property string signs: {
        switch (root.kind) {
        case SheetKinds.Number:
            return "123456789−0.";
        case SheetKinds.Date:
            return "123456789-0";
        case SheetKinds.Secret:
            return "123456789 0"; // a blank has no key, so that 0 stands in the middle as on any pad of digits
        case SheetKinds.Code:
            return "1234567890-./" + root.letters.toUpperCase();
        default:
            return root.portrait ? "1234567890" + root.shownLetters + "-.,/'&+%:()#@_" : "1234567890-.," + root.shownLetters + "/'&+%:()#@_!?";
        }
    }
    readonly property int lines: Math.ceil(root.signs.length / root.columns)
    readonly property real keyWidth: Math.floor((root.width - (root.columns - 1) * root.gap) / root.columns)
    readonly property real keyHeight: Math.min(Theme.px(root.digits ? 132 : 88), Math.floor((root.height - (root.lines - 1) * root.gap) / root.lines))

    columns: root.digits ? 3 : root.portrait ? 10 : 13
    rowSpacing: root.gap
    // What rounding the keys to whole pixels leaves goes between them.
    columnSpacing: (root.width - root.columns * root.keyWidth) / (root.columns - 1)
    Repeater {
        model: root.signs.length
        PressButton {
            required property int index
            width: root.keyWidth
            height: root.keyHeight
            label: index < root.signs.length ? root.signs[index] : ""
            enabledTouch: label !== " "
            opacity: enabledTouch ? 1 : 0
            size: root.digits ? Theme.figure : Theme.lead
            onActivated: root.typed(label === "−" ? "-" : label)
        }
    }
}
