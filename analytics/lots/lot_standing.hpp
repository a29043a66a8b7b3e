#pragma once

#include "analytics/cure/verdict.hpp"

#include <optional>
#include <vector>

/// What a lot's readings, misses, holds and decisions make of it (decisions 5).
namespace holdfast::analytics {

enum class LotStanding {
    settingUp, ///< nothing yet that can hold it
    open,
    cleared,  ///< at least one due reading, all proven, no failed valid test
    unproven, ///< a due reading was missed or stayed not proven
    onHold,   ///< a cause nobody has decided
    released,
    reRun,
    scrapped ///< final
};

enum class LotDecision { released, reRun, scrapped };

/// How the shop deals with unproven lots.
struct UnprovenRule final {
    bool holds = false;    ///< they are on hold
    bool releases = false; ///< they are released without a press; never children's wear
};

/// How one due reading ended. A retake that proved it, or that stayed not proven, is already in it.
enum class DueOutcome {
    proven,
    notProven, ///< and may still be taken again, or is waiting for its retake
    stayedNotProven,
    missed
};

struct LotEvidence final {
    std::vector<DueOutcome> due; ///< of the due readings that fell due; set-up and struck ones are not among them
    int undecidedCauses = 0;     ///< bad readings, failed valid tests, complaints of print failure, instruments found
                                 ///< wrong that no decision names
    bool ended = false;
    bool childrensWear = false;
    std::optional<LotDecision> decision; ///< the newest that stands
};

/// Scrapped is final. Otherwise an undecided cause holds the lot, whatever was decided before; then the newest decision
/// stands; then a due reading missed or that stayed not proven makes it unproven, which is a hold for children's wear
/// or where the shop says so, and released where the shop says that; then, once it has ended, it is cleared with at
/// least one due reading and all of them proven, else unproven; until then open, or setting up without any.
[[nodiscard]] LotStanding standingOf(const LotEvidence& lot, const UnprovenRule& rule = {});

/// The pieces of a lot on hold that lie in none of its brackets may go while a bracket is undecided; not those of a lot
/// that is held as a whole.
[[nodiscard]] bool otherPiecesMayGo(LotStanding standing, bool everyCauseHasABracket) noexcept;

} // namespace holdfast::analytics
