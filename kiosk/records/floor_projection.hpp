#pragma once

#include "kiosk/ledger/entry.hpp"
#include "kiosk/records/kinds.hpp"

#include <SQLiteCpp/Database.h>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

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

void apply(SQLite::Database& db, const ledger::Entry& entry, const PrintNamed& print);
void apply(SQLite::Database& db, const ledger::Entry& entry, const PrintChanged& changed);
void apply(SQLite::Database& db, const ledger::Entry& entry, const MethodDescribed& method);
void apply(SQLite::Database& db, const ledger::Entry& entry, const LoadWashed& load);
void apply(SQLite::Database& db, const ledger::Entry& entry, const LoadJudged& judged);
/// Of one print and method a cycle counts once, and cycles go upwards; those in a void load count for nothing. A
/// correction may come after the print has ended or the lot was scrapped.
void apply(SQLite::Database& db, const ledger::Entry& entry, const TestDone& done);
void apply(SQLite::Database& db, const ledger::Entry& entry, const HoldPlaced& hold);
void apply(SQLite::Database& db, const ledger::Entry& entry, const HoldChanged& changed);
/// Names holds of its lot that nobody decided, or none if there are none. A recall ends no hold: what comes back is
/// still to be decided. A scrapped lot can only be recalled, or its scrapping said in better words.
void apply(SQLite::Database& db, const ledger::Entry& entry, const DecisionSigned& decision);
void apply(SQLite::Database& db, const ledger::Entry& entry, const PiecesMoved& moved);
void apply(SQLite::Database& db, const ledger::Entry& entry, const PiecesCounted& counted);
void apply(SQLite::Database& db, const ledger::Entry& entry, const ShelfCounted& counted);
void apply(SQLite::Database& db, const ledger::Entry& entry, const ReadingMissed& missed);
void apply(SQLite::Database& db, const ledger::Entry& entry, const ComplaintTaken& taken);
void apply(SQLite::Database& db, const ledger::Entry& entry, const FindingSigned& finding);

/// A lot's state anew from all that is known of it, after the entry.
void recomputeLot(SQLite::Database& db, const ledger::Entry& entry, const std::string& lot);
/// Those whose hold was placed because of the entry of this id.
void recomputeHeldBy(SQLite::Database& db, const ledger::Entry& entry, const std::string& because);
void requireLot(SQLite::Database& db, const ledger::Entry& entry, const std::string& lot);
[[nodiscard]] bool isScrapped(SQLite::Database& db, const std::string& lot);
/// There is a row; `sql` asks for one value.
[[nodiscard]] bool found(SQLite::Database& db, const char* sql, const std::string& value);

[[nodiscard]] std::string_view testSchema();
[[nodiscard]] std::vector<std::string> testTables();
[[nodiscard]] std::string_view lotSchema();
[[nodiscard]] std::vector<std::string> lotTables();

/// Refuses what may not be told of a finished run.
void requireUnfinished(SQLite::Database& db, const ledger::Entry& entry, const std::string& run);

/// What entries of other kinds leave in the tables of the floor: the number of a strip that was read, and a dryer as it
/// was described. After the entry's own apply().
void applyBeside(SQLite::Database& db, const ledger::Entry& entry, const Record& record);

} // namespace holdfast::kiosk::records::projecting
