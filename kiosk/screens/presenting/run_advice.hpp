#pragma once

#include "kiosk/screens/presenting/run_presenter.hpp"

namespace holdfast::kiosk::screens {

/// Do now, Why, Kept: what the right column says when there is something to do or to wait for; empty: the lot stands
/// there instead.
[[nodiscard]] QList<AdviceSection> adviceOf(const shop::ProvingState& state, const RunView& view,
                                            const wording::Speech& speech);

} // namespace holdfast::kiosk::screens
