#pragma once

#include "analytics/cure/verdict.hpp"
#include "analytics/lots/piece_span.hpp"
#include "analytics/lots/release_rule.hpp"
#include "kiosk/records/lot_records.hpp"
#include "kiosk/records/run_records.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

/// A lot as it lies before the person who decides.
namespace holdfast::kiosk::shop::deciding {

/// A reading as last corrected.
struct ReadingFact final {
    std::string id{}; ///< of its first entry
    analytics::Word word = analytics::Word::notProven;
    std::optional<int> piece{};
    bool struck = false;
    bool refused = false;
    bool setUp = false;
    bool couldProve = true;
    std::string retakeOf{};
};

/// A test that was done of one of the lot's prints.
struct TestFact final {
    std::string id{};
    bool failed = false; ///< and valid: its load was not void
};

struct HoldFact final {
    records::HoldPlaced placed{}; ///< with the newest bracket
    bool decided = false;
};

/// Somebody who may decide and still works here.
struct Entitled final {
    std::int64_t person = 0;
    bool operator==(const Entitled&) const = default;
};

struct LotFacts final {
    std::string lot{}; ///< id
    std::string run{}; ///< id
    int number = 1;
    analytics::LotStanding standing = analytics::LotStanding::onHold;
    bool childrensWear = false;
    std::vector<HoldFact> holds{}; ///< all, oldest first
    std::vector<ReadingFact> readings{};
    std::vector<TestFact> tests{};
    int missed = 0;  ///< due readings that were not taken
    int shipped = 0; ///< pieces
    std::optional<int> made{};
    std::vector<Entitled> entitled{};
    /// The lot that a re-run would open: next number, newest revisions; its id is given with the decision.
    records::LotOpened reRun{};
};

/// Undecided ones; ids.
[[nodiscard]] std::vector<std::string> openHoldsOf(const LotFacts& facts);

/// The reading speaks of pieces that a hold decided before has settled: it caused that hold, or its piece lies in it.
[[nodiscard]] bool isSettled(const ReadingFact& reading, const LotFacts& facts);

/// What stands against the pieces that are still to be decided (decisions 5). Struck, refused and set-up readings count
/// for nothing; a reading that could not prove counts if it is bad; a not-proven one settled by a proven retake not.
[[nodiscard]] analytics::LotAtIssue atIssue(const LotFacts& facts);

/// Pieces of the lot that some undecided bracket holds, as runs of numbers: joined, ascending; empty where a hold has
/// no bracket, since then the whole lot is held.
struct HeldPieces final {
    bool wholeLot = false;
    std::vector<analytics::PieceSpan> spans{};
    std::optional<int> count{}; ///< of all; absent where a bracket is open and nobody counts
};
[[nodiscard]] HeldPieces heldPieces(const LotFacts& facts);

/// Pieces of a hold: as counted, else from its bracket as far as that goes.
[[nodiscard]] std::optional<int> piecesOfHold(const records::HoldPlaced& hold, const std::optional<int>& made);

} // namespace holdfast::kiosk::shop::deciding
