import QtQuick
import Holdfast.Screens

// A text in one of the five sizes; plain second ink or bold ink.
Text {
    property bool strong: false

    color: Theme.ink
    font.family: Theme.family
    font.pixelSize: Theme.text
    font.bold: strong
    font.letterSpacing: Theme.trackingOf(font.pixelSize)
    lineHeightMode: Text.FixedHeight
    lineHeight: Theme.lineOf(font.pixelSize)
    textFormat: Text.PlainText
}
