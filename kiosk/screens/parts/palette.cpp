#include "kiosk/screens/parts/palette.hpp"

namespace holdfast::kiosk::screens {

QColor InkPalette::of(MarkKind kind) const {
    switch (kind) {
    case MarkKind::Cured:
        return cured;
    case MarkKind::UnderCured:
        return underCured;
    case MarkKind::Overheated:
        return overheated;
    case MarkKind::Blank:
    case MarkKind::NotProven:
    case MarkKind::Closed:
        break;
    }
    return ink;
}

InkPalette lightPalette() {
    return {.paper = QColor(0xFA, 0xF8, 0xF3),
            .clear = QColor(0xFF, 0xFF, 0xFF),
            .tint = QColor(0xEF, 0xEB, 0xE1),
            .rule = QColor(0xC9, 0xC3, 0xB4),
            .ink = QColor(0x1B, 0x1D, 0x21),
            .ink2 = QColor(0x49, 0x4A, 0x4E),
            .cured = QColor(0x08, 0x5F, 0x5F),
            .underCured = QColor(0x8D, 0x21, 0x02),
            .overheated = QColor(0x48, 0x03, 0x7C),
            .hatchAlpha = 0.45,
            .dotAlpha = 0.55};
}

InkPalette darkPalette() {
    return {.paper = QColor(0x15, 0x18, 0x1C),
            .clear = QColor(0x0C, 0x0E, 0x11),
            .tint = QColor(0x20, 0x24, 0x2A),
            .rule = QColor(0x4C, 0x51, 0x59),
            .ink = QColor(0xF1, 0xEE, 0xE7),
            .ink2 = QColor(0xBD, 0xBA, 0xB2),
            .cured = QColor(0x3F, 0xC9, 0xB0),
            .underCured = QColor(0xFF, 0x8A, 0x4C),
            .overheated = QColor(0xCD, 0xA0, 0xFF),
            .hatchAlpha = 0.50,
            .dotAlpha = 0.70};
}

} // namespace holdfast::kiosk::screens
