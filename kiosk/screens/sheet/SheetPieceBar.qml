import QtQuick
import Holdfast.Screens

// The pieces of a run: what is proven, what is to be pulled, what was read.
SheetLabelled {
    id: root

    contentNeeds: Theme.px(480)
    PieceBar {
        width: root.contentWidth
        height: implicitHeight
        inks: Theme.inks
        unit: Theme.unit
        family: Theme.family
        barState: root.block.pieces
        Accessible.role: Accessible.Graphic
        Accessible.name: Spoken.join([root.spokenLabel, root.block.pieces.spoken])
    }
}
