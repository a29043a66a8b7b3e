#pragma once

#include "analytics/lots/belt_map.hpp"
#include "analytics/lots/piece_span.hpp"
#include "analytics/quantity/duration.hpp"

#include <tl/expected.hpp>

#include <cstdint>
#include <optional>

/// Which piece is to be read next, where on the belt, and which reading was missed (decisions 5). Pure: counts and
/// times are given.
namespace holdfast::analytics {

/// Starter settings, from memory (MEM), kept as data.
struct ReadingPlanSettings final {
    int everyPieces = 200; ///< N
    Duration every{3600};  ///< T, of running time
    int lastPieces = 5;    ///< a last reading falls within so many pieces of the end
    int drawnAmong = 5;    ///< the piece to be read is drawn from so many
    Duration grace{900};   ///< after the end, until the last reading counts as missed

    /// N and T halved; N rounded down, at least 1.
    [[nodiscard]] ReadingPlanSettings tightened() const noexcept;
};

/// How far a dryer state and the run in it have come.
struct EpisodeSoFar final {
    int readings = 0;                  ///< of the state that count: not set-up, not refused, taken with the belt loaded
    int readingsOfRun = 0;             ///< of them, in this run
    std::optional<int> made;           ///< pieces of the run that have gone onto the belt; absent: nobody counts
    std::optional<int> planned;        ///< pieces of the run; absent: not said
    std::optional<int> piecesSince;    ///< of the state, since the last reading taken, else since the state began
    Duration ranSince{0};              ///< running time of the belt since then
    std::optional<int> lastRead;       ///< the newest piece of the run that was read
    bool readAfterEnd = false;         ///< a piece of the run was read after its last one went through
    std::optional<BeltLane> coldest{}; ///< of the belt map in date; absent: there is none
    std::optional<int> inTunnel;       ///< pieces in one dwell
    std::optional<Duration> ended;     ///< how long ago the run's last piece went through; absent: it goes on
};

enum class DueWhy {
    first,    ///< nothing of this state was read
    position, ///< a lane of a belt without a map
    pieces,   ///< N pieces since the last one
    minutes,  ///< T minutes of running since the last one
    last      ///< the end of the run
};

struct DueReading final {
    int number = 1; ///< among the readings of the state
    DueWhy why = DueWhy::first;
    std::optional<PieceSpan> among; ///< one of these is drawn; absent: nobody counts, or the time decides
    BeltLane lane = BeltLane::centre;
    bool now = false;                  ///< the next piece may be the one, or the time is up
    std::optional<int> inPieces;       ///< until then; 0: now
    std::optional<Duration> inRunning; ///< running time until it falls due by minutes; 0: now
};

struct ReadingPlan final {
    std::optional<DueReading> next; ///< absent: nothing more is due
    /// Readings that were not taken when the next fell due, or by the end of the grace, since the last one taken.
    int missed = 0;
    bool lastMissed = false; ///< the last reading of the run is among them
};

enum class PlanFault {
    noPieces, ///< a run of no pieces, or fewer
    settings, ///< N, T, or another setting is not above zero or not finite
    countBelowZero,
    timeBelowZero ///< or not finite
};

/// Decisions 5. A state is proven by one ride at its coldest lane with the belt loaded for two dwells; without a belt
/// map in date its first three readings are left, centre and right, one piece each, due one after the other. From then
/// on a reading is due N pieces or T running minutes after the last one taken, and a last one within the last 5 pieces
/// of the run, or its last quarter (rounded down, at least 1) if that is fewer: one reading serves where both fall
/// together. A reading is missed when the next has fallen due, or 15 min after the end. Readings that fell due since
/// the last one taken: ⌊pieces / N⌋ or ⌊minutes / T⌋, the larger, and what was outstanding of the first ones. When
/// nobody counts, the time alone decides and no piece is named; when the planned number is not said, a last reading is
/// due once the run has ended. A run has at most as many due readings as pieces.
[[nodiscard]] tl::expected<ReadingPlan, PlanFault> readingPlan(const EpisodeSoFar& episode,
                                                               const ReadingPlanSettings& settings = {});

/// The pieces of which the last one read is one: the last 5, or the last quarter if that is fewer. `pieces` ≥ 1.
[[nodiscard]] PieceSpan lastPiecesOf(int pieces, int lastPieces = 5) noexcept;

/// The kiosk draws the piece, nobody chooses it: one of `among` for a random word, all alike.
[[nodiscard]] int drawPiece(const PieceSpan& among, std::uint64_t random) noexcept;

} // namespace holdfast::analytics
