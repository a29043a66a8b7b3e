#include "analytics/cure/ink.hpp"
#include "analytics/cure/window.hpp"
#include "kiosk/records/bucket_tree.hpp"
#include "kiosk/records/kinds.hpp"
#include "kiosk/records/queries.hpp"
#include "kiosk/records/reading_rows.hpp"
#include "kiosk/records/statement.hpp"
#include "kiosk/records/stored_body.hpp"

#include <algorithm>
#include <functional>
#include <set>
#include <stdexcept>

namespace holdfast::kiosk::records {
namespace {

using SQLite::Database;
using SQLite::Statement;

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

/// Families as a run's lot was opened with them, else the newest; remembers which were used.
class RunFamilies final {
public:
    RunFamilies(const Database& database, RunOnFile& run) : m_database{database}, m_run{run} {}
    std::optional<analytics::InkFamily> operator()(const std::string& name) {
        const auto* used = m_run.lot ? usedRevision(m_run.lot->revisions.families, name) : nullptr;
        const auto family = revisionOf<FamilyRecord>(m_database, "families", name, used);
        if (family && usedRevision(m_run.revisions.families, family->name) == nullptr) {
            m_run.revisions.families.push_back({family->name, family->revision});
        }
        return family ? std::optional{toFamily(*family)} : std::nullopt;
    }

private:
    const Database& m_database;
    RunOnFile& m_run;
};

/// As planned. Nothing if a family is missing or the mix cannot be.
std::optional<analytics::Ink> plannedInk(const PlannedLayer& layer, RunFamilies& families) {
    std::vector<analytics::MixPart> parts;
    for (const auto& part : layer.parts) {
        auto family = families(part.family);
        if (!family) {
            return std::nullopt;
        }
        parts.push_back({analytics::pureInk(std::move(*family)), part.mass});
    }
    if (parts.size() == 1 && layer.ink == layer.parts.front().family) {
        return parts.front().ink;
    }
    auto mixed = analytics::mixInks(layer.ink, parts);
    return mixed ? std::optional{std::move(*mixed)} : std::nullopt;
}

bool asPlanned(const analytics::Ink& ink, const PlannedLayer& layer) {
    std::set<std::string> planned;
    for (const auto& part : layer.parts) {
        if (part.mass > 0.0) {
            planned.insert(part.family);
        }
    }
    std::set<std::string> poured;
    for (const auto& family : ink.parts) {
        poured.insert(family.name);
    }
    return planned == poured;
}

/// The layer as it is printed: from its buckets, if they were scanned, whatever was planned. Nothing if a bucket or a
/// family is missing or the inks cannot be mixed.
std::optional<analytics::Layer> layerOf(const Database& database, const PlannedLayer& planned, RunFamilies& families,
                                        const std::optional<Moment>& now) {
    analytics::Layer layer{planned.colour, {}, std::nullopt};
    std::vector<analytics::MixPart> parts;
    for (const auto number : planned.buckets) {
        const auto tree = treeOf(database, number);
        auto ink = tree ? inkOfTree(*tree, std::ref(families)) : std::nullopt;
        if (!ink) {
            return std::nullopt;
        }
        const auto trouble = now ? troubleOf(*tree, *ink, now->wallMilliseconds, now->today) : std::nullopt;
        if (trouble && (!layer.bucketTrouble || trouble->fault < layer.bucketTrouble->fault)) {
            layer.bucketTrouble = trouble;
        }
        parts.push_back({std::move(*ink), 1.0});
    }
    std::optional<analytics::Ink> ink;
    if (parts.size() == 1) {
        ink = parts.front().ink;
    } else if (auto mixed = analytics::mixInks(planned.ink, parts)) {
        ink = std::move(*mixed);
    }
    if (planned.buckets.empty() || (ink && asPlanned(*ink, planned))) {
        ink = plannedInk(planned, families);
    }
    if (!ink) {
        return std::nullopt;
    }
    layer.ink = std::move(*ink);
    return layer;
}

void fillLayers(const Database& database, RunOnFile& run, const std::optional<Moment>& now) {
    RunFamilies families{database, run};
    for (const auto& planned : run.plan.layers) {
        auto layer = layerOf(database, planned, families, now);
        run.usable = run.usable && layer.has_value();
        run.layers.layers.push_back(std::move(layer).value_or(analytics::Layer{planned.colour, {}, std::nullopt}));
    }
    const auto fabric =
        revisionOf<FabricRecord>(database, "fabrics", run.plan.fabric, run.lot ? &run.lot->revisions.fabric : nullptr);
    run.usable = run.usable && fabric.has_value();
    if (fabric) {
        run.layers.fabric = toFabric(*fabric);
        run.revisions.fabric = {fabric->name, fabric->revision};
    }
    run.usable = run.usable && analytics::windowOf(run.layers).has_value();
}

template <class Value>
std::optional<RunOnFile> runWhere(const Database& database, const char* where, const Value& value,
                                  const std::optional<std::int64_t>& number, const std::optional<Moment>& now) {
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

Result<std::vector<HeldLot>> holds(const Database& database) {
    return asked("read held lots", [&] {
        std::vector<HeldLot> all;
        auto query = prepared(
            database,
            "SELECT lots.body, lots.opened_ms, lots.closed, lots.last_piece, lots.state, runs.number, runs.title, "
            "min(r.taken_ms), r.word FROM lots JOIN runs ON runs.id = lots.run JOIN readings r ON r.lot = lots.id "
            "WHERE lots.state = ?1 AND r.word IN ('under-cured', 'overheated') AND r.reason <> 'set-up' "
            "AND NOT EXISTS (SELECT 1 FROM struck WHERE struck.reading = r.id) "
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
