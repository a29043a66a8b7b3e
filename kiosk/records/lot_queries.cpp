#include "kiosk/records/lot_queries.hpp"

#include "kiosk/records/lot_rows.hpp"
#include "kiosk/records/stored_body.hpp"
#include "kiosk/records/words.hpp"

#include <algorithm>
#include <limits>

namespace holdfast::kiosk::records {
namespace {

using ledger::Result;
using SQLite::Database;
using SQLite::Statement;

constexpr const char* kHoldSelect =
    "SELECT h.body, h.placed_ms, h.decision, h.lifted, runs.number, runs.title, runs.id, lots.number, "
    "runs.childrens_wear, EXISTS (SELECT 1 FROM moves m WHERE m.lot = h.lot AND m.place = 'shipped' AND m.corrected = "
    "0 "
    "AND m.count > 0) AS shipped, (SELECT d.id FROM decisions d WHERE d.lot = h.lot AND d.word = 'recalled' "
    "AND d.corrected = 0 AND d.sequence > h.sequence ORDER BY d.sequence DESC LIMIT 1) AS recall "
    "FROM holds h JOIN lots ON lots.id = h.lot JOIN runs ON runs.id = lots.run ";

HoldRow holdRow(Statement& query) {
    HoldRow row;
    row.placed = storedBody<HoldPlaced>(query.getColumn(0).getString());
    row.at = query.getColumn(1).getInt64();
    row.decision = textAt(query, 2);
    row.lifted = !row.decision && query.getColumn(3).getInt() != 0;
    if (row.lifted) {
        row.decision = "";
    }
    row.runNumber = query.getColumn(4).getInt64();
    row.runTitle = query.getColumn(5).getString();
    row.run = query.getColumn(6).getString();
    row.lotNumber = query.getColumn(7).getInt();
    row.childrensWear = query.getColumn(8).getInt() != 0;
    row.shipped = query.getColumn(9).getInt() != 0;
    row.recall = textAt(query, 10);
    return row;
}

template <class... Values>
std::vector<HoldRow> holdRows(const Database& database, const char* where, const Values&... values) {
    std::vector<HoldRow> rows;
    auto query = prepared(database, joined({kHoldSelect, where}).c_str(), values...);
    while (query.executeStep()) {
        rows.push_back(holdRow(query));
    }
    return rows;
}

std::optional<int> lastCount(const Database& database, const char* sql, const std::string& lot) {
    auto query = prepared(database, sql, lot);
    return query.executeStep() ? std::optional{query.getColumn(0).getInt()} : std::nullopt;
}

int sumOf(const Database& database, const std::string& lot, PiecePlace place) {
    auto query =
        prepared(database, "SELECT coalesce(sum(count), 0) FROM moves WHERE lot = ? AND corrected = 0 AND place = ?",
                 lot, toWord(place));
    const auto sum = query.executeStep() ? query.getColumn(0).getInt64() : 0;
    return static_cast<int>(std::min<std::int64_t>(sum, std::numeric_limits<int>::max()));
}

} // namespace

Result<std::vector<HoldRow>> openHolds(const Database& database) {
    return asked("read what is on hold", [&] {
        return holdRows(database, "WHERE h.decision IS NULL AND h.lifted = 0 AND (lots.state <> 'scrapped' "
                                  "OR (shipped AND recall IS NULL)) ORDER BY h.sequence");
    });
}

Result<std::vector<HoldRow>> holdsOfLot(const Database& database, const std::string& lot) {
    return asked("read the holds of a lot",
                 [&] { return holdRows(database, "WHERE h.lot = ? ORDER BY h.sequence", lot); });
}

Result<std::optional<HoldRow>> holdByBin(const Database& database, std::int64_t bin) {
    return asked("look up a bin", [&]() -> std::optional<HoldRow> {
        auto rows = holdRows(database, "WHERE h.bin = ? AND h.bin > 0", bin);
        return rows.empty() ? std::nullopt : std::optional{std::move(rows.front())};
    });
}

Result<std::vector<DecisionRow>> decisionsOfLot(const Database& database, const std::string& lot) {
    return asked("read the decisions", [&] {
        std::vector<DecisionRow> rows;
        auto query = prepared(
            database, "SELECT entry, signed_ms, body, corrected FROM decisions WHERE lot = ? ORDER BY sequence", lot);
        while (query.executeStep()) {
            rows.push_back({query.getColumn(0).getString(), query.getColumn(1).getInt64(),
                            storedBody<DecisionSigned>(query.getColumn(2).getString()),
                            query.getColumn(3).getInt() != 0});
        }
        return rows;
    });
}

Result<std::vector<MoveRow>> movesOfLot(const Database& database, const std::string& lot) {
    return asked("read the moves", [&] {
        std::vector<MoveRow> rows;
        auto query = prepared(
            database, "SELECT entry, moved_ms, body, corrected FROM moves WHERE lot = ? ORDER BY sequence", lot);
        while (query.executeStep()) {
            rows.push_back({query.getColumn(0).getString(), query.getColumn(1).getInt64(),
                            storedBody<PiecesMoved>(query.getColumn(2).getString()), query.getColumn(3).getInt() != 0});
        }
        return rows;
    });
}

Result<PiecesOfLot> piecesOfLot(const Database& database, const std::string& lot) {
    return asked("read where the pieces are", [&] {
        PiecesOfLot pieces;
        pieces.made = lastCount(
            database, "SELECT made FROM counts WHERE lot = ? AND made IS NOT NULL ORDER BY sequence DESC LIMIT 1", lot);
        pieces.here = lastCount(
            database, "SELECT here FROM counts WHERE lot = ? AND here IS NOT NULL ORDER BY sequence DESC LIMIT 1", lot);
        pieces.shipped = sumOf(database, lot, PiecePlace::shipped);
        pieces.retained = sumOf(database, lot, PiecePlace::retained);
        pieces.tested = sumOf(database, lot, PiecePlace::tested);
        pieces.scrapped = sumOf(database, lot, PiecePlace::scrapped);
        return pieces;
    });
}

Result<std::vector<CountRow>> countsOfLot(const Database& database, const std::string& lot) {
    return asked("read the counts of a lot", [&] {
        std::vector<CountRow> rows;
        auto query =
            prepared(database, "SELECT entry, counted_ms, body FROM counts WHERE lot = ? ORDER BY sequence", lot);
        while (query.executeStep()) {
            rows.push_back({query.getColumn(0).getString(), query.getColumn(1).getInt64(),
                            storedBody<PiecesCounted>(query.getColumn(2).getString())});
        }
        return rows;
    });
}

Result<std::vector<LotRow>> lotsOfRun(const Database& database, const std::string& run) {
    return asked("read the lots of a run",
                 [&] { return lotRows(database, "WHERE lots.run = ? ORDER BY lots.number", run); });
}

Result<std::optional<LotRow>> lotById(const Database& database, const std::string& lot) {
    return asked("look up a lot", [&]() -> std::optional<LotRow> {
        auto rows = lotRows(database, "WHERE lots.id = ?", lot);
        return rows.empty() ? std::nullopt : std::optional{std::move(rows.front())};
    });
}

Result<std::vector<PastLot>> pastLots(const Database& database, const std::string& dryer, int limit) {
    return asked("read the lots before", [&] {
        std::vector<PastLot> rows;
        const auto sql = joined({"SELECT ", kLotColumns,
                                 ", lots.ever_held FROM lots WHERE lots.dryer = ? AND lots.closed = 1 "
                                 "ORDER BY lots.opened_ms DESC, lots.rowid DESC LIMIT ?"});
        auto query = prepared(database, sql.c_str(), dryer, limit);
        while (query.executeStep()) {
            rows.push_back({lotRow(query), query.getColumn(kLotColumnCount).getInt() != 0});
        }
        return rows;
    });
}

Result<std::vector<MissedRow>> missedOfLot(const Database& database, const std::string& lot) {
    return asked("read missed readings", [&] {
        std::vector<MissedRow> rows;
        auto query = prepared(database, "SELECT missed_ms, body FROM missed WHERE lot = ? ORDER BY sequence", lot);
        while (query.executeStep()) {
            rows.push_back({query.getColumn(0).getInt64(), storedBody<ReadingMissed>(query.getColumn(1).getString())});
        }
        return rows;
    });
}

Result<std::optional<ShelfCountRow>> lastShelfCount(const Database& database) {
    return asked("read the count of the quarantine", [&]() -> std::optional<ShelfCountRow> {
        auto query =
            prepared(database, "SELECT counted_ms, person, body FROM shelf_counts ORDER BY sequence DESC LIMIT 1");
        if (!query.executeStep()) {
            return std::nullopt;
        }
        return ShelfCountRow{query.getColumn(0).getInt64(), query.getColumn(1).getInt64(),
                             storedBody<ShelfCounted>(query.getColumn(2).getString())};
    });
}

Result<std::int64_t> nextBin(const Database& database) {
    return asked("look for the next number", [&] {
        auto query = prepared(database, "SELECT coalesce(max(bin), 0) + 1 FROM holds WHERE bin > 0");
        return query.executeStep() ? query.getColumn(0).getInt64() : 1;
    });
}

} // namespace holdfast::kiosk::records
