#pragma once

#include "analytics/cure/ink.hpp"
#include "kiosk/shop/stock/mix_draft.hpp"
#include "kiosk/wording/sentences.hpp"

namespace holdfast::kiosk::wording {

[[nodiscard]] std::string word(analytics::Chemistry chemistry, const Speech& speech);
[[nodiscard]] std::string word(analytics::BleedResistance resistance, const Speech& speech);
/// Where a figure comes from, in one line.
[[nodiscard]] std::string word(analytics::Mark mark, const Speech& speech);
[[nodiscard]] std::string word(records::BucketEnd end, const Speech& speech);

/// Full sentences.
[[nodiscard]] std::string sentence(const shop::StockFault& fault, const Speech& speech);
[[nodiscard]] std::string sentence(const shop::PartWarning& warning, const Speech& speech);
/// What is wrong with a bucket that somebody holds in his hands, and what to do.
[[nodiscard]] std::string sentence(analytics::BucketFault fault, const Speech& speech);

/// "286 °F", "320 °F for 1 min 30 s", "320 °F for 1 min 30 s without a break".
[[nodiscard]] std::string cureText(const analytics::InkFamily& family, const Speech& speech);
/// "3 h 20 min", "40 min", "2 days".
[[nodiscard]] std::string hoursText(analytics::Duration duration, const Speech& speech);

} // namespace holdfast::kiosk::wording
