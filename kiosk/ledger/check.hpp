#pragma once

#include "kiosk/ledger/failure.hpp"
#include "kiosk/ledger/projection.hpp"
#include "kiosk/ledger/report.hpp"

#include <SQLiteCpp/Database.h>
#include <cstdint>
#include <stop_token>

namespace holdfast::kiosk::ledger {

/// Everything that Book::check promises, over one snapshot of the database.
[[nodiscard]] Result<IntegrityReport> checkBook(SQLite::Database& database, const Projection& projection,
                                                const std::stop_token& stop);

/// First line of SQLite's own quick check that is not "ok"; empty if there is none. May throw.
[[nodiscard]] std::string structureFault(SQLite::Database& database);

/// Whether the last `count` entries follow from one another. May throw.
[[nodiscard]] bool tailFollows(SQLite::Database& database, std::int64_t count);

/// The whole report in a line of English for the log.
[[nodiscard]] std::string summaryOf(const IntegrityReport& report);

} // namespace holdfast::kiosk::ledger
