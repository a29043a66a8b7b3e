#pragma once

#include "kiosk/screens/kiosk_state.hpp"
#include "kiosk/wording/notices.hpp"

namespace holdfast::kiosk::screens {

/// The whole screen when the book cannot be opened; its one action closes the kiosk.
[[nodiscard]] KioskState startFailureOf(const wording::Notice& notice, const wording::Speech& speech);

} // namespace holdfast::kiosk::screens
