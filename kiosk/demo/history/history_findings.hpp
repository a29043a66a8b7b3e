#pragma once

#include "kiosk/demo/history/history_facts.hpp"

#include <string>

namespace holdfast::kiosk::demo {

/// What a finding names as the cause of a complaint, as the form keeps it: a word of the causes table, a colon and what
/// decided it; of a matter that the table does not know, plain text. It follows from the facts alone: a complaint about
/// a planted failure names that failure.
[[nodiscard]] std::string findingOf(const HistoryFacts& facts, const ComplaintFact& complaint);

} // namespace holdfast::kiosk::demo
