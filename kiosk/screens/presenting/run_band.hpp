#pragma once

#include "kiosk/screens/parts/page_parts.hpp"
#include "kiosk/shop/proving/proving_state.hpp"
#include "kiosk/wording/sentences.hpp"

namespace holdfast::kiosk::screens {

/// The verdict band: a verdict only if it is kept; otherwise what is being waited for.
[[nodiscard]] BandState bandOf(const shop::ProvingState& state, const wording::Speech& speech);

} // namespace holdfast::kiosk::screens
