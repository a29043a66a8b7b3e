#pragma once

#include "kiosk/demo/history/history_pen.hpp"

#include <string>

namespace holdfast::kiosk::demo {

/// Writes the facts as the entries of a book that was empty: from its opening to the evening before the twelve days,
/// with nothing left due, on hold or unanswered. `keep` is given a few thousand entries at a time, in order.
[[nodiscard]] ledger::Result<void> writeHistory(const HistoryFacts& facts, int utcOffsetMinutes,
                                                const std::string& probeAddress, const KeepRequest& keep);

} // namespace holdfast::kiosk::demo
