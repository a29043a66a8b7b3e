#pragma once

#include "analytics/lots/piece_span.hpp"

#include <tl/expected.hpp>

#include <cstdint>
#include <optional>
#include <utility>
#include <vector>

/// Which pieces a bad reading, or a belt that stopped, puts in a bin (decisions 5).
namespace holdfast::analytics {

/// What is known of the pieces around a bad one. Pieces are numbered as they go onto the belt.
struct BracketFacts final {
    int badPiece = 1;
    int firstPiece = 1;            ///< of the lot: nothing before it belongs here
    std::optional<int> lastProven; ///< the newest piece before it that was proven; absent: none
    std::optional<int> nextProven; ///< the first piece after it that was proven; absent: none yet
    std::optional<int> made;       ///< pieces that have gone onto the belt
    std::optional<int> endOfRun;   ///< its last piece, if it has gone through
    std::optional<int> planned;    ///< pieces of the run
    std::optional<int> inTunnel;   ///< heated length × pieces a metre, rounded up (piecesInTunnel)
};

struct Bracket final {
    PieceSpan pieces;
    /// Nothing after it was proven yet and the run goes on: `pieces` is what must be pulled as things stand, and every
    /// piece that follows belongs to it until one is proven.
    bool open = false;
    bool operator==(const Bracket&) const = default;
};

enum class BracketFault {
    pieceNotInRun,    ///< the bad piece lies before the first one or after the last
    provenOutOfOrder, ///< the last proven piece is not before the bad one, or the next not after it
    countBelowZero
};

/// From after the last proven piece (none: the lot's first) to before the next proven one (none: the end of the run, or
/// what has been made as it goes on), at least to the bad piece and the tunnel behind it; never beyond the end of the
/// run, nor, while it goes on, beyond its planned number if that is more than what was made.
[[nodiscard]] tl::expected<Bracket, BracketFault> bracketOf(const BracketFacts& facts);

/// Pieces that stood in the tunnel when the belt stopped are a bracket of their own: the last that went onto the belt,
/// as many as the tunnel holds. Absent if none was fed, or the tunnel's room is not known.
[[nodiscard]] std::optional<PieceSpan> tunnelBracket(int made, std::optional<int> inTunnel) noexcept;

/// What the shop does with the pieces it set up with.
enum class SetUpUse { waste, bracket };
struct SetUpPieces final {
    int scrapped = 0;
    std::optional<PieceSpan> bracket;
    bool operator==(const SetUpPieces&) const = default;
};
/// Set-up pieces are waste or a bracket, never good: pieces `first` and on, `count` of them; none for 0 or fewer.
[[nodiscard]] SetUpPieces setUpPieces(int first, int count, SetUpUse use) noexcept;

/// A bracket with the number of its bin.
struct NumberedBracket final {
    std::int64_t bin = 0;
    PieceSpan pieces;
    bool decided = false;
    bool operator==(const NumberedBracket&) const = default;
};

/// Brackets of one lot, and where each bin's pieces belong now.
struct JoinedBrackets final {
    std::vector<NumberedBracket> brackets;                           ///< ascending by first piece
    std::vector<std::pair<std::int64_t, std::int64_t>> movedIntoBin; ///< bin that was emptied, bin that took it
};

/// No piece lies in two bins: undecided brackets that share a piece become one, under the smallest bin number, which
/// was labelled first. Those that only touch stay apart, since each has its own cause. A decided one stays as it was
/// decided: a new cause is a bracket of its own beside it (decisions 5: a new cause starts a new hold).
[[nodiscard]] JoinedBrackets joinBrackets(std::vector<NumberedBracket> brackets);

} // namespace holdfast::analytics
