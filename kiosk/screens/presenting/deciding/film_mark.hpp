#pragma once

#include "analytics/cure/verdict.hpp"
#include "kiosk/screens/parts/kinds.hpp"

namespace holdfast::kiosk::screens {

/// The film's drawing for a verdict; what was refused has none.
[[nodiscard]] constexpr MarkKind filmMark(analytics::Word word) noexcept {
    switch (word) {
    case analytics::Word::cured:
        return MarkKind::Cured;
    case analytics::Word::underCured:
        return MarkKind::UnderCured;
    case analytics::Word::overheated:
        return MarkKind::Overheated;
    case analytics::Word::notProven:
        return MarkKind::NotProven;
    case analytics::Word::refused:
        break;
    }
    return MarkKind::Blank;
}

} // namespace holdfast::kiosk::screens
