#pragma once

#include "analytics/statistics/fault.hpp"

#include <tl/expected.hpp>

#include <cstdint>
#include <optional>
#include <span>
#include <vector>

namespace holdfast::analytics::statistics {

/// Pieces looked at only after some cycles: held at `held`, found failed at `failedBy`.
struct InspectedOutcome {
    double held = 0.0;              ///< last cycles at which it was seen to hold; 0 when never
    std::optional<double> failedBy; ///< first cycles at which it was seen failed; absent: never
    std::int64_t pieces = 1;
};

/// A stretch of cycles (after, by] within which some of the pieces failed; where within it cannot be known.
struct IntervalStep {
    double after = 0.0;
    std::optional<double> by; ///< absent: beyond the last inspection
    double share = 0.0;       ///< of all pieces, failing within it
    double survival = 1.0;    ///< beyond it
};

/// Nonparametric maximum likelihood survival of interval-censored pieces, by self-consistency (Turnbull, J. R. Stat.
/// Soc. B 38, 1976, 290–295), to 10⁻⁹ of each share; stretches of no share left out. held < failedBy, both finite and ≥
/// 0, otherwise a fault. No pieces: NoValues; not settled in 100,000 rounds: NoConvergence. Cost of a round: different
/// outcomes × stretches, of which there may be at most 2,000 (else OutOfDomain): wash cycles are few.
[[nodiscard]] tl::expected<std::vector<IntervalStep>, StatisticsFault>
intervalSurvival(std::span<const InspectedOutcome> outcomes);

} // namespace holdfast::analytics::statistics
