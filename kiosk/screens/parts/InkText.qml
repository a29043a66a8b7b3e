import QtQuick
import Holdfast.Screens

// A text in one of the five sizes; plain second ink or bold ink.
Text {
    property bool strong: false
    property int size: Theme.text

    color: Theme.ink
    font.family: Theme.family
    font.pixelSize: size
    font.bold: strong
    font.letterSpacing: Theme.trackingOf(size)
    lineHeightMode: Text.FixedHeight
    lineHeight: Theme.lineOf(size)
    textFormat: Text.PlainText
}
