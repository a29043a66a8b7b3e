#pragma once

#include "kiosk/ledger/entry.hpp"

#include <SQLiteCpp/Database.h>
#include <SQLiteCpp/Statement.h>
#include <cstdint>
#include <span>
#include <string>
#include <vector>

namespace holdfast::kiosk::ledger {

/// What stands in the tables, read and written without judging it. All of these may throw.

/// Entries from sequence ?1 on, at most ?2 (all if negative); rows for entryOf.
inline constexpr const char* entriesFromSql =
    "SELECT sequence, id, kiosk, wall_ms, utc_offset_min, person, kind, version, body, hash FROM entries "
    "WHERE sequence >= ? ORDER BY sequence LIMIT ?";
inline constexpr const char* entryByIdSql =
    "SELECT sequence, id, kiosk, wall_ms, utc_offset_min, person, kind, version, body, hash FROM entries WHERE id = ?";

[[nodiscard]] Entry entryOf(const SQLite::Statement& row);
[[nodiscard]] Digest digestOf(const SQLite::Column& column);
[[nodiscard]] Bytes bytesOf(const SQLite::Column& column);
void bindBytes(SQLite::Statement& statement, int place, std::span<const std::uint8_t> bytes);
[[nodiscard]] Head headOf(SQLite::Database& database);

/// Prepared statements of the writing connection.
class Store {
public:
    explicit Store(SQLite::Database& database);

    /// Everything of the request except the read tables, inside the caller's transaction; the entries as stored.
    [[nodiscard]] std::vector<Entry> put(const CommitRequest& request);

private:
    Entry putEntry(const EntryDraft& draft, const Head& head);
    void putBlob(const BlobDraft& draft, std::int64_t storedMilliseconds);
    void putPerson(const PersonName& person);

    SQLite::Statement m_head;
    SQLite::Statement m_insertEntry;
    SQLite::Statement m_findBlob;
    SQLite::Statement m_insertBlob;
    SQLite::Statement m_bringBackBlob;
    SQLite::Statement m_putPerson;
    SQLite::Statement m_putSpool;
};

} // namespace holdfast::kiosk::ledger
