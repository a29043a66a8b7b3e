#pragma once

#include "kiosk/ledger/book.hpp"
#include "kiosk/ledger/trace_codec.hpp"
#include "kiosk/records/reading_records.hpp"
#include "kiosk/screens/presenting/deciding/lot_blocks.hpp"

namespace holdfast::kiosk::screens {

/// A reading as it was seen: its trace, or what a strip, spot or gun showed, on the limits that were used.
/// `points` may be empty: then only the peak is drawn.
[[nodiscard]] HeatScaleState readingScale(const records::ReadingTaken& reading,
                                          const std::vector<ledger::TracePoint>& points, const wording::Speech& speech);

/// The recorded trace; empty for what is none, or where it can no longer be read.
[[nodiscard]] std::vector<ledger::TracePoint> traceOf(const ledger::Book& book, const records::ReadingTaken& reading);

/// Why it was taken.
[[nodiscard]] std::string reasonText(records::ReadingReason reason, const wording::Speech& speech);

} // namespace holdfast::kiosk::screens
