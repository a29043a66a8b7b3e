#include "kiosk/records/print_moves.hpp"

#include "kiosk/records/lot_rows.hpp"
#include "kiosk/records/stored_body.hpp"

namespace holdfast::kiosk::records {

using ledger::Result;
using SQLite::Database;

Result<std::optional<MoveRow>> moveOfPrint(const Database& database, const std::string& print) {
    return asked("look up where a print's piece went", [&]() -> std::optional<MoveRow> {
        auto query = prepared(database,
                              "WITH RECURSIVE standing(entry, lot) AS ("
                              "SELECT m.entry, m.lot FROM prints p JOIN moves m ON m.sequence = p.sequence + 1 "
                              "AND m.lot = p.lot WHERE p.id = ? AND p.half_of IS NULL UNION ALL "
                              "SELECT m.entry, m.lot FROM standing s JOIN moves m ON m.lot = s.lot "
                              "AND json_extract(m.body, '$.corrects') = s.entry) "
                              "SELECT m.entry, m.moved_ms, m.body FROM standing s JOIN moves m ON m.entry = s.entry "
                              "WHERE m.corrected = 0",
                              print);
        if (!query.executeStep()) {
            return std::nullopt;
        }
        return MoveRow{query.getColumn(0).getString(), query.getColumn(1).getInt64(),
                       storedBody<PiecesMoved>(query.getColumn(2).getString()), false};
    });
}

} // namespace holdfast::kiosk::records
