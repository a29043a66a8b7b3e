#include "kiosk/records/lot_rows.hpp"

#include "kiosk/records/stored_body.hpp"
#include "kiosk/records/words.hpp"

namespace holdfast::kiosk::records {

const char* const kLotColumns = "lots.body, lots.opened_ms, lots.closed, lots.last_piece, lots.state, "
                                "(SELECT d.lot FROM decisions d WHERE d.re_run_lot = lots.id AND d.corrected = 0)";

LotRow lotRow(SQLite::Statement& query, int first) {
    const auto opened = storedBody<LotOpened>(query.getColumn(first).getString());
    LotRow row;
    row.id = opened.lot;
    row.run = opened.run;
    row.dryer = opened.dryer;
    row.number = opened.number;
    row.firstPiece = opened.firstPiece;
    row.revisions = opened.revisions;
    row.openedAt = query.getColumn(first + 1).getInt64();
    row.closed = query.getColumn(first + 2).getInt() != 0;
    if (!query.getColumn(first + 3).isNull()) {
        row.lastPiece = query.getColumn(first + 3).getInt();
    }
    row.state = fromWord<LotState>(query.getColumn(first + 4).getString()).value_or(row.state);
    row.reRunOf = textAt(query, first + 5);
    return row;
}

} // namespace holdfast::kiosk::records
