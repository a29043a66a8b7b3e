#pragma once

#include "analytics/statistics/fault.hpp"

#include <cstddef>
#include <span>
#include <tl/expected.hpp>

namespace holdfast::analytics::statistics {

/// Which value may be the outlier.
enum class OutlierSide {
    Largest,
    Smallest,
    Either, ///< the one further from the mean
};

struct GrubbsTest final {
    double statistic = 0.0; ///< distance of the suspect from the mean, in standard deviations
    double critical = 0.0;
    std::size_t suspect = 0; ///< its place among the values
    bool outlier = false;    ///< statistic > critical
};

/// Largest statistic still expected at this level: G = (n − 1)/√n · √(t²/(n − 2 + t²)), t the upper α/n point of
/// Student's t with n − 2 degrees of freedom, α/2n for either side. F. E. Grubbs, "Procedures for detecting outlying
/// observations in samples", Technometrics 11 (1969); NIST/SEMATECH e-Handbook 1.3.5.17.1. Faults: TooFewValues below
/// three; OutOfDomain for an α outside (0, 1).
[[nodiscard]] tl::expected<double, StatisticsFault> grubbsCritical(std::size_t count, double alpha, OutlierSide side);

/// Whether one value lies too far out for a sample of normal values; made for one outlier, not for several that hide
/// each other. Faults: NoValues, NotFinite, TooFewValues, OutOfDomain, NoSpread for equal values.
[[nodiscard]] tl::expected<GrubbsTest, StatisticsFault> grubbs(std::span<const double> values, double alpha,
                                                               OutlierSide side);

} // namespace holdfast::analytics::statistics
