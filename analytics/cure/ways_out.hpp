#pragma once

#include "analytics/cure/window.hpp"

#include <vector>

namespace holdfast::analytics {

inline constexpr std::size_t kWaysOutShown = 20;

struct WaysOut final {
    std::vector<WayOut> ways; ///< sorted, at most kWaysOutShown
    int leftOut = 0;          ///< stops at the largest int
};

/// All ways of the smallest size that open a window that is not open (decisions 1, Ways out). The plan must be sound.
///
/// With one instrument and one value of the hard upper fixed, each layer's families can be judged alone, so the ways
/// are products of lists: they are counted and put in order without being written out. Work grows with instruments ×
/// ceilings × layers × families, never with the number of ways.
[[nodiscard]] WaysOut waysOutOf(const RunPlan& plan, const Calibration* instrument, const Choices& choices,
                                const GuardSetting& guard, const WindowRules& rules);

} // namespace holdfast::analytics
