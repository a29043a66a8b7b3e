#pragma once

#include <compare>
#include <optional>

namespace holdfast::analytics {

/// Pieces of a run by number, the first one is 1; both ends are inside, `last` ≥ `first`.
struct PieceSpan final {
    int first = 1;
    int last = 1;
    [[nodiscard]] constexpr int count() const noexcept { return last - first + 1; }
    [[nodiscard]] constexpr bool holds(int piece) const noexcept { return first <= piece && piece <= last; }
    [[nodiscard]] constexpr bool overlaps(const PieceSpan& other) const noexcept {
        return first <= other.last && other.first <= last;
    }
    auto operator<=>(const PieceSpan&) const = default;
};

/// No run that people number has more pieces; keeps every sum of spans within int.
inline constexpr int kMostPieces = 100'000'000;

} // namespace holdfast::analytics
