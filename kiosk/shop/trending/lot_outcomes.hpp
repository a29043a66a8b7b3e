#pragma once

#include "kiosk/shop/trending/terms.hpp"

namespace holdfast::kiosk::shop::trending {

enum class FailedBy { drawnReading, otherReading, test, complaint };

/// Whether a lot failed. It did if a reading of it is under-cured or overheated, a valid test of a print of it failed,
/// or a complaint says that the print failed; and nothing took that back. A hold that was lifted, a test in a void
/// load, a struck reading, and a cause that a signed decision released as within the limits count for nothing; so does
/// a failed test that two later tests of the same kind on other prints of the lot outweigh, with none failing. Set-up
/// readings never count.
struct LotOutcome final {
    FactIndex lot = kNoFact;
    bool failed = false;
    bool inRates =
        false; ///< failed by a drawn reading, a test or a complaint: not only by a reading somebody thought of
    std::vector<FailedBy> by{}; ///< each once
    std::vector<FactIndex> badReadings{};
    std::vector<FactIndex> failedTests{};
    std::vector<FactIndex> complaints{};
    std::vector<FactIndex> overruledTests{}; ///< outweighed by their repeats
    int drawn = 0;                           ///< readings
    int badDrawn = 0;                        ///< of them under-cured or overheated
    int missed = 0;
};

/// Of the lots that the filter holds and that are past setting up or have a reading or test; re-run lots are left out:
/// their pieces are counted with the lot they came from. By time.
[[nodiscard]] std::vector<LotOutcome> lotOutcomes(const TrendFacts& facts, const TrendFilter& filter);

} // namespace holdfast::kiosk::shop::trending
