#pragma once

#include "analytics/statistics/models/logistic_design.hpp"

namespace holdfast::analytics::statistics {

/// A coefficient that is not fitted but kept at a value.
struct HeldCoefficient final {
    std::size_t index = 0;
    double value = 0.0;
};

/// Where a fit ended, in the units of its design.
struct LogisticPeak final {
    SmallVector beta{};
    double logLikelihood = 0.0;
    double objective = 0.0;       ///< log likelihood with its penalty
    SmallSymmetric covariance{1}; ///< inverse of the information
    SmallVector direction{};      ///< last full step
    Separation separation = Separation::None;
};

/// The largest (penalised) likelihood from `start`, one coefficient perhaps held. None if it does not settle.
[[nodiscard]] std::optional<LogisticPeak> climbLogistic(const LogisticDesign& design, Penalty penalty,
                                                        const SmallVector& start,
                                                        const std::optional<HeldCoefficient>& held = std::nullopt);

/// Whether moving along `direction` for ever makes no row's chance worse and some better.
[[nodiscard]] Separation separationAlong(const LogisticDesign& design, const SmallVector& direction);

} // namespace holdfast::analytics::statistics
