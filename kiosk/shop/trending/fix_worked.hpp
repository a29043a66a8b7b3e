#pragma once

#include "analytics/statistics/counts/fix_check.hpp"
#include "kiosk/shop/trending/suspects.hpp"

namespace holdfast::kiosk::shop::trending {

struct FixVerdict final {
    analytics::statistics::FixCheck check{}; ///< all zero while nothing that went out since can have come back
    bool worked = false;                     ///< fewer complaints, shown
    bool gotWorse = false;                   ///< more, shown
    bool tooEarly = false;                   ///< a halving could not show yet
    std::optional<std::int64_t> askAgain{};  ///< time from which it could; absent: never, within ten years
    std::int64_t complaintsBefore = 0;
    std::int64_t complaintsAfter = 0;
    std::int64_t shippedBefore = 0; ///< pieces
    std::int64_t shippedAfter = 0;
};

struct FixAsked final {
    std::int64_t at = 0; ///< when it was put right
    std::int64_t now = 0;
    std::optional<FactorLevel> level{}; ///< lots that carry it; absent: all
    std::int64_t lookBackWeeks = 26;
};

/// Whether fewer complaints of print failure came since, corrected for those that have not arrived yet by the shop's
/// own delays. Refusals: tooFewFailures without a complaint before, noLots without a shipment before.
///
/// While a halving could not show it is too early, and askAgain is the first week, counted from now, in which it could:
/// shipments go on at the mean of the weeks looked back on; each week's pieces are exposed by the share of its
/// complaints that the shop's delay curve says has come by then; the rate before is the one found, the rate after half
/// of it; and the exact test of two rates at 2.5 % one-sided is asked for a power of 80 % (checkFix).
[[nodiscard]] Figure<FixVerdict> fixWorked(const TrendFacts& facts, const FixAsked& asked);

} // namespace holdfast::kiosk::shop::trending
