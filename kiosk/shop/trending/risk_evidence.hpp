#pragma once

#include "kiosk/shop/trending/at_risk.hpp"

namespace holdfast::kiosk::shop::trending {

/// What speaks for and against its being ours, of one lot: its own readings and tests, what it shares with failed lots.
/// `outcomes` of every lot compared with; `with` the lots that carry the suspect, ascending.
[[nodiscard]] std::vector<Evidence> evidenceOf(const TrendFacts& facts, FactIndex lot,
                                               const std::vector<LotOutcome>& outcomes,
                                               const std::optional<Suspect>& suspect,
                                               const std::vector<FactIndex>& with,
                                               const std::optional<std::string>& complaint);
[[nodiscard]] IsItOurs judgeEvidence(const std::vector<Evidence>& evidence, const std::optional<Suspect>& suspect);

} // namespace holdfast::kiosk::shop::trending
