#pragma once

#include "kiosk/screens/presenting/run_presenter.hpp"

namespace holdfast::kiosk::screens {

/// The lot of the run announced and its newest readings; empty without a run.
[[nodiscard]] LotState lotOf(const shop::ProvingState& state, const wording::Speech& speech);

} // namespace holdfast::kiosk::screens
