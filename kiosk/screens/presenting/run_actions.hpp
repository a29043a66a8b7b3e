#pragma once

#include "kiosk/screens/presenting/run_presenter.hpp"

namespace holdfast::kiosk::screens {

/// The action bar of Run in the order of the work; at most one is primary.
[[nodiscard]] QList<ActionState> actionsOf(const shop::ProvingState& state, const wording::Speech& speech);

} // namespace holdfast::kiosk::screens
