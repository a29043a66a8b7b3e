#pragma once

#include "analytics/statistics/fault.hpp"

#include <cstddef>
#include <tl/expected.hpp>

namespace holdfast::analytics::statistics {

/// What is known of independent values, in their own unit.
struct SampleMean final {
    std::size_t count = 0;
    double mean = 0.0;
    double variance = 0.0; ///< of a single value, Σ(x − x̄)²/(n − 1)
};

struct MeanDifference final {
    double difference = 0.0; ///< first less second
    double standardError = 0.0;
    double degrees = 0.0; ///< of freedom, no whole number; 0 without any spread
    double p = 1.0;       ///< two-sided, against no difference; without any spread 1 or 0
};

/// Welch's t test of two means whose spreads need not be the same, degrees of freedom after Satterthwaite (B. L. Welch,
/// Biometrika 34:28, 1947; F. E. Satterthwaite, Biometrics Bull. 2:110, 1946; NIST/SEMATECH e-Handbook 1.3.5.3).
/// Faults: TooFewValues for a sample of fewer than two; NotFinite; OutOfDomain for a negative variance.
[[nodiscard]] tl::expected<MeanDifference, StatisticsFault> compareMeans(const SampleMean& first,
                                                                         const SampleMean& second);

} // namespace holdfast::analytics::statistics
