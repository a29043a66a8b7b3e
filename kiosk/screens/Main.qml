import QtQuick
import QtQuick.Window
import Holdfast.Screens

Window {
    id: window

    required property KioskModel kiosk

    title: "Holdfast"
    width: 1280
    height: 800
    visible: true
    color: Theme.paper

    Kiosk {
        anchors.fill: parent
        kiosk: window.kiosk
        focus: true
    }
}
