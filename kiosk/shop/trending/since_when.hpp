#pragma once

#include "analytics/statistics/models/change_point.hpp"
#include "kiosk/shop/trending/terms.hpp"

#include <span>

namespace holdfast::kiosk::shop::trending {

/// One change of level in a series: when it may have been, never one day.
struct SinceWhen final {
    std::size_t position = 0;         ///< first point after the most likely change
    std::int64_t likely = 0;          ///< time of that point
    std::vector<TimeSpan> possible{}; ///< when it may have been: between the points on both sides; 95 %
    double p = 1.0;                   ///< against no change, by orders of whole episodes or weeks
    double before = 0.0;              ///< kelvins of margin, or share of failed lots
    double after = 0.0;
    std::vector<FactIndex>
        events{}; ///< known ones inside `possible`, of what was asked; the rarest kinds first, then by time
    [[nodiscard]] std::int64_t earliest() const noexcept { return possible.front().from; }
    [[nodiscard]] std::int64_t latest() const noexcept { return possible.back().to; }
};

/// A change is said only below this p.
inline constexpr double kChangeRisk = 0.01;

/// Times ascending, one for each value, at least kLeastChange values. noChange: p is not below kChangeRisk.
inline constexpr std::size_t kLeastChange = 8;
[[nodiscard]] Figure<SinceWhen> changeIn(const TrendFacts& facts, const TrendFilter& filter,
                                         std::span<const std::int64_t> times, const std::vector<double>& margins,
                                         std::uint64_t seed);
[[nodiscard]] Figure<SinceWhen> changeIn(const TrendFacts& facts, const TrendFilter& filter,
                                         std::span<const std::int64_t> times,
                                         const std::vector<analytics::statistics::FailedOfTotal>& weeks,
                                         std::uint64_t seed);

/// Events inside the spans that concern what is asked: of its dryer, its family or cloth, its instruments and buckets.
/// What seldom happens stands before what is done every day.
[[nodiscard]] std::vector<FactIndex> eventsIn(const TrendFacts& facts, const TrendFilter& filter,
                                              const std::vector<TimeSpan>& spans);

} // namespace holdfast::kiosk::shop::trending
