#pragma once

#include "kiosk/shop/trending/margin_trend.hpp"

namespace holdfast::kiosk::shop::trending {

/// Of the episodes' readings that are no strips; their spread within episodes is pooled over the history of the same
/// dryers (decisions 6). At least five episodes.
[[nodiscard]] Figure<BelowLimit> belowLimit(const TrendFacts& facts, const TrendFilter& filter,
                                            const std::vector<Episode>& episodes);

} // namespace holdfast::kiosk::shop::trending
