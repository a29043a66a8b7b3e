#pragma once

#include "kiosk/ledger/entry.hpp"
#include "kiosk/records/kinds.hpp"

#include <SQLiteCpp/Database.h>

/// The inside of ShopProjection, for who writes many entries and still has the records that they were made from.
namespace holdfast::kiosk::records {

/// The two steps of ShopProjection::apply() for an entry whose body is of the newest version and reads as `record`: the
/// first once for each kind and version, which may be repeated; the second throws as that does.
void noteKind(SQLite::Database& database, const ledger::Entry& entry);
void applyRecord(SQLite::Database& database, const ledger::Entry& entry, const Record& record);

} // namespace holdfast::kiosk::records
