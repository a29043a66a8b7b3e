#pragma once

#include "kiosk/records/stock_queries.hpp"
#include "kiosk/shop/planning/plan_draft.hpp"

/// A bucket on a layer of a plan.
namespace holdfast::kiosk::shop {

/// What the plan needs to know of a bucket. A fault: there is no such bucket, it was closed, or nobody knows what it is
/// made of. Trouble (pot life, expiry, additive) is no fault: the plan may name it, and the layer then proves nothing.
[[nodiscard]] tl::expected<StockBucket, PlanFault> layerBucket(std::int64_t number,
                                                               const std::optional<records::BucketTree>& tree,
                                                               const std::optional<analytics::Ink>& ink,
                                                               std::int64_t wallMilliseconds, analytics::Date today);

/// The layer is printed from this bucket alone, and its ink is the bucket's; its colour too, if none was named.
void pourInto(DraftLayer& layer, const StockBucket& bucket);

} // namespace holdfast::kiosk::shop
