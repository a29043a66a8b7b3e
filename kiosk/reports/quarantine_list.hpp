#pragma once

#include "drivers/clock/clock.hpp"
#include "kiosk/records/lot_queries.hpp"
#include "kiosk/reports/report.hpp"

#include <optional>
#include <string>
#include <vector>

namespace holdfast::kiosk::reports {

/// One bin that must stand on the shelf.
struct QuarantineBin final {
    std::int64_t bin = 0; ///< 0: none was given
    std::int64_t run = 0;
    std::string runTitle{};
    int lot = 1;
    std::optional<records::PieceRange> pieces{}; ///< absent: the whole lot
    std::optional<int> count{};                  ///< absent: nobody knows
    records::HoldCause cause = records::HoldCause::reading;
    std::int64_t since = 0; ///< wall milliseconds
    bool shipped = false;   ///< pieces of the lot went out
    bool childrensWear = false;
    bool operator==(const QuarantineBin&) const = default;
};

struct QuarantineList final {
    std::string shop{};
    std::vector<QuarantineBin> bins{};
    drivers::WallTime printed{};
};

/// In the order of the holds: oldest first.
[[nodiscard]] std::vector<QuarantineBin> quarantineBins(const std::vector<records::HoldRow>& open);

/// Everything on hold, to be ticked off against the shelf and signed by whoever counted; bins as bars. An empty list is
/// a page that says so: the shelf must be empty then.
[[nodiscard]] Reported quarantineList(const QuarantineList& list, const ReportStyle& style);

} // namespace holdfast::kiosk::reports
