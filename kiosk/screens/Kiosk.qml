import QtQuick
import Holdfast.Screens

// In 6.4 a Loader cannot make bound components, and without that qmllint does not see that `root` is in reach of them.
// qmllint disable unqualified

// The whole face: head, page, bar, and what may lie over them. Only arranges; whatever a person does leaves by `kiosk`.
Rectangle {
    id: root

    required property KioskModel kiosk
    readonly property bool portrait: root.height > root.width
    readonly property string place: root.kiosk.place
    readonly property bool sheetShown: place !== "" && place !== "dryer" && place !== "run" && place !== "strip"
    readonly property bool placesShown: root.kiosk.place === "dryer" || root.sheetShown
    readonly property bool typing: root.kiosk.typePad.id !== ""
    readonly property bool pictured: root.kiosk.picture.leave !== ""
    readonly property bool padShown: root.kiosk.scanEntryOpen || root.typing || root.pictured
    readonly property real pageTop: header.height
    readonly property real pageHeight: root.height - header.height - (root.placesShown ? placesBar.height : 0)
    // The first frame is on the window: what is not seen yet may be made.
    property bool settled: false
    function settle() {
        root.settled = true;
    }

    color: Theme.paper

    // Sizes follow the panel's true density: its diagonal is the shop's setting, its pixels are this item.
    Binding {
        target: Theme
        property: "pxPerMm"
        value: Math.sqrt(root.width * root.width + root.height * root.height) / (root.kiosk.panelDiagonalInch * 25.4)
        when: root.width > 0
    }
    Binding {
        target: Theme
        property: "dark"
        value: root.kiosk.dark
    }

    Connections {
        target: root.Window.window
        enabled: !root.settled
        function onFrameSwapped() {
            // The frame's own business ends first.
            Qt.callLater(root.settle); // qmllint disable type
        }
    }

    FocusScope {
        id: page
        objectName: "page"
        anchors.fill: parent
        focus: true
        enabled: !root.padShown && !lock.visible

        // Another page: the keys start at its beginning, not where they stood on the one before.
        Item {
            id: start
        }
        Connections {
            target: root.kiosk
            function onPlaceChanged() {
                start.forceActiveFocus();
            }
        }

        DryerPage {
            visible: root.kiosk.place === "dryer" && !root.padShown
            y: root.pageTop
            width: root.width
            height: root.pageHeight
            portrait: root.portrait
            settled: root.settled
            model: root.kiosk.dryer
            refusal: root.kiosk.refusal
            refused: root.kiosk.refused
            refusalActions: root.kiosk.refusalActions
            onTriggered: id => root.kiosk.dryer.trigger(id)
        }
        Loader {
            visible: root.kiosk.place === "run" && !root.padShown
            active: visible || root.settled
            asynchronous: !visible
            y: root.pageTop
            width: root.width
            height: root.pageHeight
            sourceComponent: RunPage {
                portrait: root.portrait
                model: root.kiosk.run
                refusal: root.kiosk.refusal
                refused: root.kiosk.refused
                refusalActions: root.kiosk.refusalActions
                onTriggered: id => root.kiosk.run.trigger(id)
            }
        }
        Loader {
            visible: root.kiosk.place === "strip" && !root.padShown
            active: visible || root.settled
            asynchronous: !visible
            y: root.pageTop
            width: root.width
            height: root.pageHeight
            sourceComponent: StripPage {
                portrait: root.portrait
                model: root.kiosk.strip
                refusal: root.kiosk.refusal
                refused: root.kiosk.refused
                refusalActions: root.kiosk.refusalActions
                onTriggered: id => root.kiosk.strip.trigger(id)
            }
        }
        Loader {
            visible: root.sheetShown && !root.padShown
            active: visible || root.settled
            asynchronous: !visible
            y: root.pageTop
            width: root.width
            height: root.pageHeight
            sourceComponent: SheetPage {
                portrait: root.portrait
                model: root.kiosk.sheet
                refusal: root.kiosk.refusal
                refused: root.kiosk.refused
                refusalActions: root.kiosk.refusalActions
                onTriggered: id => root.kiosk.sheet.trigger(id)
            }
        }
        PlacesBar {
            id: placesBar
            visible: root.placesShown && !root.padShown
            anchors.bottom: parent.bottom
            width: parent.width
            portrait: root.portrait
            places: root.kiosk.places
            place: root.kiosk.barPlace
            onTriggered: id => root.kiosk.trigger(id)
        }
        // Last, so that the keys come to the work first.
        HeaderBar {
            id: header
            width: parent.width
            portrait: root.portrait
            model: root.kiosk.header
            onOpened: place => root.kiosk.trigger(place)
        }
    }
    Loader {
        visible: root.kiosk.scanEntryOpen
        active: visible || root.settled
        asynchronous: !visible
        y: root.pageTop
        width: root.width
        height: root.height - y
        onVisibleChanged: if (!visible) {
            page.forceActiveFocus();
        }
        sourceComponent: ScanEntry {
            visible: root.kiosk.scanEntryOpen
            portrait: root.portrait
            texts: root.kiosk.scanEntry
            onEntered: code => root.kiosk.typed(code)
            onDismissed: root.kiosk.closeScanEntry()
        }
    }
    Loader {
        visible: root.typing
        active: visible || root.settled
        asynchronous: !visible
        y: root.pageTop
        width: root.width
        height: root.height - y
        onVisibleChanged: if (!visible) {
            page.forceActiveFocus();
        }
        sourceComponent: TypePad {
            visible: root.typing
            portrait: root.portrait
            pad: root.kiosk.typePad
            onEntered: text => root.kiosk.padEntered(text)
            onDismissed: root.kiosk.padClosed()
        }
    }
    Loader {
        visible: root.pictured
        active: visible
        y: root.pageTop
        width: root.width
        height: root.height - y
        onVisibleChanged: if (!visible) {
            page.forceActiveFocus();
        }
        sourceComponent: PictureView {
            visible: root.pictured
            picture: root.kiosk.picture
            onDismissed: root.kiosk.closePicture()
        }
    }
    Loader {
        id: lock
        anchors.fill: parent
        visible: root.kiosk.touchLocked !== ""
        active: visible || root.settled
        asynchronous: !visible
        sourceComponent: MouseArea {
            Rectangle {
                anchors.centerIn: parent
                width: Math.min(parent.width - 2 * Theme.edge, words.implicitWidth + 2 * Theme.px(40))
                height: Theme.px(120)
                color: Theme.ink
                InkText {
                    id: words
                    anchors.centerIn: parent
                    text: root.kiosk.touchLocked
                    strong: true
                    size: Theme.lead
                    color: Theme.paper
                }
            }
        }
    }
}
