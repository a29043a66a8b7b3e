pragma Singleton
import QtQuick

// What a screen reader says of a thing that is drawn in pieces.
QtObject {
    function join(parts: list<string>): string {
        let said = "";
        for (let i = 0; i < parts.length; ++i) {
            if (parts[i] !== "") {
                said += (said === "" ? "" : ", ") + parts[i];
            }
        }
        return said;
    }
}
