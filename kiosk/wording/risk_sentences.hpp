#pragma once

#include "kiosk/shop/deciding/judged_now.hpp"
#include "kiosk/shop/deciding/risk_hold.hpp"
#include "kiosk/shop/trending/at_risk.hpp"
#include "kiosk/shop/trending/causes.hpp"
#include "kiosk/shop/trending/fix_worked.hpp"
#include "kiosk/wording/sentences.hpp"

#include <string>
#include <vector>

/// From a complaint to what else is at risk, never said stronger than the figures.
namespace holdfast::kiosk::wording {

/// In the middle of a sentence: "dryer North", "mixed bucket 118 (low-cure white)".
[[nodiscard]] std::string levelText(const shop::trending::FactorLevel& level, const Speech& speech);
/// The answer: "Likely ours".
[[nodiscard]] std::string oursText(shop::trending::IsItOurs ours, const Speech& speech);
/// No full stop: "3 of its 4 tests failed".
[[nodiscard]] std::string evidenceText(const shop::trending::Evidence& evidence, const Speech& speech);
/// What was done to the reading since: "judged again: its instrument was found wrong".
[[nodiscard]] std::string nowText(const shop::deciding::ThenAndNow& shown, const Speech& speech);

/// "about 3 of 36, between 1 and 9"; "most likely none of 36, at most 2".
[[nodiscard]] std::string badText(const analytics::statistics::BadPieces& bad, std::int64_t pieces,
                                  const Speech& speech);
/// Empty where there is nothing to add.
[[nodiscard]] std::string caveatText(analytics::statistics::LotModelCaveat caveat, const Speech& speech);

/// "Mixed bucket 118 (low-cure white): strong".
[[nodiscard]] std::string suspectText(const shop::trending::Suspect& suspect, const Speech& speech);
/// What speaks for it and what against, each without a full stop.
[[nodiscard]] std::vector<std::string> suspectFor(const shop::trending::Suspect& suspect, const Speech& speech);
[[nodiscard]] std::vector<std::string> suspectAgainst(const shop::trending::Suspect& suspect, const Speech& speech);
/// How often chance alone would share as much.
[[nodiscard]] std::string chanceText(double p, const Speech& speech);

/// "Since some time between 2026-02-03 and 2026-02-17."
[[nodiscard]] std::string sinceText(const shop::trending::SinceWhen& since, int utcOffsetMinutes, const Speech& speech);
/// "belt of North at 2.4 m/min".
[[nodiscard]] std::string eventText(const records::TrendFacts& facts, const records::TrendEvent& event,
                                    const Speech& speech);

[[nodiscard]] std::string fixText(const shop::trending::FixVerdict& verdict, int utcOffsetMinutes,
                                  const Speech& speech);
/// A full sentence after a colon: "no other lot failed."
[[nodiscard]] std::string whyText(const shop::trending::Refusal& refusal, const Speech& speech);

[[nodiscard]] std::string word(shop::trending::CureCause cause, const Speech& speech);
/// What decides whether it was that.
[[nodiscard]] std::string decidesText(shop::trending::CureCause cause, const Speech& speech);
/// A finding's cause as people read it: the listed cause that it is, in their language, with its remark.
[[nodiscard]] std::string causeText(const std::string& kept, shop::trending::CureCause cause, const Speech& speech);
/// "under-cured", as ids and keys spell it.
[[nodiscard]] std::string nameOf(shop::trending::CureCause cause);

[[nodiscard]] std::string sentence(shop::deciding::RiskHoldFault fault, const Speech& speech);

} // namespace holdfast::kiosk::wording
