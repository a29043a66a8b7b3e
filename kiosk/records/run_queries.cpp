#include "analytics/cure/ink.hpp"
#include "analytics/cure/window.hpp"
#include "kiosk/records/kinds.hpp"
#include "kiosk/records/queries.hpp"
#include "kiosk/records/statement.hpp"
#include "kiosk/records/stored_body.hpp"

#include <algorithm>
#include <stdexcept>

namespace holdfast::kiosk::records {
namespace {

using analytics::TemperatureDifference;
using SQLite::Database;
using SQLite::Statement;

std::optional<TemperatureDifference> kelvinsAt(Statement& query, int column) {
    const auto value = numberAt(query, column);
    return value ? std::optional{TemperatureDifference::fromCelsius(*value)} : std::nullopt;
}

constexpr const char* kReadingSelect =
    "SELECT r.sequence, r.id, coalesce(r.run, ''), coalesce(runs.number, 0), coalesce(runs.title, ''), "
    "coalesce(r.lot, ''), coalesce(lots.number, 0), r.instrument, coalesce(instruments.name, r.instrument), "
    "r.taken_ms, r.utc_offset, r.refused, r.corrected, r.position, r.reason, r.word, r.margin_low_c, r.margin_high_c, "
    "r.trace FROM readings r LEFT JOIN runs ON runs.id = r.run LEFT JOIN lots ON lots.id = r.lot "
    "LEFT JOIN instruments ON instruments.id = r.instrument ";

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
    return row;
}

template <class Value>
std::vector<ReadingRow> readingRows(const Database& database, const char* where, const Value& value) {
    std::vector<ReadingRow> rows;
    auto query = prepared(database, (std::string{kReadingSelect} + where).c_str(), value);
    while (query.executeStep()) {
        rows.push_back(readingRow(query));
    }
    return rows;
}

/// Columns: body, opened_ms, closed, last_piece, state.
LotRow lotRow(Statement& query, int first) {
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
    return row;
}

/// The revision that a lot was opened with, else the newest; nothing if there is none of that name.
template <class R>
std::optional<R> revisionOf(const Database& database, const char* table, const std::string& name,
                            const RevisionUsed* used) {
    const std::string sql = std::string{"SELECT body FROM "} + table +
                            " WHERE name = ?1 AND (?2 IS NULL OR revision = ?2) ORDER BY revision DESC LIMIT 1";
    auto query = prepared(database, sql.c_str(), name, used != nullptr ? std::optional{used->revision} : std::nullopt);
    return query.executeStep() ? std::optional{storedBody<R>(query.getColumn(0).getString())} : std::nullopt;
}

const RevisionUsed* usedRevision(const std::vector<RevisionUsed>& all, const std::string& name) {
    const auto found = std::find_if(all.begin(), all.end(), [&](const auto& one) { return one.name == name; });
    return found == all.end() ? nullptr : &*found;
}

/// The layer's ink; notes the revisions used. Nothing if a family is missing or the mix cannot be.
std::optional<analytics::Ink> inkOf(const Database& database, const PlannedLayer& layer, const LotRow* lot,
                                    RevisionsUsed& revisions) {
    std::vector<analytics::MixPart> parts;
    for (const auto& part : layer.parts) {
        const auto* used = lot != nullptr ? usedRevision(lot->revisions.families, part.family) : nullptr;
        const auto family = revisionOf<FamilyRecord>(database, "families", part.family, used);
        if (!family) {
            return std::nullopt;
        }
        if (usedRevision(revisions.families, family->name) == nullptr) {
            revisions.families.push_back({family->name, family->revision});
        }
        parts.push_back({analytics::pureInk(toFamily(*family)), part.mass});
    }
    if (parts.size() == 1 && layer.ink == layer.parts.front().family) {
        return parts.front().ink;
    }
    auto mixed = analytics::mixInks(layer.ink, parts);
    return mixed ? std::optional{std::move(*mixed)} : std::nullopt;
}

void fillLayers(const Database& database, RunOnFile& run) {
    const LotRow* lot = run.lot ? &*run.lot : nullptr;
    for (const auto& layer : run.plan.layers) {
        auto ink = inkOf(database, layer, lot, run.revisions);
        run.usable = run.usable && ink.has_value();
        run.layers.layers.push_back({layer.colour, std::move(ink).value_or(analytics::Ink{}), std::nullopt});
    }
    const auto fabric = revisionOf<FabricRecord>(database, "fabrics", run.plan.fabric,
                                                 lot != nullptr ? &lot->revisions.fabric : nullptr);
    run.usable = run.usable && fabric.has_value();
    if (fabric) {
        run.layers.fabric = toFabric(*fabric);
        run.revisions.fabric = {fabric->name, fabric->revision};
    }
    run.usable = run.usable && analytics::windowOf(run.layers).has_value();
}

template <class Value>
std::optional<RunOnFile> runWhere(const Database& database, const char* where, const Value& value,
                                  const std::optional<std::int64_t>& number = {}) {
    auto query = prepared(database, (std::string{"SELECT body FROM runs WHERE "} + where).c_str(), value, number);
    if (!query.executeStep()) {
        return std::nullopt;
    }
    RunOnFile run;
    run.plan = storedBody<RunPlanned>(query.getColumn(0).getString());
    auto lots = prepared(database,
                         "SELECT body, opened_ms, closed, last_piece, state FROM lots WHERE run = ? "
                         "ORDER BY number",
                         run.plan.run);
    while (lots.executeStep()) {
        auto lot = lotRow(lots, 0);
        run.lotsSoFar = std::max(run.lotsSoFar, lot.number);
        if (!lot.closed) {
            run.lot = std::move(lot);
        }
    }
    if (run.lot) {
        run.readings = readingRows(database, "WHERE r.lot = ? ORDER BY r.first", run.lot->id);
    }
    fillLayers(database, run);
    return run;
}

} // namespace

Result<std::optional<RunOnFile>> runByNumber(const Database& database, PlanKind kind, std::int64_t number) {
    return asked("look up a run",
                 [&] { return runWhere(database, "kind = ?1 AND number = ?2", toWord(kind), number); });
}

Result<std::optional<RunOnFile>> runById(const Database& database, const std::string& run) {
    return asked("look up a run", [&] { return runWhere(database, "id = ?1 AND ?2 IS NULL", run); });
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

Result<std::vector<HeldLot>> holds(const Database& database) {
    return asked("read held lots", [&] {
        std::vector<HeldLot> all;
        auto query = prepared(
            database,
            "SELECT lots.body, lots.opened_ms, lots.closed, lots.last_piece, lots.state, runs.number, runs.title, "
            "min(r.taken_ms), r.word FROM lots JOIN runs ON runs.id = lots.run JOIN readings r ON r.lot = lots.id "
            "WHERE lots.state = ?1 AND r.word IN ('under-cured', 'overheated') AND r.reason <> 'set-up' "
            "GROUP BY lots.id ORDER BY min(r.taken_ms)",
            toWord(LotState::onHold));
        while (query.executeStep()) {
            HeldLot held;
            held.lot = lotRow(query, 0);
            held.runNumber = query.getColumn(5).getInt64();
            held.runTitle = query.getColumn(6).getString();
            held.since = query.getColumn(7).getInt64();
            held.word = fromWord<analytics::Word>(query.getColumn(8).getString());
            all.push_back(std::move(held));
        }
        return all;
    });
}

} // namespace holdfast::kiosk::records
