#pragma once

#include "analytics/lots/balance.hpp"
#include "kiosk/records/kinds.hpp"
#include "kiosk/records/lot_queries.hpp"
#include "kiosk/shop/deciding/fields.hpp"

#include <tl/expected.hpp>

/// Where the pieces of a lot are: moved and counted, corrected by further entries.
namespace holdfast::kiosk::shop::deciding {

/// Pieces that go somewhere, as typed.
struct MoveDraft final {
    records::PiecePlace to = records::PiecePlace::shipped;
    std::string count{};
    std::string day{};
    std::string customer{};                ///< of shipped ones
    std::string cartons{};                 ///< of shipped ones, parted by commas
    std::optional<std::string> corrects{}; ///< id of the entry it puts right; a count of 0 then takes it back
};

/// What is said beside a move that is kept all the same, since it has happened.
struct MoveSaid final {
    bool moreThanMade = false; ///< more pieces have gone somewhere than were made
    bool fromHeldLot = false;  ///< shipped although the lot is on hold: a recall to decide
};

struct MoveKept final {
    records::PiecesMoved move{};
    MoveSaid said{};
};

/// The lot as far as moves need it.
struct LotOfPieces final {
    std::string lot{};
    bool scrapped = false;
    bool held = false;
    records::PiecesOfLot pieces{};
    std::vector<records::MoveRow> moves{}; ///< corrected ones too
    std::vector<records::CountRow> counts{};
};

/// A scrapped lot ships nothing; its pieces may still be put down as scrapped.
[[nodiscard]] tl::expected<MoveKept, Faults> moveFrom(const MoveDraft& draft, const LotOfPieces& lot);
/// A draft that puts this entry right, filled with what it says.
[[nodiscard]] MoveDraft correctionOf(const records::MoveRow& row);

/// What somebody counted, as typed; both may be empty, but not together.
struct CountDraft final {
    std::string made{};
    std::string here{};
    std::optional<std::string> corrects{}; ///< id of the count that was typed wrong
};
/// A draft that puts this count right, filled with what it says.
[[nodiscard]] CountDraft correctionOf(const records::CountRow& row);
/// A number of made pieces below the one that stood is refused, since pieces do not come back; a correction may lower
/// it, unless more pieces have gone somewhere.
[[nodiscard]] tl::expected<records::PiecesCounted, Faults> countFrom(const CountDraft& draft, const LotOfPieces& lot);

/// Nothing while nobody has said how many were made. Pieces on the shelf that nobody counted are what is left over, so
/// that only a counted shelf shows a difference.
struct PiecesSum final {
    analytics::PiecesOfRun pieces{};
    analytics::Balance balance{};
    bool hereCounted = false;
};
[[nodiscard]] std::optional<PiecesSum> sumOf(const records::PiecesOfLot& pieces);

/// One move with what it was before, newest version first; `chain` begins with the one that stands.
struct MoveHistory final {
    std::vector<records::MoveRow> chain{};
};
/// Of every move that stands, oldest first; those taken back (0 pieces) too.
[[nodiscard]] std::vector<MoveHistory> historiesOf(const std::vector<records::MoveRow>& moves);

} // namespace holdfast::kiosk::shop::deciding
