#pragma once

#include "analytics/cure/verdict.hpp"
#include "analytics/cure/window.hpp"
#include "kiosk/screens/parts/page_parts.hpp"
#include "kiosk/wording/sentences.hpp"

namespace holdfast::kiosk::screens {

/// The left column of Run: layers top film first, each with its own verdict if there is one; cloth; window.
[[nodiscard]] PrintState printOf(const analytics::RunPlan& plan, const analytics::RunWindow& window,
                                 const analytics::Verdict* verdict, const wording::Speech& speech);

} // namespace holdfast::kiosk::screens
