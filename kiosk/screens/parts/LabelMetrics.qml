import QtQuick
import Holdfast.Screens

// How much room the labels of buttons need.
FontMetrics {
    id: root

    font.family: Theme.family
    font.pixelSize: Theme.text
    font.bold: true
    font.letterSpacing: Theme.trackingOf(Theme.text)

    // In two lines, broken where the longer one is shortest.
    function inTwoLines(label: string): real {
        const words = label.split(" ");
        let least = root.advanceWidth(label);
        for (let i = 1; i < words.length; ++i) {
            const first = root.advanceWidth(words.slice(0, i).join(" "));
            const second = root.advanceWidth(words.slice(i).join(" "));
            least = Math.min(least, Math.max(first, second));
        }
        return least;
    }
}
