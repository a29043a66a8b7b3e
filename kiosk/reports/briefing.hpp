#pragma once

#include "kiosk/reports/briefing_facts.hpp"
#include "kiosk/reports/report.hpp"

namespace holdfast::kiosk::reports {

/// The owner's week on one page: this week against the last thirteen in sentences no stronger than the figures, small
/// bars, what is on hold, due and changed, with the head of the book. Long lists are cut and say so.
[[nodiscard]] Reported briefing(const BriefingFacts& facts, const ReportStyle& style);

} // namespace holdfast::kiosk::reports
