#pragma once

#include "analytics/statistics/counts/rate_ratio.hpp"
#include "analytics/statistics/counts/reporting_delay.hpp"

namespace holdfast::analytics::statistics {

/// What went out in one week, and the complaints about it so far.
struct ShippedWeek {
    std::int64_t age = 0; ///< weeks ago
    double shipped = 0.0; ///< pieces (or lots), finite, ≥ 0
    std::int64_t complaints = 0;
};

struct FixQuestion {
    double weeklyShipped = 0.0; ///< what will go out each coming week
    double effect = 0.5;        ///< rate after over rate before that is to be shown; below 1
    double power = 0.80;
    double risk = 0.05; ///< two-sided: the test is one-sided at half of it
    double confidence = 0.95;
    std::int64_t horizon = 520; ///< weeks looked ahead
};

struct FixCheck {
    double exposedBefore = 0.0; ///< shipped × share of its complaints that has come
    double exposedAfter = 0.0;
    RateRatio afterOverBefore;
    double powerNow = 0.0;                   ///< chance that the effect asked about would show today
    std::optional<std::int64_t> weeksToShow; ///< first week from today in which it would; absent: not within horizon
};

/// Did a fix work, corrected for complaints not yet come: each week's shipment counts with the share of its complaints
/// that has arrived at its age (Lawless, Can. J. Stat. 22, 1994, 15–31), and rates before and after are compared
/// exactly (compareRates). When `effect` could show: the power of that test with the rate before as found and shipments
/// going on (lowerRatePower). No complaint before the fix: nothing can show, weeksToShow is absent. Nothing exposed
/// before or after: NoValues. Cost: (horizon + weeks)² + horizon tests.
[[nodiscard]] tl::expected<FixCheck, StatisticsFault> checkFix(const DelayCurve& curve,
                                                               std::span<const ShippedWeek> before,
                                                               std::span<const ShippedWeek> after,
                                                               const FixQuestion& question = {});

} // namespace holdfast::analytics::statistics
