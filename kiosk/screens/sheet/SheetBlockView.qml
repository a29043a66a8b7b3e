import QtQuick
import Holdfast.Screens

// The part that draws a block's kind.
Loader {
    id: root

    required property SheetBlockModel entry
    required property int index
    readonly property bool first: root.index === 0
    signal triggered(string id)

    onEntryChanged: root.setSource(root.partOf(root.entry.kind), {
        block: root.entry
    })

    function partOf(kind: int): string {
        switch (kind) {
        case SheetKinds.Heading:
            return "SheetHeading.qml";
        case SheetKinds.Figure:
            return "SheetFigure.qml";
        case SheetKinds.Facts:
            return "SheetFacts.qml";
        case SheetKinds.Rows:
            return "SheetRows.qml";
        case SheetKinds.Fields:
            return "SheetFields.qml";
        case SheetKinds.Choices:
            return "SheetChoices.qml";
        case SheetKinds.Actions:
            return "SheetButtons.qml";
        case SheetKinds.Scale:
            return "SheetScale.qml";
        case SheetKinds.GradeChart:
            return "SheetGradeChart.qml";
        case SheetKinds.Pictures:
            return "SheetPictures.qml";
        case SheetKinds.Halves:
            return "SheetHalves.qml";
        case SheetKinds.GradeKeys:
            return "SheetGradeKeys.qml";
        case SheetKinds.CrackKeys:
            return "SheetCrackKeys.qml";
        case SheetKinds.Stretch:
            return "SheetStretch.qml";
        case SheetKinds.Ticks:
            return "SheetTicks.qml";
        case SheetKinds.PieceBar:
            return "SheetPieceBar.qml";
        case SheetKinds.Trail:
            return "SheetTrail.qml";
        case SheetKinds.TrendChart:
            return "SheetTrendChart.qml";
        default:
            return "SheetSentence.qml";
        }
    }
    Connections {
        target: root.item
        ignoreUnknownSignals: true
        function onTriggered(id: string) {
            root.triggered(id);
        }
    }
}
