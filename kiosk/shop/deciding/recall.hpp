#pragma once

#include "kiosk/records/lot_queries.hpp"

#include <string>
#include <vector>

/// Whom to call about which cartons.
namespace holdfast::kiosk::shop::deciding {

struct RecallLine final {
    std::string customer{};
    std::vector<std::string> cartons{};
    int pieces = 0;
    std::int64_t runNumber = 0;
    int lotNumber = 0;
    std::string run{};
    std::string lot{};
    std::optional<analytics::Date> day{};
    bool operator==(const RecallLine&) const = default;
};

/// Lots of which nothing went out are in `lotsHere` alone.
struct RecallList final {
    std::vector<RecallLine> lines{}; ///< by customer, then day, run and lot
    int lots = 0;                    ///< all that were reached, each once
    int lotsHere = 0;                ///< of them, those of which nothing was shipped
    int customers = 0;
    int cartons = 0; ///< different marks
    int pieces = 0;  ///< shipped
};

/// Of a batch or bucket and everything it went into.
[[nodiscard]] RecallList recallOf(const std::vector<records::ReachedCarton>& reached);
/// Of one lot; corrected moves and those taken back count for nothing.
[[nodiscard]] RecallList recallOf(const std::vector<records::MoveRow>& moves, const std::string& run,
                                  std::int64_t runNumber, const std::string& lot, int lotNumber);

/// A mock recall, timed from the scan of the clue to the list.
struct MockRecall final {
    RecallList list{};
    double seconds = 0.0;
};

} // namespace holdfast::kiosk::shop::deciding
