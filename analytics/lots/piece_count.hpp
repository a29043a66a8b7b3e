#pragma once

#include "analytics/lots/piece_span.hpp"
#include "analytics/quantity/duration.hpp"

#include <tl/expected.hpp>

#include <optional>
#include <vector>

/// How many pieces of a run have gone onto the belt, and how one knows.
namespace holdfast::analytics {

enum class CountSource {
    counter, ///< pulses of a counter
    rate,    ///< belt speed × pieces a metre × running time
    typed    ///< a number that somebody typed, and the rate since
};

struct PieceCount final {
    int pieces = 0;
    CountSource source = CountSource::rate;
    bool operator==(const PieceCount&) const = default;
};

enum class CountFault {
    nothingKnown,  ///< no pulse, no number, and not all of belt speed, pieces a metre and time
    negative,      ///< a number below zero
    runsBackwards, ///< fewer pieces than were counted before
    notPossible    ///< not finite, or more than kMostPieces
};

/// A time during which the belt ran at one speed; while it stands there is none.
struct BeltRan final {
    double metresPerMinute = 0.0;
    Duration running{0};
};

struct CountKnown final {
    std::optional<int> counter;           ///< pulses since the run began
    std::optional<int> typed;             ///< the newest number typed
    std::vector<BeltRan> ran;             ///< since the typed number, else since the run began
    std::optional<double> piecesPerMetre; ///< as they lie on the belt
    std::optional<int> before;            ///< the count as it stood: pieces do not come back
};

/// Whole pieces: speed × running time × pieces a metre, summed over the spans, rounded down. Absent if a figure is
/// missing. A negative or not finite figure is not possible.
[[nodiscard]] tl::expected<int, CountFault> piecesByRate(const std::vector<BeltRan>& ran,
                                                         std::optional<double> piecesPerMetre);

/// The best that is known: a counter's pulses; else the number typed and, where the rate is known, what came since;
/// else the rate alone. A counter or a typed number below `before` is refused, since pieces do not come back; a rate
/// that says less than `before` leaves the count where it stands.
[[nodiscard]] tl::expected<PieceCount, CountFault> countPieces(const CountKnown& known);

/// Heated length × pieces a metre, rounded up (decisions 5): what lies in the tunnel when the belt is full. Absent if
/// one of them is not known, not positive or not possible.
[[nodiscard]] std::optional<int> piecesInTunnel(std::optional<double> heatedLengthMetres,
                                                std::optional<double> piecesPerMetre);

} // namespace holdfast::analytics
