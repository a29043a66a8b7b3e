pragma ComponentBehavior: Bound
import QtQuick
import Holdfast.Screens

// The places that exist; the one that stands here is filled. Upright, many places take two rows.
Item {
    id: root

    required property list<var> places
    required property string place
    property bool portrait: false
    signal triggered(string id)

    readonly property int count: root.places.length
    readonly property int lines: root.portrait && root.count > 4 ? 2 : 1
    readonly property int perLine: Math.max(1, Math.ceil(root.count / root.lines))
    // What the names leave of the row is the air around them: 40 if there is that much.
    readonly property real air: Math.min(Theme.px(40), (root.width - root.namesWidth()) / Math.max(1, root.count))
    readonly property bool crowded: root.rowWidth(Theme.px(135)) > root.width
    readonly property real least: Theme.px(root.crowded ? 74 : 135)
    // Many places share what is left of the row; a few stand at its left.
    readonly property real share: root.count > 4 ? Math.max(0, Math.floor((root.width - root.rowWidth(root.least)) / root.count)) : 0
    height: root.lines * Theme.placesBar

    function nameWidth(place: placeState): real {
        return Math.ceil(metrics.advanceWidth(place.label));
    }
    function namesWidth(): real {
        let sum = 0;
        for (let i = 0; i < root.count; ++i) {
            sum += root.nameWidth(root.places[i]);
        }
        return sum;
    }
    function rowWidth(least: real): real {
        let sum = 0;
        for (let i = 0; i < root.count; ++i) {
            sum += Math.max(least, root.nameWidth(root.places[i]) + root.air);
        }
        return sum;
    }
    function widthOf(place: placeState, index: int): real {
        if (root.lines > 1) {
            const each = Math.floor(root.width / root.perLine);
            return (index + 1) % root.perLine > 0 ? each : root.width - (root.perLine - 1) * each;
        }
        return Math.max(root.least, root.nameWidth(place) + root.air) + root.share;
    }

    FontMetrics {
        id: metrics
        font.family: Theme.family
        font.pixelSize: Theme.text
        font.bold: true
        font.letterSpacing: Theme.trackingOf(Theme.text)
    }
    Flow {
        id: cells
        width: root.width + 1
        Repeater {
            model: root.places
            Item {
                id: cell
                required property int index
                required property placeState modelData
                readonly property bool chosen: modelData.id === root.place
                width: root.widthOf(modelData, index)
                height: Theme.placesBar

                Rectangle {
                    anchors.fill: parent
                    color: cell.chosen !== press.down ? Theme.ink : Theme.paper
                }
                Rule {
                    visible: !cell.chosen && (cell.index + 1) % root.perLine > 0
                    width: Theme.hair
                    height: Theme.px(40)
                    anchors.right: parent.right
                    anchors.verticalCenter: parent.verticalCenter
                }
                InkText {
                    id: name
                    anchors.centerIn: parent
                    text: cell.modelData.label
                    strong: cell.chosen
                    color: cell.chosen !== press.down ? Theme.paper : Theme.ink
                }
                Pressable {
                    id: press
                    anchors.fill: parent
                    anchors.margins: Theme.deadEdge
                    ringOutset: 0
                    role: Accessible.PageTab
                    spoken: cell.modelData.label
                    onActivated: root.triggered(cell.modelData.id)
                }
                Rectangle {
                    anchors.fill: press
                    visible: press.activeFocus && cell.chosen
                    color: "transparent"
                    border.width: Theme.focusWidth
                    border.color: Theme.paper
                }
            }
        }
    }
    Rule {
        strong: true
        width: parent.width
    }
}
