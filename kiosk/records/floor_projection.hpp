#pragma once

#include "kiosk/ledger/entry.hpp"
#include "kiosk/records/kinds.hpp"

#include <SQLiteCpp/Database.h>
#include <cstdint>
#include <string>

/// The inside that the files of ShopProjection share.
namespace holdfast::kiosk::records::projecting {

/// Throws: the entry contradicts what is there, and nothing of its request is stored.
[[noreturn]] void refuse(const ledger::Entry& entry, const std::string& why);

/// A mix whose tree down to the pails has more buckets than this is refused, so that no query can grow without end.
inline constexpr std::int64_t kMostBucketsInTree = 4096;

void apply(SQLite::Database& db, const ledger::Entry& entry, const BucketOpened& bucket);
/// Parts must stand before it, so no mix can contain itself. A part may have been closed as empty, since its last rest
/// may be what went in, but not as thrown away or mislabelled.
void apply(SQLite::Database& db, const ledger::Entry& entry, const MixMade& mix);
void apply(SQLite::Database& db, const ledger::Entry& entry, const BucketClosed& closed);
void apply(SQLite::Database& db, const ledger::Entry& entry, const ActionTaken& action);
void apply(SQLite::Database& db, const ledger::Entry& entry, const FlashNoted& flash);
void apply(SQLite::Database& db, const ledger::Entry& entry, const RunFinished& finished);
void apply(SQLite::Database& db, const ledger::Entry& entry, const PersonChanged& person);
void apply(SQLite::Database& db, const ledger::Entry& entry, const PinSet& pin);

/// The caller then computes the state of the reading's lot anew.
void strike(SQLite::Database& db, const ledger::Entry& entry, const ReadingStruck& struck);

/// Refuses what may not be told of a finished run.
void requireUnfinished(SQLite::Database& db, const ledger::Entry& entry, const std::string& run);

/// What entries of other kinds leave in the tables of the floor: the number of a strip that was read, and a dryer as it
/// was described. After the entry's own apply().
void applyBeside(SQLite::Database& db, const ledger::Entry& entry, const Record& record);

} // namespace holdfast::kiosk::records::projecting
