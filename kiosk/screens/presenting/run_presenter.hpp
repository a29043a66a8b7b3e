#pragma once

#include "kiosk/screens/presenting/floor_facts.hpp"
#include "kiosk/screens/run/run_page_state.hpp"
#include "kiosk/shop/proving/proving_state.hpp"
#include "kiosk/wording/sentences.hpp"

namespace holdfast::kiosk::screens {

/// What the person at the screen has unfolded.
struct RunView final {
    bool why = false; ///< every reason instead of the first
};

/// The Run page of this state. Without a run: the page says so and offers to scan one.
[[nodiscard]] RunPageState runPageOf(const shop::ProvingState& state, const FloorFacts& facts, const RunView& view,
                                     const wording::Speech& speech);

} // namespace holdfast::kiosk::screens
