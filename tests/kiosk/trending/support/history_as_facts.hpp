#pragma once

#include "kiosk/demo/history/history_facts.hpp"
#include "kiosk/records/trend_queries.hpp"

namespace holdfast::kiosk::shop::trending::testing {

/// The invented eighteen months as the read tables of a book would give them, without making the book: what was
/// decided about complaints is decided, all else stands as it was found.
[[nodiscard]] records::TrendFacts factsOf(const demo::HistoryFacts& history);

/// Wall milliseconds of the beginning of the day that lies so many days before the end.
[[nodiscard]] std::int64_t daysBefore(const demo::HistoryFacts& history, int days);

} // namespace holdfast::kiosk::shop::trending::testing
