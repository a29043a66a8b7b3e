#pragma once

#include "kiosk/screens/dryer/dryer_page_state.hpp"
#include "kiosk/screens/presenting/floor_facts.hpp"
#include "kiosk/shop/proving/proving_state.hpp"
#include "kiosk/wording/sentences.hpp"

namespace holdfast::kiosk::screens {

/// The home page: what is on the belt, what came before, what is due, what is on hold.
[[nodiscard]] DryerPageState dryerPageOf(const shop::ProvingState& state, const FloorFacts& facts,
                                         const wording::Speech& speech);

} // namespace holdfast::kiosk::screens
