#pragma once

#include "analytics/cure/ride/turn.hpp"
#include "kiosk/wording/sentences.hpp"

#include <string>
#include <vector>

/// "Turn this much" as people read it.
namespace holdfast::kiosk::wording {

/// What the hand does: one thing by how much, and when to ride again.
[[nodiscard]] std::string turnOrder(const analytics::TurnProposal& turn, const Speech& speech);
/// What it will bring: the peak to be expected, with its range.
[[nodiscard]] std::string turnOutlook(const analytics::TurnProposal& turn, const Speech& speech);
/// Cautions, most important first, then what it assumes.
[[nodiscard]] std::vector<std::string> turnCautions(const analytics::TurnProposal& turn, const Speech& speech);
/// Why there is no proposal.
[[nodiscard]] std::string sentence(analytics::NoTurn why, const Speech& speech);

} // namespace holdfast::kiosk::wording
