#include "kiosk/ledger/stored.hpp"

#include <SQLiteCpp/Exception.h>
#include <algorithm>
#include <sqlite3.h>

namespace holdfast::kiosk::ledger {

Digest digestOf(const SQLite::Column& column) {
    Digest digest{};
    if (static_cast<std::size_t>(column.getBytes()) != digest.size()) {
        throw SQLite::Exception{"a hash is not 32 bytes long", SQLITE_CORRUPT};
    }
    const auto* bytes = static_cast<const std::uint8_t*>(column.getBlob());
    std::copy_n(bytes, digest.size(), digest.begin());
    return digest;
}

Bytes bytesOf(const SQLite::Column& column) {
    const auto* bytes = static_cast<const std::uint8_t*>(column.getBlob());
    return bytes == nullptr ? Bytes{} : Bytes(bytes, bytes + column.getBytes());
}

void bindBytes(SQLite::Statement& statement, int place, std::span<const std::uint8_t> bytes) {
    static constexpr std::uint8_t none = 0; // a null pointer would store NULL
    statement.bindNoCopy(place, bytes.empty() ? &none : bytes.data(), static_cast<int>(bytes.size()));
}

Entry entryOf(const SQLite::Statement& row) {
    Entry entry;
    entry.sequence = row.getColumn(0).getInt64();
    entry.id = row.getColumn(1).getString();
    entry.kiosk = row.getColumn(2).getString();
    entry.wallMilliseconds = row.getColumn(3).getInt64();
    entry.utcOffsetMinutes = row.getColumn(4).getInt();
    entry.person = row.getColumn(5).getInt64();
    entry.kind = row.getColumn(6).getString();
    entry.version = row.getColumn(7).getInt();
    entry.body = row.getColumn(8).getString();
    entry.hash = digestOf(row.getColumn(9));
    return entry;
}

namespace {

constexpr const char* headSql = "SELECT sequence, hash FROM entries ORDER BY sequence DESC LIMIT 1";

Head headFrom(SQLite::Statement& query) {
    if (!query.executeStep()) {
        return {};
    }
    return {query.getColumn(0).getInt64(), digestOf(query.getColumn(1))};
}

} // namespace

Head headOf(SQLite::Database& database) {
    SQLite::Statement query{database, headSql};
    return headFrom(query);
}

Store::Store(SQLite::Database& database)
    : m_head(database, headSql),
      m_insertEntry(database,
                    "INSERT INTO entries (sequence, id, kiosk, wall_ms, utc_offset_min, person, kind, version, "
                    "body, hash) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)"),
      m_findBlob(database, "SELECT bytes IS NULL FROM blobs WHERE hash = ?"),
      m_insertBlob(database, "INSERT INTO blobs (hash, kind, size, stored_ms, bytes) VALUES (?, ?, ?, ?, ?)"),
      m_bringBackBlob(database, "UPDATE blobs SET bytes = ?2, dropped_ms = NULL, stored_ms = ?3 WHERE hash = ?1"),
      m_putPerson(database, "INSERT INTO persons (number, name) VALUES (?, ?) "
                            "ON CONFLICT (number) DO UPDATE SET name = excluded.name"),
      m_putSpool(database, "INSERT INTO redundant_spools (name) VALUES (?) ON CONFLICT (name) DO NOTHING") {}

std::vector<Entry> Store::put(const CommitRequest& request) {
    for (const BlobDraft& blob : request.blobs) {
        putBlob(blob, request.entries.front().wallMilliseconds);
    }
    for (const PersonName& person : request.persons) {
        putPerson(person);
    }
    std::vector<Entry> stored;
    stored.reserve(request.entries.size());
    m_head.tryReset();
    Head head = headFrom(m_head);
    m_head.tryReset();
    for (const EntryDraft& draft : request.entries) {
        stored.push_back(putEntry(draft, head));
        head = {stored.back().sequence, stored.back().hash};
    }
    if (request.spoolMadeRedundant) {
        m_putSpool.tryReset();
        m_putSpool.bind(1, *request.spoolMadeRedundant);
        m_putSpool.exec();
    }
    return stored;
}

Entry Store::putEntry(const EntryDraft& draft, const Head& head) {
    Entry entry;
    static_cast<EntryDraft&>(entry) = draft;
    entry.sequence = head.sequence + 1;
    entry.hash = chainHash(head.hash, entry);

    m_insertEntry.tryReset(); // whatever the last use ended with
    m_insertEntry.bind(1, entry.sequence);
    m_insertEntry.bindNoCopy(2, entry.id);
    m_insertEntry.bindNoCopy(3, entry.kiosk);
    m_insertEntry.bind(4, entry.wallMilliseconds);
    m_insertEntry.bind(5, entry.utcOffsetMinutes);
    m_insertEntry.bind(6, entry.person);
    m_insertEntry.bindNoCopy(7, entry.kind);
    m_insertEntry.bind(8, entry.version);
    m_insertEntry.bindNoCopy(9, entry.body);
    bindBytes(m_insertEntry, 10, entry.hash);
    m_insertEntry.exec();
    m_insertEntry.tryReset();
    m_insertEntry.clearBindings(); // they point into this call
    return entry;
}

void Store::putBlob(const BlobDraft& draft, std::int64_t storedMilliseconds) {
    const Digest hash = sha256(draft.bytes);
    m_findBlob.tryReset();
    bindBytes(m_findBlob, 1, hash);
    const bool known = m_findBlob.executeStep();
    const bool dropped = known && m_findBlob.getColumn(0).getInt() != 0;
    m_findBlob.tryReset();
    m_findBlob.clearBindings();
    if (known && !dropped) {
        return;
    }
    SQLite::Statement& store = known ? m_bringBackBlob : m_insertBlob;
    store.tryReset();
    bindBytes(store, 1, hash);
    if (known) {
        bindBytes(store, 2, draft.bytes);
        store.bind(3, storedMilliseconds);
    } else {
        store.bindNoCopy(2, draft.kind);
        store.bind(3, static_cast<std::int64_t>(draft.bytes.size()));
        store.bind(4, storedMilliseconds);
        bindBytes(store, 5, draft.bytes);
    }
    store.exec();
    store.tryReset();
    store.clearBindings();
}

void Store::putPerson(const PersonName& person) {
    m_putPerson.tryReset();
    m_putPerson.bind(1, person.number);
    m_putPerson.bind(2, person.name);
    m_putPerson.exec();
}

} // namespace holdfast::kiosk::ledger
