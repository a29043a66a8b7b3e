import QtQuick
import Holdfast.Screens

// How much room the labels of buttons need.
FontMetrics {
    id: root

    font.family: Theme.family
    font.pixelSize: Theme.text
    font.bold: true
    font.letterSpacing: Theme.trackingOf(Theme.text)

    // In two lines; the break rarely falls into the middle.
    function inTwoLines(label: string): real {
        let need = 0.65 * root.advanceWidth(label);
        for (const word of label.split(" ")) {
            need = Math.max(need, root.advanceWidth(word));
        }
        return need;
    }
}
