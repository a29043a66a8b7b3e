#pragma once

#include "analytics/metrology/instrument.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

/// What happens to the pieces of a lot: held, decided, moved, counted (decisions 5). Nothing is ever edited: an entry
/// with `corrects` stands for the one it names, which stays in the book.
namespace holdfast::kiosk::records {

/// How the pieces so far were counted.
enum class CountBasis {
    counter,     ///< pulses of a counter at the belt
    rateAndTime, ///< belt speed × pieces a metre × time it ran
    typed,
};

/// Pieces of a run, counted from 1.
struct PieceRange final {
    int first = 1;
    std::optional<int> last{}; ///< absent: to the end of the run, which is not known yet
    bool operator==(const PieceRange&) const = default;
};

enum class HoldCause {
    reading,       ///< under-cured or overheated
    test,          ///< a valid test failed
    complaint,     ///< of print failure
    instrument,    ///< a reading recomputed with the error found is no longer cured
    missedReading, ///< a due reading was missed: of children's wear, or by the shop's own rule
    beltStopped,   ///< pieces stood in the tunnel
};

/// hold.placed: pieces that may not go. Each hold is one bracket in one bin.
struct HoldPlaced final {
    std::string hold{}; ///< id
    std::string lot{};  ///< id
    HoldCause cause = HoldCause::reading;
    std::string because{};              ///< id of the entry: reading, test, complaint, check; may be empty
    std::optional<PieceRange> pieces{}; ///< absent: the whole lot
    std::optional<int> count{};         ///< of pieces, if it is known
    std::optional<CountBasis> basis{};  ///< of what `pieces` says
    std::int64_t bin = 0;               ///< its label L… says the same number; 0: none was given
};

/// hold.changed: its bracket as it is from now on; a proven piece after it has closed it, or the count was put right.
struct HoldChanged final {
    std::string hold{};
    std::optional<PieceRange> pieces{};
    std::optional<int> count{};
    std::optional<CountBasis> basis{};
};

enum class DecisionWord {
    released,
    reRun,    ///< through the dryer again, as a lot of its own
    scrapped, ///< final
    recalled, ///< shipped pieces are called back
};

/// decision.signed: ends the holds it names, and no other. The first signer stands in the entry's own person too.
struct DecisionSigned final {
    std::string decision{}; ///< id
    std::string lot{};
    std::vector<std::string> holds{}; ///< ids; may be empty when a lot without holds is scrapped or an unproven one
                                      ///< released
    DecisionWord word = DecisionWord::released;
    std::string reason{};                  ///< as typed; never empty
    std::vector<std::int64_t> signers{};   ///< numbers, one or two, all different
    bool belowLimit = false;               ///< released although a valid reading or test is below its limit
    std::string laboratoryReport{};        ///< its number: of children's wear
    std::optional<std::string> reRunLot{}; ///< id of the lot that ties the pieces to this one
    std::optional<std::string> corrects{}; ///< id of the decision that was signed in error
};

/// Where pieces are. What was made and not moved is here.
enum class PiecePlace { shipped, retained, tested, scrapped };

/// pieces.moved
struct PiecesMoved final {
    std::string lot{};
    PiecePlace to = PiecePlace::shipped;
    int count = 0; ///< ≥ 1
    std::optional<analytics::Date> day{};
    std::string customer{};                ///< to whom
    std::vector<std::string> cartons{};    ///< marks on them
    std::optional<std::string> corrects{}; ///< id of the entry; a count of 0 then takes it back
};

/// pieces.counted: somebody counted.
struct PiecesCounted final {
    std::string lot{};
    std::optional<int> made{};             ///< that came out of the dryer
    std::optional<int> here{};             ///< on the shelf
    std::optional<std::string> corrects{}; ///< id of the entry whose number was typed wrong: `made` may then be lower
};

struct BinCount final {
    std::string hold{};
    int pieces = 0;
    bool operator==(const BinCount&) const = default;
};

/// shelf.counted: the quarantine, ticked off bin by bin.
struct ShelfCounted final {
    std::vector<BinCount> bins{}; ///< those that were found, with what was in them
};

/// Why a reading had been due.
enum class DueReadingKind { first, pieces, minutes, last, position };

/// reading.missed: it was not taken when the next fell due or a quarter of an hour after the end.
struct ReadingMissed final {
    std::string lot{};
    DueReadingKind due = DueReadingKind::pieces;
    std::optional<int> piece{}; ///< that had been drawn
};

} // namespace holdfast::kiosk::records
