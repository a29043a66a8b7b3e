#include "kiosk/ledger/schema.hpp"

#include <SQLiteCpp/Statement.h>
#include <map>
#include <utility>

namespace holdfast::kiosk::ledger {

namespace {

// INSERT OR REPLACE fires neither update nor delete triggers for the row it replaces: the insert guard refuses it.
constexpr const char* tables = R"sql(
CREATE TABLE entries (
    sequence       INTEGER PRIMARY KEY,
    id             TEXT    NOT NULL UNIQUE CHECK (length(id) = 36),
    kiosk          TEXT    NOT NULL,
    wall_ms        INTEGER NOT NULL,
    utc_offset_min INTEGER NOT NULL CHECK (utc_offset_min BETWEEN -1440 AND 1440),
    person         INTEGER NOT NULL,
    kind           TEXT    NOT NULL CHECK (kind <> ''),
    version        INTEGER NOT NULL CHECK (version BETWEEN 1 AND 2147483647),
    body           TEXT    NOT NULL,
    hash           BLOB    NOT NULL CHECK (length(hash) = 32)
) STRICT;
CREATE TRIGGER entries_only_grow BEFORE INSERT ON entries
WHEN NEW.sequence IS NOT (SELECT coalesce(max(sequence), 0) + 1 FROM entries)
  OR EXISTS (SELECT 1 FROM entries WHERE id = NEW.id)
BEGIN SELECT RAISE(ABORT, 'an entry takes the next number and a new id'); END;
CREATE TRIGGER entries_never_change BEFORE UPDATE ON entries
BEGIN SELECT RAISE(ABORT, 'entries are never changed'); END;
CREATE TRIGGER entries_never_go BEFORE DELETE ON entries
BEGIN SELECT RAISE(ABORT, 'entries are never deleted'); END;

CREATE TABLE blobs (
    number     INTEGER PRIMARY KEY,
    hash       BLOB    NOT NULL UNIQUE CHECK (length(hash) = 32),
    kind       TEXT    NOT NULL CHECK (kind <> ''),
    size       INTEGER NOT NULL CHECK (size >= 0),
    stored_ms  INTEGER NOT NULL,
    dropped_ms INTEGER,
    bytes      BLOB,
    CHECK ((bytes IS NULL) = (dropped_ms IS NOT NULL)),
    CHECK (bytes IS NULL OR length(bytes) = size)
) STRICT;
CREATE INDEX blobs_by_kind ON blobs (kind, stored_ms) WHERE dropped_ms IS NULL;
CREATE TRIGGER blobs_only_grow BEFORE INSERT ON blobs
WHEN EXISTS (SELECT 1 FROM blobs WHERE hash = NEW.hash OR number = NEW.number)
BEGIN SELECT RAISE(ABORT, 'a blob is stored once'); END;
CREATE TRIGGER blobs_keep_their_hash BEFORE UPDATE ON blobs
WHEN NEW.number IS NOT OLD.number OR NEW.hash IS NOT OLD.hash OR NEW.kind IS NOT OLD.kind OR NEW.size IS NOT OLD.size
  OR (OLD.bytes IS NOT NULL AND NEW.bytes IS NOT NULL)
BEGIN SELECT RAISE(ABORT, 'a blob may only be dropped or brought back'); END;
CREATE TRIGGER blobs_never_go BEFORE DELETE ON blobs
BEGIN SELECT RAISE(ABORT, 'of a dropped blob the hash stays'); END;

CREATE TABLE persons (
    number INTEGER PRIMARY KEY,
    name   TEXT NOT NULL
) STRICT;

CREATE TABLE redundant_spools (
    name TEXT PRIMARY KEY
) STRICT;

CREATE TABLE meta (
    key   TEXT PRIMARY KEY,
    value INTEGER NOT NULL
) STRICT;
)sql";

/// Of each table, index and trigger.
struct Made {
    std::string on; ///< the table itself, or the table that it belongs to
    std::string sql;
};

std::map<std::string, Made> statementsOf(SQLite::Database& database) {
    std::map<std::string, Made> statements;
    SQLite::Statement query{database, "SELECT name, tbl_name, sql FROM sqlite_master WHERE sql IS NOT NULL"};
    while (query.executeStep()) {
        statements[query.getColumn(0).getString()] = {query.getColumn(1).getString(), query.getColumn(2).getString()};
    }
    return statements;
}

} // namespace

void createSchema(SQLite::Database& database) {
    database.exec(tables);
    database.exec("PRAGMA application_id = " + std::to_string(bookApplicationId));
    database.exec("PRAGMA user_version = " + std::to_string(schemaVersion));
}

std::vector<std::string> alteredGuards(SQLite::Database& database) {
    SQLite::Database model{":memory:", SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE};
    createSchema(model);
    const auto ours = statementsOf(model);
    const auto found = statementsOf(database);
    std::vector<std::string> altered;
    for (const auto& [name, made] : ours) {
        const auto at = found.find(name);
        if (at == found.end() || at->second.sql != made.sql) {
            altered.push_back(name);
        }
    }
    for (const auto& [name, made] : found) {
        if (ours.count(name) == 0 && ours.count(made.on) != 0) {
            altered.push_back(name); // somebody's trigger or index on a table of ours
        }
    }
    return altered;
}

int projectionVersion(SQLite::Database& database) {
    SQLite::Statement query{database, "SELECT value FROM meta WHERE key = 'projection_version'"};
    return query.executeStep() ? query.getColumn(0).getInt() : -1;
}

void setProjectionVersion(SQLite::Database& database, int version) {
    SQLite::Statement store{database, "INSERT INTO meta (key, value) VALUES ('projection_version', ?) "
                                      "ON CONFLICT (key) DO UPDATE SET value = excluded.value"};
    store.bind(1, version);
    store.exec();
}

} // namespace holdfast::kiosk::ledger
