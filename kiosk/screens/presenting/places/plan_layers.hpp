#pragma once

#include "kiosk/records/stock_queries.hpp"
#include "kiosk/screens/sheet/sheet_state.hpp"
#include "kiosk/shop/planning/plan_draft.hpp"
#include "kiosk/wording/sentences.hpp"

#include <string_view>
#include <vector>

/// The layers of a plan as its form shows them.
namespace holdfast::kiosk::screens {

inline constexpr std::string_view kPlanInk = "runs.ink.";   ///< then the layer's position, a point, the family's name
inline constexpr std::string_view kPlanPour = "runs.pour."; ///< then the position: the next bucket goes there
inline constexpr std::string_view kPlanBucket = "runs.bucket."; ///< then the bucket's number, or "none"
inline constexpr std::string_view kPlanColour = "runs.colour."; ///< then the position

struct PlanLayersShown final {
    const shop::PlanDraft& draft;
    const shop::Stock& stock;
    std::size_t pouring = 0;                        ///< index of the layer that the next bucket goes to
    const std::vector<records::BucketOnFile>& open; ///< that can be pressed
};

[[nodiscard]] QList<SheetBlock> planLayerBlocks(const PlanLayersShown& shown, const wording::Speech& speech);

/// The layers as the analytics judge them; nothing while something is missing.
[[nodiscard]] std::optional<analytics::RunPlan> printOf(const shop::PlanDraft& draft, const shop::Stock& stock);

} // namespace holdfast::kiosk::screens
