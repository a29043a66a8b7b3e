#pragma once

#include "kiosk/ledger/entry.hpp"
#include "kiosk/records/kinds.hpp"

#include <SQLiteCpp/Database.h>

/// The inside of ShopProjection, for who writes many entries and still has the records that they were made from.
namespace holdfast::kiosk::records {

/// What ShopProjection::apply() does with an entry whose body is of the newest version and reads as `record`. Throws as
/// that does.
void applyRecord(SQLite::Database& database, const ledger::Entry& entry, const Record& record);

} // namespace holdfast::kiosk::records
