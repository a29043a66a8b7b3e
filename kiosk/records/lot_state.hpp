#pragma once

#include "kiosk/records/run_on_file.hpp"

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
    std::string retakeOf; ///< empty: none
    bool struck = false;  ///< taken out: it counts for nothing, and settles nothing as a retake
};

/// Decisions 5, as far as readings decide it. Set-up readings never hold a lot; readings that could not prove and
/// refused ones are left out; a not-proven reading is settled by a retake that is proven.
[[nodiscard]] LotState lotState(const std::vector<ReadingOfLot>& readings, bool closed);

} // namespace holdfast::kiosk::records
