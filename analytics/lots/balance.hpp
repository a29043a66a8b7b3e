#pragma once

#include <tl/expected.hpp>

#include <cstdint>

/// Where the pieces of a run are.
namespace holdfast::analytics {

struct PiecesOfRun final {
    int made = 0;
    int shipped = 0;
    int here = 0; ///< counted on the shelf
    int retained = 0;
    int tested = 0; ///< used up by tests
    int scrapped = 0;
};

enum class BalanceFault {
    madeNegative,
    shippedNegative,
    hereNegative,
    retainedNegative,
    testedNegative,
    scrappedNegative
};

struct Balance final {
    std::int64_t accounted = 0;  ///< shipped + here + retained + tested + scrapped
    std::int64_t difference = 0; ///< made − accounted: above zero pieces are missing, below there are too many
    [[nodiscard]] constexpr bool balances() const noexcept { return difference == 0; }
};

/// Decisions 5: made = shipped + here + retained + tested + scrapped; a difference is shown, never spread. Refuses the
/// first number below zero.
[[nodiscard]] tl::expected<Balance, BalanceFault> balanceOf(const PiecesOfRun& pieces);

} // namespace holdfast::analytics
