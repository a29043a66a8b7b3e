#pragma once

#include "kiosk/screens/parts/page_parts.hpp"
#include "kiosk/wording/notices.hpp"

namespace holdfast::kiosk::screens {

/// What happened, what was kept, what to do; one button that leaves. `leaveKey` is the label's key.
[[nodiscard]] RefusalState refusalOf(const wording::Notice& notice, const char* leaveId, const char* leaveKey,
                                     const wording::Speech& speech);

} // namespace holdfast::kiosk::screens
