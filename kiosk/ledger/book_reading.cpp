#include "kiosk/ledger/book_inside.hpp"
#include "kiosk/ledger/check.hpp"
#include "kiosk/ledger/read_tables.hpp"

#include <SQLiteCpp/Statement.h>

namespace holdfast::kiosk::ledger {

namespace {

Failure noEntry(const std::string& which) {
    return {FailureCode::notFound, "no entry " + which};
}

} // namespace

Result<std::vector<Entry>> Book::entries(std::int64_t from, std::int64_t limit) const {
    return guarded("read entries", reader(), [&]() -> Result<std::vector<Entry>> {
        std::vector<Entry> found;
        SQLite::Statement query{reader(), entriesFromSql};
        query.bind(1, from);
        query.bind(2, limit);
        while (query.executeStep()) {
            found.push_back(entryOf(query));
        }
        return found;
    });
}

Result<Entry> Book::entry(std::int64_t sequence) const {
    auto found = entries(sequence, 1);
    if (!found) {
        return tl::unexpected(found.error());
    }
    if (found->empty() || found->front().sequence != sequence) {
        return tl::unexpected(noEntry(std::to_string(sequence)));
    }
    return std::move(found->front());
}

Result<Entry> Book::entryById(const std::string& id) const {
    return guarded("read an entry", reader(), [&]() -> Result<Entry> {
        SQLite::Statement query{reader(), entryByIdSql};
        query.bind(1, id);
        if (!query.executeStep()) {
            return tl::unexpected(noEntry(id));
        }
        return entryOf(query);
    });
}

Result<Head> Book::head() const {
    return guarded("read the head", reader(), [&]() -> Result<Head> { return headOf(reader()); });
}

Result<Bytes> Book::blob(const Digest& digest) const {
    return blob(reader(), digest);
}

Result<Bytes> Book::blob(SQLite::Database& reader, const Digest& digest) {
    return guarded("read a blob", reader, [&]() -> Result<Bytes> {
        SQLite::Statement query{reader, "SELECT dropped_ms IS NOT NULL, bytes FROM blobs WHERE hash = ?"};
        bindBytes(query, 1, digest);
        if (!query.executeStep()) {
            return tl::unexpected(Failure{FailureCode::notFound, "no blob " + toHex(digest)});
        }
        if (query.getColumn(0).getInt() != 0) {
            return tl::unexpected(Failure{FailureCode::dropped, "blob " + toHex(digest) + " was dropped"});
        }
        Bytes bytes = bytesOf(query.getColumn(1));
        if (sha256(bytes) != digest) {
            return tl::unexpected(Failure{FailureCode::damaged, "blob " + toHex(digest) + " was altered"});
        }
        return bytes;
    });
}

Result<std::vector<PersonName>> Book::personNames() const {
    return guarded("read names", reader(), [&]() -> Result<std::vector<PersonName>> {
        std::vector<PersonName> names;
        SQLite::Statement query{reader(), "SELECT number, name FROM persons ORDER BY number"};
        while (query.executeStep()) {
            names.push_back({query.getColumn(0).getInt64(), query.getColumn(1).getString()});
        }
        return names;
    });
}

Result<IntegrityReport> Book::check(std::stop_token stop) const {
    const auto connection = openReader();
    if (!connection) {
        return tl::unexpected(connection.error());
    }
    return checkBook(**connection, *m_inside->projection, stop);
}

Result<TablesDigest> Book::tablesDigest() const {
    const auto connection = openReader();
    if (!connection) {
        return tl::unexpected(connection.error());
    }
    return guarded("digest read tables", **connection, [&]() -> Result<TablesDigest> {
        SQLite::Transaction snapshot{**connection, SQLite::TransactionBehavior::DEFERRED};
        return ledger::digestOf(**connection, *m_inside->projection);
    });
}

} // namespace holdfast::kiosk::ledger
