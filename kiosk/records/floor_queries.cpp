#include "kiosk/records/floor_queries.hpp"

#include "kiosk/records/reading_rows.hpp"
#include "kiosk/records/stored_body.hpp"

#include <algorithm>

namespace holdfast::kiosk::records {
namespace {

using ledger::Result;
using SQLite::Database;
using SQLite::Statement;

// The newest are picked first: only of those the readings are counted.
constexpr const char* kRunSelect =
    "SELECT body, planned_ms, finished, "
    "(SELECT count(*) FROM readings r WHERE r.run = picked.id AND r.refused = 0 "
    "AND NOT EXISTS (SELECT 1 FROM struck WHERE struck.reading = r.id)), "
    "(SELECT state FROM lots WHERE lots.run = picked.id ORDER BY CASE state WHEN 'on-hold' THEN 0 WHEN 'unproven' "
    "THEN 1 WHEN 'open' THEN 2 WHEN 'setting-up' THEN 3 WHEN 'scrapped' THEN 4 WHEN 're-run' THEN 5 WHEN 'released' "
    "THEN 6 ELSE 7 END LIMIT 1) "
    "FROM (SELECT id, body, planned_ms, number, EXISTS (SELECT 1 FROM finished_runs WHERE run = runs.id) AS finished "
    "FROM runs WHERE kind = ?1 AND finished = ?2 ORDER BY planned_ms DESC, number DESC LIMIT ?3) picked "
    "ORDER BY planned_ms DESC, number DESC";

RunRow runRow(Statement& query) {
    auto plan = storedBody<RunPlanned>(query.getColumn(0).getString());
    RunRow row;
    row.id = std::move(plan.run);
    row.kind = plan.kind;
    row.number = plan.number;
    row.title = std::move(plan.title);
    row.customer = std::move(plan.customer);
    row.reference = std::move(plan.reference);
    row.fabric = std::move(plan.fabric);
    row.dryer = std::move(plan.dryer);
    row.pieces = plan.pieces;
    row.plannedAt = query.getColumn(1).getInt64();
    row.finished = query.getColumn(2).getInt() != 0;
    row.readings = query.getColumn(3).getInt();
    row.worst = fromWord<LotState>(textAt(query, 4).value_or(""));
    return row;
}

std::int64_t highest(const Database& database, const char* sql, const std::optional<PlanKind>& kind = {}) {
    auto query = kind ? prepared(database, sql, toWord(*kind)) : prepared(database, sql);
    return query.executeStep() ? query.getColumn(0).getInt64() : 0;
}

/// Instruments and single strips wear labels of one kind.
std::int64_t highestInstrument(const Database& database) {
    std::int64_t most = 0;
    for (const auto& one : bodies<InstrumentDescribed>(database, "SELECT body FROM instruments")) {
        most = std::max(most, one.number.value_or(0));
        if (one.pack) {
            most = std::max(most, one.pack->firstNumber + one.pack->count - 1);
        }
    }
    return most;
}

std::int64_t highestOf(const Database& database, Numbered what) {
    switch (what) {
    case Numbered::run:
        return highest(database, "SELECT coalesce(max(number), 0) FROM runs WHERE kind = ?", PlanKind::run);
    case Numbered::windowCard:
        return highest(database, "SELECT coalesce(max(number), 0) FROM runs WHERE kind = ?", PlanKind::windowCard);
    case Numbered::bucket:
        return highest(database, "SELECT coalesce(max(number), 0) FROM buckets");
    case Numbered::instrument:
        return highestInstrument(database);
    case Numbered::person:
        return highest(database, "SELECT coalesce(max(number), 0) FROM crew_people");
    }
    return 0;
}

constexpr const char* kDryerSelect =
    "SELECT d.body, s.belt, s.set_value, s.set_unit, s.stopped, s.since_ms, coalesce((SELECT run FROM lots "
    "WHERE lots.dryer = d.id AND lots.closed = 0 ORDER BY lots.opened_ms DESC, lots.rowid DESC LIMIT 1), '') "
    "FROM dryers d JOIN dryer_states s ON s.dryer = d.id WHERE d.withdrawn = 0 ORDER BY d.name, d.id";

DryerNow dryerNow(Statement& query) {
    DryerNow now;
    now.described = storedBody<DryerDescribed>(query.getColumn(0).getString());
    now.beltMetresPerMinute = numberAt(query, 1);
    const auto value = numberAt(query, 2);
    const auto unit = fromWord<analytics::TemperatureUnit>(textAt(query, 3).value_or(""));
    if (value && unit) {
        now.setPoint = analytics::AuthoredTemperature{*value, *unit};
    }
    now.stopped = query.getColumn(4).getInt() != 0;
    now.since = query.getColumn(5).getInt64();
    now.runningRun = query.getColumn(6).getString();
    return now;
}

} // namespace

Result<std::vector<RunRow>> runsOnFile(const Database& database, PlanKind kind, bool finished, int limit) {
    return asked("read the runs", [&] {
        std::vector<RunRow> rows;
        auto query = prepared(database, kRunSelect, toWord(kind), finished, limit);
        while (query.executeStep()) {
            rows.push_back(runRow(query));
        }
        return rows;
    });
}

Result<std::int64_t> nextNumber(const Database& database, Numbered what) {
    return asked("look for the next number", [&] { return highestOf(database, what) + 1; });
}

Result<std::vector<DryerNow>> dryersNow(const Database& database) {
    return asked("read the dryers", [&] {
        std::vector<DryerNow> all;
        auto query = prepared(database, kDryerSelect);
        while (query.executeStep()) {
            all.push_back(dryerNow(query));
        }
        return all;
    });
}

Result<std::vector<ActionRow>> actionsAt(const Database& database, const std::string& dryer, int limit) {
    return asked("read what was done", [&] {
        std::vector<ActionRow> rows;
        auto query =
            prepared(database, "SELECT taken_ms, body FROM actions WHERE dryer = ? ORDER BY sequence DESC LIMIT ?",
                     dryer, limit);
        while (query.executeStep()) {
            rows.push_back({query.getColumn(0).getInt64(), storedBody<ActionTaken>(query.getColumn(1).getString())});
        }
        return rows;
    });
}

Result<std::vector<ReadingRow>> unanswered(const Database& database) {
    return asked("read what was left unanswered", [&] {
        return readingRows(database,
                           "WHERE lots.state = ? AND r.word IN ('under-cured', 'overheated') AND r.refused = 0 "
                           "AND r.reason <> 'set-up' AND struck.cause IS NULL "
                           "AND NOT EXISTS (SELECT 1 FROM actions WHERE actions.answers = r.id) ORDER BY r.first",
                           toWord(LotState::onHold));
    });
}

Result<std::vector<ReadingRow>> unclaimed(const Database& database, int limit) {
    return asked("read what nobody claimed", [&] {
        return readingRows(database,
                           "WHERE r.run IS NULL AND r.refused = 0 AND struck.cause IS NULL "
                           "ORDER BY r.first DESC LIMIT ?",
                           limit);
    });
}

Result<std::optional<std::string>> readingOfStrip(const Database& database, std::int64_t number) {
    return asked("look up a strip", [&] {
        auto query = prepared(database,
                              "SELECT r.id FROM strips_used s JOIN readings r ON r.id = s.reading WHERE s.number = ? "
                              "ORDER BY r.first LIMIT 1",
                              number);
        return query.executeStep() ? textAt(query, 0) : std::nullopt;
    });
}

Result<std::vector<PersonOnFile>> peopleOnFile(const Database& database) {
    return asked("read the people", [&] {
        std::vector<PersonOnFile> all;
        auto query = prepared(database, "SELECT body, gone, pin FROM crew_people ORDER BY number");
        while (query.executeStep()) {
            auto person = storedBody<PersonAdded>(query.getColumn(0).getString());
            all.push_back({person.number, std::move(person.badge), std::move(person.roles),
                           query.getColumn(1).getInt() != 0, query.getColumn(2).getString()});
        }
        return all;
    });
}

Result<std::vector<CheckDone>> checksOf(const Database& database, const std::string& instrument) {
    return asked("read checks", [&] {
        return bodies<CheckDone>(database, "SELECT body FROM checks WHERE instrument = ? ORDER BY sequence DESC",
                                 instrument);
    });
}

Result<std::vector<CertificateAdded>> certificatesOf(const Database& database, const std::string& instrument) {
    return asked("read certificates", [&] {
        return bodies<CertificateAdded>(
            database, "SELECT body FROM certificates WHERE instrument = ? ORDER BY sequence DESC", instrument);
    });
}

Result<std::vector<FlashRow>> flashesOf(const Database& database, const std::string& run) {
    return asked("read flashes", [&] {
        std::vector<FlashRow> rows;
        auto query = prepared(database, "SELECT noted_ms, body FROM flashes WHERE run = ? ORDER BY sequence", run);
        while (query.executeStep()) {
            rows.push_back({query.getColumn(0).getInt64(), storedBody<FlashNoted>(query.getColumn(1).getString())});
        }
        return rows;
    });
}

} // namespace holdfast::kiosk::records
