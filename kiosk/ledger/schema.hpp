#pragma once

#include "kiosk/ledger/failure.hpp"

#include <SQLiteCpp/Database.h>
#include <string>
#include <vector>

namespace holdfast::kiosk::ledger {

/// PRAGMA user_version of the books that this program writes.
inline constexpr int schemaVersion = 1;
/// PRAGMA application_id: "HOLD" in ASCII.
inline constexpr int bookApplicationId = 0x484f4c44;

/// Makes all tables and guards of the ledger itself, inside the caller's transaction. May throw.
void createSchema(SQLite::Database& database);

/// Names of the tables and triggers of the ledger that are missing or not exactly as createSchema makes them, and of
/// what else hangs on its tables. May throw.
[[nodiscard]] std::vector<std::string> alteredGuards(SQLite::Database& database);

/// Version of the projection that made the read tables; -1 before the first. May throw.
[[nodiscard]] int projectionVersion(SQLite::Database& database);
void setProjectionVersion(SQLite::Database& database, int version);

} // namespace holdfast::kiosk::ledger
