#pragma once

#include "kiosk/ledger/failure.hpp"
#include "kiosk/records/complaint_records.hpp"
#include "kiosk/records/lot_records.hpp"
#include "kiosk/records/run_on_file.hpp"

#include <SQLiteCpp/Database.h>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

/// Questions about lots as they were held, decided, moved and counted.
namespace holdfast::kiosk::records {

/// A hold as last changed.
struct HoldRow final {
    HoldPlaced placed{}; ///< with the newest bracket
    std::int64_t at = 0; ///< wall milliseconds of its placing
    /// Id of the decision that ended it; absent: undecided; empty: nobody has to decide it while it is lifted.
    std::optional<std::string> decision{};
    bool lifted = false; ///< what caused it was put right, or its wash load found void: it holds nothing
    std::optional<std::string> recall{}; ///< id of the newest decision after it that called shipped pieces back
    std::int64_t runNumber = 0;
    std::string runTitle{};
    std::string run{};
    int lotNumber = 0;
    bool childrensWear = false;
    bool shipped = false; ///< pieces of the lot went out: a recall to decide
};
/// Undecided ones, oldest first. Of a scrapped lot only those whose shipped pieces nobody called back.
[[nodiscard]] ledger::Result<std::vector<HoldRow>> openHolds(const SQLite::Database& database);
/// All of a lot, oldest first.
[[nodiscard]] ledger::Result<std::vector<HoldRow>> holdsOfLot(const SQLite::Database& database, const std::string& lot);
[[nodiscard]] ledger::Result<std::optional<HoldRow>> holdByBin(const SQLite::Database& database, std::int64_t bin);

struct DecisionRow final {
    std::string entry{}; ///< id
    std::int64_t at = 0;
    DecisionSigned signedAs{};
    bool corrected = false; ///< a later one stands for it
};
/// Oldest first, corrected ones too.
[[nodiscard]] ledger::Result<std::vector<DecisionRow>> decisionsOfLot(const SQLite::Database& database,
                                                                      const std::string& lot);

struct MoveRow final {
    std::string entry{};
    std::int64_t at = 0;
    PiecesMoved moved{};
    bool corrected = false;
};
/// Oldest first, corrected ones too.
[[nodiscard]] ledger::Result<std::vector<MoveRow>> movesOfLot(const SQLite::Database& database, const std::string& lot);

/// What a lot's pieces came to: corrected moves are left out.
struct PiecesOfLot final {
    std::optional<int> made{}; ///< as last counted
    std::optional<int> here{}; ///< as last counted
    int shipped = 0;
    int retained = 0;
    int tested = 0;
    int scrapped = 0;
};
[[nodiscard]] ledger::Result<PiecesOfLot> piecesOfLot(const SQLite::Database& database, const std::string& lot);

struct CountRow final {
    std::string entry{};
    std::int64_t at = 0;
    PiecesCounted counted{};
};
/// Oldest first, corrected ones too.
[[nodiscard]] ledger::Result<std::vector<CountRow>> countsOfLot(const SQLite::Database& database,
                                                                const std::string& lot);

/// All lots of a run, oldest first, whatever their state.
[[nodiscard]] ledger::Result<std::vector<LotRow>> lotsOfRun(const SQLite::Database& database, const std::string& run);
[[nodiscard]] ledger::Result<std::optional<LotRow>> lotById(const SQLite::Database& database, const std::string& lot);
/// The newest `limit` closed lots of a dryer, newest first, with whether each was ever on hold.
struct PastLot final {
    LotRow lot{};
    bool wasHeld = false;
};
[[nodiscard]] ledger::Result<std::vector<PastLot>> pastLots(const SQLite::Database& database, const std::string& dryer,
                                                            int limit);

struct MissedRow final {
    std::int64_t at = 0;
    ReadingMissed missed{};
};
/// Oldest first.
[[nodiscard]] ledger::Result<std::vector<MissedRow>> missedOfLot(const SQLite::Database& database,
                                                                 const std::string& lot);

/// The newest count of the quarantine; absent: nobody counted yet.
struct ShelfCountRow final {
    std::int64_t at = 0;
    std::int64_t person = 0;
    ShelfCounted counted{};
};
[[nodiscard]] ledger::Result<std::optional<ShelfCountRow>> lastShelfCount(const SQLite::Database& database);

struct ComplaintRow final {
    std::int64_t takenAt = 0; ///< of its first entry
    ComplaintTaken taken{};   ///< as last said
    int versions = 1;
    std::optional<FindingSigned> finding{};
};
/// Newest first; the closed ones too if asked for.
[[nodiscard]] ledger::Result<std::vector<ComplaintRow>> complaints(const SQLite::Database& database, bool closedToo);
[[nodiscard]] ledger::Result<std::optional<ComplaintRow>> complaintById(const SQLite::Database& database,
                                                                        const std::string& complaint);
[[nodiscard]] ledger::Result<std::vector<ComplaintRow>> complaintsOfRun(const SQLite::Database& database,
                                                                        const std::string& run);
[[nodiscard]] ledger::Result<std::vector<FindingSigned>> findingsOfLot(const SQLite::Database& database,
                                                                       const std::string& lot);

/// The next free number of bins (1 …) and of complaints.
[[nodiscard]] ledger::Result<std::int64_t> nextBin(const SQLite::Database& database);
[[nodiscard]] ledger::Result<std::int64_t> nextComplaint(const SQLite::Database& database);

/// Runs that a clue may mean: order reference, customer, title or number of a run, a carton's mark, a bucket's batch or
/// number (and every mix it went into). Newest first; what the clue hit is said.
enum class ClueHit { runNumber, reference, customer, title, carton, bucket, batch, print };
struct ClueRow final {
    std::string run{};
    std::int64_t runNumber = 0;
    std::string runTitle{};
    std::string customer{};
    ClueHit hit = ClueHit::reference;
    std::string what{}; ///< the text that was hit
};
[[nodiscard]] ledger::Result<std::vector<ClueRow>> runsByClue(const SQLite::Database& database, const std::string& clue,
                                                              int limit);

/// Everything one bucket's ink went into, itself and through mixes: lots, with what was shipped of them to whom in
/// which cartons. For a recall.
struct ReachedCarton final {
    std::string run{};
    std::int64_t runNumber = 0;
    std::string lot{};
    int lotNumber = 0;
    LotState state = LotState::open;
    std::string customer{};
    std::vector<std::string> cartons{};
    int pieces = 0;
    std::optional<analytics::Date> day{};
};
/// Lots of which nothing was shipped have one row without cartons.
[[nodiscard]] ledger::Result<std::vector<ReachedCarton>> reachedByBatch(const SQLite::Database& database,
                                                                        const std::string& batch);
[[nodiscard]] ledger::Result<std::vector<ReachedCarton>> reachedByBucket(const SQLite::Database& database,
                                                                         std::int64_t bucket);

} // namespace holdfast::kiosk::records
