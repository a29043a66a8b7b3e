#pragma once

#include "kiosk/ledger/failure.hpp"
#include "kiosk/records/ink_records.hpp"
#include "kiosk/records/lot_records.hpp"
#include "kiosk/records/run_on_file.hpp"
#include "kiosk/records/shop_records.hpp"

#include <SQLiteCpp/Database.h>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

/// Questions to the read tables of ShopProjection. Each takes a reading connection (Book::reader()) and belongs to the
/// thread of that connection.
namespace holdfast::kiosk::records {

using ledger::Result;

/// Kinds and versions in the book that this program does not know; if there are any, the book must be made read-only.
[[nodiscard]] Result<std::vector<std::string>> unknownKinds(const SQLite::Database& database);

/// Nothing if no plan has this number. With the newest revisions, or those of its open lot. A layer whose buckets were
/// scanned has the ink of those buckets, and what is wrong with the worst of them at `now`: the first in the order of
/// analytics::BucketFault. Without `now` nothing is ever wrong with a bucket: whoever judges must say when.
[[nodiscard]] Result<std::optional<RunOnFile>> runByNumber(const SQLite::Database& database, PlanKind kind,
                                                           std::int64_t number,
                                                           const std::optional<Moment>& now = std::nullopt);
[[nodiscard]] Result<std::optional<RunOnFile>> runById(const SQLite::Database& database, const std::string& run,
                                                       const std::optional<Moment>& now = std::nullopt);

/// The newest revision of each name that stood in the book at entry `asOf`.
[[nodiscard]] Result<std::vector<FamilyRecord>> newestFamilies(const SQLite::Database& database,
                                                               std::int64_t asOf = INT64_MAX);
[[nodiscard]] Result<std::vector<FabricRecord>> newestFabrics(const SQLite::Database& database,
                                                              std::int64_t asOf = INT64_MAX);

/// By name, with certificates and checks; withdrawn ones only if asked for.
[[nodiscard]] Result<std::vector<InstrumentOnFile>> instruments(const SQLite::Database& database,
                                                                bool withdrawnToo = false);
[[nodiscard]] Result<std::optional<InstrumentOnFile>> instrumentById(const SQLite::Database& database,
                                                                     const std::string& instrument);

/// Oldest first.
[[nodiscard]] Result<std::vector<ReadingRow>> readingsOfRun(const SQLite::Database& database, const std::string& run);
[[nodiscard]] Result<std::vector<ReadingRow>> readingsOfLot(const SQLite::Database& database, const std::string& lot);
/// Newest first, at most `limit`.
[[nodiscard]] Result<std::vector<ReadingRow>> latestReadings(const SQLite::Database& database, int limit);
/// As last corrected. Nothing for a refused one or an unknown id.
[[nodiscard]] Result<std::optional<ReadingTaken>> readingInFull(const SQLite::Database& database,
                                                                const std::string& id);

/// One of the entries about a reading.
struct ReadingVersion final {
    std::int64_t at = 0; ///< wall milliseconds
    std::int64_t person = 0;
    ReadingTaken taken{};
    std::string check{}; ///< id of the check that found the instrument wrong; empty: none
};
/// Oldest first; a refused one has no first version.
[[nodiscard]] Result<std::vector<ReadingVersion>> versionsOfReading(const SQLite::Database& database,
                                                                    const std::string& id);
/// Taken with the instrument since that time, oldest first.
[[nodiscard]] Result<std::vector<ReadingRow>>
readingsByInstrument(const SQLite::Database& database, const std::string& instrument, std::int64_t wallMilliseconds);

/// A held lot with the run it belongs to.
struct HeldLot final {
    LotRow lot;
    std::int64_t runNumber = 0;
    std::string runTitle;
    std::int64_t since = 0; ///< wall milliseconds of the entry that put it on hold
    std::optional<analytics::Word>
        word;                         ///< of its first bad reading that nobody decided; absent: held for another cause
    std::optional<HoldCause> cause{}; ///< of its oldest hold; absent: held by a reading or test without one
};
/// Oldest first.
[[nodiscard]] Result<std::vector<HeldLot>> holds(const SQLite::Database& database);

enum class DueKind {
    firstReading,   ///< an open lot without a reading
    certificateDue, ///< of an instrument in use
    checkDue,
};
struct DueItem final {
    DueKind kind = DueKind::firstReading;
    std::int64_t runNumber = 0;
    std::string subject;                ///< run's title or instrument's name
    std::optional<analytics::Date> due; ///< of instruments
};
/// What is due on or before the day, most urgent first.
[[nodiscard]] Result<std::vector<DueItem>> due(const SQLite::Database& database, analytics::Date today);

[[nodiscard]] Result<std::vector<DryerDescribed>> dryers(const SQLite::Database& database);
[[nodiscard]] Result<std::optional<CrewChanged>> crew(const SQLite::Database& database);
/// Who stood at the dryer when the reading (id) was taken; absent: nobody had said, or there is no such reading.
[[nodiscard]] Result<std::optional<CrewChanged>> crewOfReading(const SQLite::Database& database,
                                                               const std::string& reading);
/// As last changed, without those who left; peopleOnFile() of floor_queries.hpp has all.
[[nodiscard]] Result<std::vector<PersonAdded>> people(const SQLite::Database& database);
[[nodiscard]] Result<std::optional<SettingValue>> setting(const SQLite::Database& database, std::string_view key);
[[nodiscard]] Result<std::optional<BookOpened>> shop(const SQLite::Database& database);

} // namespace holdfast::kiosk::records
