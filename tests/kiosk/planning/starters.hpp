#pragma once

#include "kiosk/shop/planning/plan_draft.hpp"

namespace holdfast::kiosk::shop {

/// What a new kiosk has.
inline Stock starters() {
    return {analytics::starterFamilies(), analytics::starterFabrics()};
}

} // namespace holdfast::kiosk::shop
