import QtQuick
import Holdfast.Screens

// A ruled line: 2 px ink parts sections, 1 px rule parts rows.
Rectangle {
    property bool strong: false

    implicitHeight: strong ? Theme.strong : Theme.hair
    implicitWidth: Theme.hair
    color: strong ? Theme.ink : Theme.rule
}
