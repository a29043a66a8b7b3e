#pragma once

#include "analytics/statistics/charts/baseline.hpp"
#include "analytics/statistics/charts/rules.hpp"
#include "analytics/statistics/counts/proportion.hpp"
#include "kiosk/shop/trending/lot_outcomes.hpp"
#include "kiosk/shop/trending/since_when.hpp"

namespace holdfast::kiosk::shop::trending {

struct FailureWeek final {
    std::int64_t begins = 0; ///< local Monday, wall milliseconds
    int isoYear = 0;
    int isoWeek = 0;
    std::int64_t lots = 0; ///< 0: an empty week has no point
    std::int64_t failed = 0;
    std::optional<double> share{};
    std::optional<analytics::statistics::Limits> limits{}; ///< of this week, shares
    bool outside = false;                                  ///< above its upper limit
    std::uint16_t marks = 0;
    std::vector<FactIndex> failedLots{};
    int drawn = 0; ///< readings
    int bad = 0;   ///< of them
    int missed = 0;
};

struct FailureSignal final {
    analytics::statistics::NelsonRule rule{};
    analytics::statistics::SignalSide side{};
    std::vector<std::size_t> weeks{}; ///< places in FailureTrend::weeks
};

struct FailureQuestion final {
    TrendFilter filter{};
    std::optional<analytics::statistics::Baseline> baseline{};
    std::uint64_t seed = 1;
};

struct FailureTrend final {
    std::vector<FailureWeek> weeks{}; ///< every week from the first lot to the last
    std::int64_t lots = 0;
    std::int64_t failed = 0;
    Figure<double> usual{tl::unexpected(Refusal{})}; ///< share of failed lots in the baseline
    double dispersion = 1.0; ///< Laney's σz: how much more weeks differ than chance within them
    std::vector<analytics::statistics::ChartCaveat> caveats{};
    std::vector<FailureSignal> alarms{};
    Figure<analytics::statistics::RateWithMissed> readingRate{tl::unexpected(Refusal{})}; ///< of drawn readings
    Figure<SinceWhen> since{tl::unexpected(Refusal{})};
};

/// p′ chart of failed lots by week (Laney 2002), limits by the number of lots. Never fails as a whole.
[[nodiscard]] FailureTrend failureTrend(const TrendFacts& facts, const FailureQuestion& question);

} // namespace holdfast::kiosk::shop::trending
