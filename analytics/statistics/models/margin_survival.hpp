#pragma once

#include "analytics/statistics/models/logistic.hpp"

#include <cstdint>

/// Margin of cure against surviving the wash.
namespace holdfast::analytics::statistics {

/// One wash test: the lot it came from, the lot's margin (any unit), and whether it survived.
struct MarginTest final {
    double margin = 0.0;
    bool survived = false;
    std::int64_t lot = 0;
};

struct SurvivalCounts final {
    std::size_t failures = 0;
    std::size_t survivals = 0;
    std::size_t failureLots = 0; ///< different lots with a failure
    std::size_t survivalLots = 0;

    /// Decisions 6: no margin for a chance under 10 failures and 10 survivals from 5 lots each.
    [[nodiscard]] bool allowMargin() const noexcept {
        return failures >= kTests && survivals >= kTests && failureLots >= kLots && survivalLots >= kLots;
    }
    static constexpr std::size_t kTests = 10;
    static constexpr std::size_t kLots = 5;
};

[[nodiscard]] SurvivalCounts countSurvival(const std::vector<MarginTest>& tests);

/// Firth's logistic regression of survival on margin: fitLogistic with the constant and one slope.
[[nodiscard]] tl::expected<LogisticFit, StatisticsFault> survivalByMargin(const std::vector<MarginTest>& tests,
                                                                          double level = 0.95);

/// The margin at which that chance survives, with profile limits (valueForChance). TooFewEvents unless allowMargin().
[[nodiscard]] tl::expected<ValueForChance, StatisticsFault> marginForChance(const std::vector<MarginTest>& tests,
                                                                            double chance, double level = 0.95);

} // namespace holdfast::analytics::statistics
