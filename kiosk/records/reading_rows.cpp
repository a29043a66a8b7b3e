#include "kiosk/records/reading_rows.hpp"

#include "kiosk/records/words.hpp"

namespace holdfast::kiosk::records {

using SQLite::Statement;

const char* const kReadingSelect =
    "SELECT r.sequence, r.id, coalesce(r.run, ''), coalesce(runs.number, 0), coalesce(runs.title, ''), "
    "coalesce(r.lot, ''), coalesce(lots.number, 0), r.instrument, coalesce(instruments.name, r.instrument), "
    "r.taken_ms, r.utc_offset, r.refused, r.corrected, r.position, r.reason, r.word, r.margin_low_c, r.margin_high_c, "
    "r.trace, struck.cause, r.piece FROM readings r LEFT JOIN runs ON runs.id = r.run LEFT JOIN lots ON lots.id = "
    "r.lot "
    "LEFT JOIN instruments ON instruments.id = r.instrument LEFT JOIN struck ON struck.reading = r.id ";

ReadingRow readingRow(Statement& query) {
    ReadingRow row;
    row.sequence = query.getColumn(0).getInt64();
    row.id = query.getColumn(1).getString();
    row.run = query.getColumn(2).getString();
    row.runNumber = query.getColumn(3).getInt64();
    row.runTitle = query.getColumn(4).getString();
    row.lot = query.getColumn(5).getString();
    row.lotNumber = query.getColumn(6).getInt();
    row.instrument = query.getColumn(7).getString();
    row.instrumentName = query.getColumn(8).getString();
    row.takenAt = query.getColumn(9).getInt64();
    row.utcOffsetMinutes = query.getColumn(10).getInt();
    row.refused = query.getColumn(11).getInt() != 0;
    row.corrected = query.getColumn(12).getInt() != 0;
    row.position = fromWord<BeltPosition>(query.getColumn(13).getString()).value_or(row.position);
    row.reason = fromWord<ReadingReason>(query.getColumn(14).getString()).value_or(row.reason);
    row.word = fromWord<analytics::Word>(textAt(query, 15).value_or(""));
    row.marginLow = kelvinsAt(query, 16);
    row.marginHigh = kelvinsAt(query, 17);
    row.trace = query.getColumn(18).getString();
    row.struck = fromWord<StruckCause>(textAt(query, 19).value_or(""));
    row.piece = query.getColumn(20).isNull() ? std::nullopt : std::optional{query.getColumn(20).getInt()};
    return row;
}

} // namespace holdfast::kiosk::records
