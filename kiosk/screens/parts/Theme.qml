pragma Singleton
import QtQuick
import Holdfast.Screens

// Sizes are px at 1280x800 on a 15.6 inch panel (3.809 px a mm); px() turns them into this panel's. Set once by Kiosk.
QtObject {
    id: theme

    readonly property real designPxPerMm: 3.809
    property bool dark: false
    property real pxPerMm: designPxPerMm
    readonly property real unit: pxPerMm / designPxPerMm

    function px(design: real): real {
        return Math.round(design * theme.unit);
    }
    function mm(millimetres: real): real {
        return millimetres * theme.pxPerMm;
    }

    readonly property inkPalette inks: theme.dark ? Palettes.dark : Palettes.light
    readonly property color paper: theme.inks.paper
    readonly property color clear: theme.inks.clear
    readonly property color tint: theme.inks.tint
    readonly property color rule: theme.inks.rule
    readonly property color ink: theme.inks.ink
    readonly property color ink2: theme.inks.ink2

    function verdictColor(kind: int): color {
        switch (kind) {
        case Kinds.Cured:
            return theme.inks.cured;
        case Kinds.UnderCured:
            return theme.inks.underCured;
        case Kinds.Overheated:
            return theme.inks.overheated;
        default:
            return theme.inks.ink;
        }
    }

    readonly property string family: "B612"
    readonly property int text: px(21)
    readonly property int lead: px(28)
    readonly property int figure: px(40)
    readonly property int margin: px(64)
    readonly property int verdict: px(96)
    // Line heights and tracking that go with the sizes above.
    function lineOf(pixelSize: int): real {
        return pixelSize <= theme.text ? px(28) : pixelSize <= theme.figure ? pixelSize + px(8) : pixelSize + px(8);
    }
    function trackingOf(pixelSize: int): real {
        return (pixelSize >= theme.margin ? -1 : pixelSize >= theme.figure ? -0.4 : -0.2) * theme.unit;
    }

    readonly property real edge: px(24)
    readonly property real gutter: px(16)
    readonly property real hair: Math.max(1, px(1))
    readonly property real strong: px(2)
    readonly property real marked: px(4)
    readonly property real header: px(72)
    readonly property real band: px(160)
    readonly property real bandPortrait: px(208)
    readonly property real actionBar: px(96)
    readonly property real placesBar: px(72)
    readonly property real button: px(64)
    readonly property real row: px(72)
    readonly property real deadEdge: px(6)
    readonly property real core: px(96)
    readonly property real coreLayer: px(64)
    readonly property real focusWidth: px(3)
    readonly property real focusOutset: px(6)
    // Under this page height (px at 1280x800) the gaps close up.
    readonly property real compactBelow: px(780)
}
