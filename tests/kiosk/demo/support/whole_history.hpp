#pragma once

#include "kiosk/demo/history/history_model.hpp"

namespace holdfast::kiosk::demo {

/// The facts of the whole history, made once.
inline const HistoryFacts& whole() {
    static const auto facts = historyOf(HistoryPlan{});
    return facts;
}

} // namespace holdfast::kiosk::demo
