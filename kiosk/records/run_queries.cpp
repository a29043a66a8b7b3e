#include "kiosk/records/kinds.hpp"
#include "kiosk/records/lot_rows.hpp"
#include "kiosk/records/queries.hpp"
#include "kiosk/records/reading_rows.hpp"
#include "kiosk/records/run_layers.hpp"
#include "kiosk/records/statement.hpp"
#include "kiosk/records/stored_body.hpp"

#include <algorithm>
#include <stdexcept>

namespace holdfast::kiosk::records {
namespace {

using SQLite::Database;

/// After kLotColumns. Its word is of the first bad reading that nobody decided about.
constexpr const char* kHeldColumns =
    ", runs.number, runs.title, lots.held_ms, "
    "(SELECT r.word FROM readings r WHERE r.lot = lots.id AND r.reason <> 'set-up' "
    "AND r.word IN ('under-cured', 'overheated') "
    "AND NOT EXISTS (SELECT 1 FROM struck WHERE struck.reading = r.id) "
    "AND NOT EXISTS (SELECT 1 FROM holds h WHERE h.because = r.id AND h.decision IS NOT "
    "NULL) AND NOT EXISTS (SELECT 1 FROM decisions d WHERE d.lot = lots.id "
    "AND d.corrected = 0 AND d.settles AND d.since > r.sequence) ORDER BY r.first LIMIT 1), "
    "(SELECT h.cause FROM holds h WHERE h.lot = lots.id AND h.decision IS NULL "
    "AND h.lifted = 0 ORDER BY h.sequence LIMIT 1) "
    "FROM lots JOIN runs ON runs.id = lots.run WHERE lots.state = ? ORDER BY lots.held_ms";

/// Pieces of a run that stand in the book, so that a count goes on from them.
int furthestPiece(const Database& database, const std::string& run, const std::string& openLot) {
    auto query = prepared(
        database,
        "SELECT max(coalesce((SELECT max(piece) FROM readings WHERE run = ?1 AND coalesce(lot, '') <> ?2), 0), "
        "coalesce((SELECT max(last_piece) FROM lots WHERE run = ?1 AND id <> ?2), 0))",
        run, openLot);
    return query.executeStep() ? query.getColumn(0).getInt() : 0;
}

/// What the open lot holds back, and how far it has come.
void fillOpenLot(const Database& database, RunOnFile& run) {
    run.readings = readingRows(database, "WHERE r.lot = ? ORDER BY r.first", run.lot->id);
    for (const auto& reading : run.readings) {
        run.furthestPiece = std::max(run.furthestPiece, reading.piece.value_or(0));
    }
    auto holds =
        prepared(database, "SELECT body FROM holds WHERE lot = ? AND decision IS NULL AND lifted = 0 ORDER BY sequence",
                 run.lot->id);
    while (holds.executeStep()) {
        run.openHolds.push_back(storedBody<HoldPlaced>(holds.getColumn(0).getString()));
        const auto& pieces = run.openHolds.back().pieces;
        run.furthestPiece = std::max(run.furthestPiece, pieces ? pieces->last.value_or(pieces->first) : 0);
    }
}

template <class Value>
std::optional<RunOnFile> runWhere(const Database& database, const char* where, const Value& value,
                                  const std::optional<std::int64_t>& number, const std::optional<Moment>& now) {
    auto query = prepared(database, joined({"SELECT body FROM runs WHERE ", where}).c_str(), value, number);
    if (!query.executeStep()) {
        return std::nullopt;
    }
    RunOnFile run;
    run.plan = storedBody<RunPlanned>(query.getColumn(0).getString());
    for (auto& lot : lotRows(database, "WHERE lots.run = ? ORDER BY lots.number", run.plan.run)) {
        run.lotsSoFar = std::max(run.lotsSoFar, lot.number);
        const bool goesBefore = !run.lot || run.lot->reRunOf || !lot.reRunOf;
        if (!lot.closed && goesBefore) {
            run.lot = std::move(lot);
        }
    }
    run.furthestOfEarlierLots = furthestPiece(database, run.plan.run, run.lot ? run.lot->id : std::string{});
    run.furthestPiece = run.furthestOfEarlierLots;
    if (run.lot) {
        fillOpenLot(database, run);
    }
    auto finish = prepared(database, "SELECT body FROM finished_runs WHERE run = ?", run.plan.run);
    if (finish.executeStep()) {
        run.finished = storedBody<RunFinished>(finish.getColumn(0).getString());
    }
    fillLayers(database, run, now);
    return run;
}

} // namespace

Result<std::optional<RunOnFile>> runByNumber(const Database& database, PlanKind kind, std::int64_t number,
                                             const std::optional<Moment>& now) {
    return asked("look up a run",
                 [&] { return runWhere(database, "kind = ?1 AND number = ?2", toWord(kind), number, now); });
}

Result<std::optional<RunOnFile>> runById(const Database& database, const std::string& run,
                                         const std::optional<Moment>& now) {
    return asked("look up a run", [&] { return runWhere(database, "id = ?1 AND ?2 IS NULL", run, std::nullopt, now); });
}

Result<std::vector<ReadingRow>> readingsOfRun(const Database& database, const std::string& run) {
    return asked("read readings", [&] { return readingRows(database, "WHERE r.run = ? ORDER BY r.first", run); });
}

Result<std::vector<ReadingRow>> readingsOfLot(const Database& database, const std::string& lot) {
    return asked("read readings", [&] { return readingRows(database, "WHERE r.lot = ? ORDER BY r.first", lot); });
}

Result<std::vector<ReadingRow>> latestReadings(const Database& database, int limit) {
    return asked("read readings", [&] { return readingRows(database, "ORDER BY r.first DESC LIMIT ?", limit); });
}

Result<std::optional<ReadingTaken>> readingInFull(const Database& database, const std::string& id) {
    return asked("read a reading", [&]() -> std::optional<ReadingTaken> {
        auto query = prepared(database,
                              "SELECT e.kind, e.version, e.body FROM readings r JOIN entries e "
                              "ON e.sequence = r.sequence WHERE r.id = ?",
                              id);
        if (!query.executeStep()) {
            return std::nullopt;
        }
        const auto record =
            readRecord(query.getColumn(0).getString(), query.getColumn(1).getInt(), query.getColumn(2).getString());
        if (!record) {
            throw std::runtime_error(failureFrom(record.error()).what);
        }
        if (const auto* corrected = std::get_if<CorrectionMade>(&*record)) {
            return corrected->reading;
        }
        const auto* taken = std::get_if<ReadingTaken>(&*record);
        return taken != nullptr ? std::optional{*taken} : std::nullopt;
    });
}

Result<std::vector<ReadingVersion>> versionsOfReading(const Database& database, const std::string& id) {
    return asked("read the versions of a reading", [&] {
        std::vector<ReadingVersion> all;
        auto query = prepared(database,
                              "SELECT e.wall_ms, e.person, e.kind, e.version, e.body FROM (SELECT first AS sequence "
                              "FROM readings WHERE id = ?1 UNION ALL SELECT sequence FROM reading_versions "
                              "WHERE reading = ?1) v JOIN entries e ON e.sequence = v.sequence ORDER BY e.sequence",
                              id);
        while (query.executeStep()) {
            const auto record =
                readRecord(query.getColumn(2).getString(), query.getColumn(3).getInt(), query.getColumn(4).getString());
            if (!record) {
                throw std::runtime_error(failureFrom(record.error()).what);
            }
            ReadingVersion version{query.getColumn(0).getInt64(), query.getColumn(1).getInt64()};
            if (const auto* corrected = std::get_if<CorrectionMade>(&*record)) {
                version.taken = corrected->reading;
                version.check = corrected->check;
            } else if (const auto* taken = std::get_if<ReadingTaken>(&*record)) {
                version.taken = *taken;
            } else {
                continue;
            }
            all.push_back(std::move(version));
        }
        return all;
    });
}

Result<std::vector<ReadingRow>> readingsByInstrument(const Database& database, const std::string& instrument,
                                                     std::int64_t wallMilliseconds) {
    return asked("read an instrument's readings", [&] {
        return readingRows(database, "WHERE r.instrument = ? AND r.taken_ms >= ? ORDER BY r.first", instrument,
                           wallMilliseconds);
    });
}

Result<std::vector<HeldLot>> holds(const Database& database) {
    return asked("read held lots", [&] {
        std::vector<HeldLot> all;
        const std::string sql = joined({"SELECT ", kLotColumns, kHeldColumns});
        auto query = prepared(database, sql.c_str(), toWord(LotState::onHold));
        while (query.executeStep()) {
            HeldLot held;
            held.lot = lotRow(query);
            held.runNumber = query.getColumn(kLotColumnCount).getInt64();
            held.runTitle = query.getColumn(kLotColumnCount + 1).getString();
            held.since = query.getColumn(kLotColumnCount + 2).getInt64();
            held.word = fromWord<analytics::Word>(textAt(query, kLotColumnCount + 3).value_or(""));
            held.cause = fromWord<HoldCause>(textAt(query, kLotColumnCount + 4).value_or(""));
            all.push_back(std::move(held));
        }
        return all;
    });
}

} // namespace holdfast::kiosk::records
