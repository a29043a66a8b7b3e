#pragma once

#include "kiosk/screens/sheet/sheet_state.hpp"
#include "kiosk/shop/planning/plan_draft.hpp"
#include "kiosk/wording/sentences.hpp"

#include <vector>

/// Advice while a plan is typed: which inks will do, what each costs.
namespace holdfast::kiosk::screens {

/// The draft's layers with the underbase that is missing, each with the easiest ink that will do; one that names a
/// bucket stays as it is. As they are while cloth or colours are missing.
[[nodiscard]] std::vector<shop::DraftLayer> advisedLayers(const shop::PlanDraft& draft, const shop::Stock& stock);

[[nodiscard]] QList<SheetBlock> adviceBlocks(const shop::PlanDraft& draft, const shop::Stock& stock,
                                             const wording::Speech& speech);

} // namespace holdfast::kiosk::screens
