#pragma once

#include "kiosk/screens/strip/strip_page_state.hpp"
#include "kiosk/shop/proving/proving_state.hpp"
#include "kiosk/wording/sentences.hpp"

namespace holdfast::kiosk::screens {

/// The strip page of a state whose `strip` is set; otherwise an empty page.
[[nodiscard]] StripPageState stripPageOf(const shop::ProvingState& state, const wording::Speech& speech);

} // namespace holdfast::kiosk::screens
