#include "kiosk/screens/presenting/shown.hpp"

namespace holdfast::kiosk::screens {

MarkKind markOf(analytics::Word word) noexcept {
    switch (word) {
    case analytics::Word::cured:
        return MarkKind::Cured;
    case analytics::Word::underCured:
        return MarkKind::UnderCured;
    case analytics::Word::overheated:
        return MarkKind::Overheated;
    case analytics::Word::notProven:
    case analytics::Word::refused:
        return MarkKind::NotProven;
    }
    return MarkKind::NotProven;
}

QString withLargeFirst(const std::string& text) {
    QString out = toQString(text);
    if (!out.isEmpty()) {
        out[0] = out[0].toUpper();
    }
    return out;
}

} // namespace holdfast::kiosk::screens
