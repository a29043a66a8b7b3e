#pragma once

#include "analytics/statistics/fault.hpp"

#include <tl/expected.hpp>

#include <cstdint>
#include <optional>
#include <span>
#include <vector>

namespace holdfast::analytics::statistics {

/// Pieces followed through the wash.
struct WashOutcome {
    double cycles = 0.0; ///< cycles at which it failed, or up to which it was seen to hold; ≥ 0
    bool failed = false;
    std::int64_t pieces = 1;
};

struct SurvivalStep {
    double cycles = 0.0;
    std::int64_t atRisk = 0; ///< still followed just before
    std::int64_t failed = 0;
    double survival = 1.0;      ///< share that holds beyond these cycles
    double standardError = 0.0; ///< Greenwood
    double lower = 0.0;
    double upper = 1.0;
};

struct SurvivalCurve {
    std::vector<SurvivalStep> steps; ///< one for every number of cycles at which something failed
    double followedTo = 0.0;         ///< beyond it nothing is known unless the curve is at 0
    std::int64_t pieces = 0;

    /// Share holding beyond `cycles`; absent where no piece was followed so far.
    [[nodiscard]] std::optional<double> at(double cycles) const noexcept;
    /// Fewest cycles beyond which at most half hold; absent when the curve does not fall so far.
    [[nodiscard]] std::optional<double> median() const noexcept;
};

/// Kaplan–Meier survival by wash cycle, S = Π(1 − d/n), a piece withdrawn at c cycles counts as at risk there (Kaplan
/// and Meier, J. Am. Stat. Assoc. 53, 1958, 457–481); Greenwood's variance S²Σd/(n(n − d)), limits by the complementary
/// log-log, S^exp(±z·se/(S·|ln S|)) (Kalbfleisch and Prentice, The Statistical Analysis of Failure Time Data, 2nd ed.,
/// 1.4). At S = 0 variance and limits are not defined: se 0, lower 0, upper that of the step before (1 at the first).
/// Nothing failed: no steps. No pieces: NoValues; cycles negative or not finite, pieces negative: fault. Cost n log n.
[[nodiscard]] tl::expected<SurvivalCurve, StatisticsFault> kaplanMeier(std::span<const WashOutcome> outcomes,
                                                                       double confidence = 0.95);

/// One interval of a life table: between two inspections so many failed, so many were withdrawn unfailed.
struct LifeInterval {
    std::int64_t failed = 0;
    std::int64_t withdrawn = 0;
};

struct LifeRow {
    std::int64_t entered = 0;
    double exposed = 0.0;       ///< entered − withdrawn/2
    double failing = 0.0;       ///< chance to fail within the interval, failed/exposed
    double survival = 1.0;      ///< at its end
    double standardError = 0.0; ///< of survival, Greenwood
};

/// Actuarial life table for interval data (Cutler and Ederer, J. Chronic Dis. 8, 1958, 699–712): withdrawals count
/// half. `pieces` enter the first interval. More failed and withdrawn than are there: OutOfDomain. Intervals that
/// nothing enters have the survival before them and failing 0.
[[nodiscard]] tl::expected<std::vector<LifeRow>, StatisticsFault> lifeTable(std::int64_t pieces,
                                                                            std::span<const LifeInterval> intervals);

struct LogRank {
    double observed = 0.0; ///< failed in the first group
    double expected = 0.0; ///< if both groups failed alike
    double variance = 0.0;
    double chiSquare = 0.0; ///< one degree of freedom
    double twoSided = 1.0;
};

/// Log-rank test of two groups, hypergeometric variance (Mantel, Cancer Chemother. Rep. 50, 1966, 163–170; Peto and
/// Peto, J. R. Stat. Soc. A 135, 1972, 185–207). An empty group: TooFewValues; no failure, or none while both groups
/// are followed: NoSpread.
[[nodiscard]] tl::expected<LogRank, StatisticsFault> logRank(std::span<const WashOutcome> first,
                                                             std::span<const WashOutcome> second);

} // namespace holdfast::analytics::statistics
