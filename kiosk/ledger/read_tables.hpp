#pragma once

#include "kiosk/ledger/projection.hpp"
#include "kiosk/ledger/report.hpp"

#include <SQLiteCpp/Database.h>
#include <memory>
#include <string>
#include <vector>

namespace holdfast::kiosk::ledger {

/// All of these may throw.

/// Drops the projection's tables, makes them again and applies every entry, inside the caller's transaction.
void rebuildTables(SQLite::Database& database, const Projection& projection);

/// A database of its own that spills to the disk, with the projection's tables, empty.
[[nodiscard]] std::unique_ptr<SQLite::Database> scratchTables(const Projection& projection);

[[nodiscard]] TablesDigest digestOf(SQLite::Database& database, const Projection& projection);

/// Names of tables in which the two differ; both are of the same projection.
[[nodiscard]] std::vector<std::string> differences(const TablesDigest& one, const TablesDigest& other);

} // namespace holdfast::kiosk::ledger
