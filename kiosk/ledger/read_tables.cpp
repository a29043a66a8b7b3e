#include "kiosk/ledger/read_tables.hpp"

#include "kiosk/ledger/schema.hpp"
#include "kiosk/ledger/stored.hpp"

#include <SQLiteCpp/Statement.h>
#include <bit>
#include <cstddef>
#include <sqlite3.h>

namespace holdfast::kiosk::ledger {

namespace {

std::string quoted(const std::string& name) {
    std::string text = "\"";
    for (const char sign : name) {
        text += sign;
        if (sign == '"') {
            text += sign;
        }
    }
    return text + '"';
}

std::string typeOf(SQLite::Database& database, const std::string& name) {
    SQLite::Statement query{database, "SELECT type FROM sqlite_master WHERE name = ? AND type IN ('table', 'view')"};
    query.bind(1, name);
    return query.executeStep() ? query.getColumn(0).getString() : std::string{};
}

void dropTables(SQLite::Database& database, const Projection& projection) {
    database.exec("PRAGMA defer_foreign_keys = ON");
    const auto names = projection.tables();
    for (auto name = names.rbegin(); name != names.rend(); ++name) {
        const std::string type = typeOf(database, *name);
        if (!type.empty()) {
            database.exec("DROP " + type + ' ' + quoted(*name));
        }
    }
}

void addValue(Hasher& hasher, const SQLite::Column& value) {
    hasher.addInteger(value.getType());
    switch (value.getType()) {
    case SQLITE_INTEGER:
        hasher.addInteger(value.getInt64());
        break;
    case SQLITE_FLOAT:
        hasher.addInteger(std::bit_cast<std::int64_t>(value.getDouble()));
        break;
    case SQLITE_NULL:
        break;
    default:
        hasher.addPrefixed(value.getString());
    }
}

/// Adds as numbers of 256 bits, so that the order of rows does not matter and equal rows do not cancel.
void addTo(Digest& sum, const Digest& digest) {
    unsigned carry = 0;
    for (std::size_t i = 0; i < sum.size(); ++i) {
        carry += static_cast<unsigned>(sum[i]) + digest[i];
        sum[i] = static_cast<std::uint8_t>(carry & 0xff);
        carry >>= 8;
    }
}

TableDigest digestOfTable(SQLite::Database& database, const std::string& name) {
    TableDigest result{name, 0, {}};
    SQLite::Statement rows{database, "SELECT * FROM " + quoted(name)};
    while (rows.executeStep()) {
        Hasher hasher;
        for (int i = 0; i < rows.getColumnCount(); ++i) {
            addValue(hasher, rows.getColumn(i));
        }
        addTo(result.digest, hasher.finish());
        ++result.rows;
    }
    return result;
}

} // namespace

void rebuildTables(SQLite::Database& database, const Projection& projection) {
    dropTables(database, projection);
    database.exec(std::string{projection.schema()});
    SQLite::Statement query{database, entriesFromSql};
    query.bind(1, std::int64_t{1});
    query.bind(2, std::int64_t{-1});
    while (query.executeStep()) {
        projection.apply(database, entryOf(query));
    }
    setProjectionVersion(database, projection.version());
}

std::unique_ptr<SQLite::Database> scratchTables(const Projection& projection) {
    auto scratch = std::make_unique<SQLite::Database>("", SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
    scratch->exec("PRAGMA foreign_keys = ON; PRAGMA recursive_triggers = ON; PRAGMA synchronous = OFF");
    scratch->exec(std::string{projection.schema()});
    return scratch;
}

TablesDigest digestOf(SQLite::Database& database, const Projection& projection) {
    TablesDigest digest;
    for (const std::string& name : projection.tables()) {
        digest.tables.push_back(digestOfTable(database, name));
    }
    return digest;
}

std::vector<std::string> differences(const TablesDigest& one, const TablesDigest& other) {
    std::vector<std::string> names;
    for (std::size_t i = 0; i < one.tables.size(); ++i) {
        if (i >= other.tables.size() || !(one.tables[i] == other.tables[i])) {
            names.push_back(one.tables[i].table);
        }
    }
    return names;
}

} // namespace holdfast::kiosk::ledger
