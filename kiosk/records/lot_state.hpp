#pragma once

#include "analytics/lots/lot_standing.hpp"
#include "kiosk/records/run_on_file.hpp"

#include <optional>
#include <string>
#include <vector>

namespace holdfast::kiosk::records {

/// What a lot's state needs of a reading, as corrected.
struct ReadingOfLot final {
    std::string id;
    analytics::Word word = analytics::Word::notProven;
    bool refused = false;
    bool couldProve = true;
    bool setUp = false;
    std::string retakeOf;    ///< empty: none
    bool struck = false;     ///< taken out: it counts for nothing, and settles nothing as a retake
    bool study = false;      ///< of the dryer, not of the lot: never due, but a bad one holds all the same
    bool isAnswered = false; ///< a hold stands for it, which counts by itself, or a decision has ended it as a cause
};

struct LotOnFile final {
    std::vector<ReadingOfLot> readings{};
    int missed = 0;          ///< due readings that were not taken
    int undecidedCauses = 0; ///< holds nobody decided, and failed valid tests without one
    bool closed = false;
    bool childrensWear = false;
    std::optional<analytics::LotDecision> decision{}; ///< of the lot as a whole, the newest that stands
};

/// Decisions 5. Set-up readings never hold a lot; readings that could not prove and refused ones are left out; a
/// not-proven reading is settled by a retake that is proven. A bad reading that was answered speaks of pieces that are
/// no longer the lot's and is left out too.
[[nodiscard]] LotState lotState(const LotOnFile& lot);

/// How it stands, for the rules of lots.
[[nodiscard]] analytics::LotStanding standingOf(LotState state) noexcept;

} // namespace holdfast::kiosk::records
