#pragma once

#include "analytics/statistics/fault.hpp"

#include <tl/expected.hpp>

#include <cstdint>

namespace holdfast::analytics::statistics {

/// Single sampling by attributes: draw `size` pieces, accept with at most `accept` bad ones.
struct AttributePlan {
    std::int64_t size = 0;
    std::int64_t accept = 0;
};

/// Chance that a process with the share `bad` is accepted, Σ_{x ≤ Ac} C(n, x) p^x (1 − p)^{n−x} (binomial: a long
/// series; Montgomery, Introduction to Statistical Quality Control, 6th ed., 15.2). 0 ≤ bad ≤ 1.
[[nodiscard]] tl::expected<double, StatisticsFault> acceptanceBinomial(AttributePlan plan, double bad) noexcept;

/// The same with the Poisson law of mean n·p, as the tables of ISO 2859-1:1999 print it for nonconformities per 100
/// items; `badPerPiece` may be above 1.
[[nodiscard]] tl::expected<double, StatisticsFault> acceptancePoisson(AttributePlan plan, double badPerPiece) noexcept;

/// The share bad that the plan accepts with this chance (binomial): 1 − B(Pa; n − Ac, Ac + 1). Pa = 0.95 is the
/// producer's point, 0.10 the consumer's (ISO 2859-1:1999, 12). Pa strictly between 0 and 1; accept < size.
[[nodiscard]] tl::expected<double, StatisticsFault> badShareAccepted(AttributePlan plan, double acceptance) noexcept;

/// n·p accepted with this chance under the Poisson law, χ²(1 − Pa; 2Ac + 2)/2 (Cameron, Industrial Quality Control 9,
/// 1952, 37–39).
[[nodiscard]] tl::expected<double, StatisticsFault> poissonMeanAccepted(std::int64_t accept,
                                                                        double acceptance) noexcept;

/// Smallest number of pieces which, when at most `failures` of them fail, shows with `confidence` that at least the
/// share `good` is good: the smallest n with Σ_{x ≤ f} C(n, x)(1 − R)^x R^{n−x} ≤ 1 − C. Without failures n =
/// ⌈ln(1 − C)/ln R⌉ ("success run"; Meeker, Hahn and Escobar, Statistical Intervals, 2nd ed., 9.2). Both strictly
/// between 0 and 1. A need of more than 10¹² is OutOfDomain. Cost: logarithmic.
[[nodiscard]] tl::expected<std::int64_t, StatisticsFault> demonstrationSize(double good, double confidence,
                                                                            std::int64_t failures = 0) noexcept;

} // namespace holdfast::analytics::statistics
