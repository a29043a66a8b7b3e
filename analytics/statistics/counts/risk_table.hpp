#pragma once

#include "analytics/statistics/counts/survival.hpp"

namespace holdfast::analytics::statistics {

/// Pieces failed and withdrawn at one number of cycles.
struct RiskRow {
    double cycles = 0.0;
    std::int64_t failed = 0;
    std::int64_t withdrawn = 0;
    std::int64_t atRisk = 0;
};

/// Outcomes gathered by rising cycles, rows of nothing left out. No pieces: no rows.
[[nodiscard]] tl::expected<std::vector<RiskRow>, StatisticsFault> riskTable(std::span<const WashOutcome> outcomes);

} // namespace holdfast::analytics::statistics
