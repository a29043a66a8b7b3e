#pragma once

#include "analytics/statistics/fault.hpp"

#include <tl/expected.hpp>

#include <cstdint>

namespace holdfast::analytics::statistics {

/// Two arms of equal size, their shares failing, and what the comparison is to hold to.
struct TrialQuestion {
    double shareOne = 0.0;
    double shareTwo = 0.0;
    double power = 0.80; ///< chance that a difference this large shows
    double risk = 0.05;  ///< two-sided
};

/// Pieces per arm by the normal approximation without continuity correction, not rounded: (z_{1−α/2}·√(2p̄(1 − p̄)) +
/// z_{1−β}·√(p₁q₁ + p₂q₂))²/(p₁ − p₂)² (Fleiss, Statistical Methods for Rates and Proportions, 2nd ed., 3.2; R's
/// power.prop.test). Shares in 0..1 and different, power and risk strictly between 0 and 1, power above risk.
[[nodiscard]] tl::expected<double, StatisticsFault> approximateTrialSize(const TrialQuestion& question) noexcept;

/// Power of Fisher's exact test, two-sided, with `perArm` pieces in each arm: exact, over every outcome of both arms
/// (Casagrande, Pike and Smith, Appl. Stat. 27, 1978, 176–180). With equal arms the two-sided p is twice the smaller
/// tail. `perArm` 1 to 2,000. Cost perArm².
[[nodiscard]] tl::expected<double, StatisticsFault> fisherPower(const TrialQuestion& question, std::int64_t perArm);

struct TrialSize {
    std::int64_t perArm = 0;
    double power = 0.0; ///< reached with it
    bool exact = true;  ///< false: too large for the exact power, approximation with Fleiss' continuity correction
};

/// Smallest trial that would tell two shares apart: the smallest number of pieces per arm whose exact power reaches the
/// power asked for, looked for from nine tenths of the approximation upwards (Fisher's test needs more than that; its
/// exact power rises in saw teeth: the next size may fall just short again). Above 500 pieces an arm by approximation,
/// n′ = n/4·(1 + √(1 + 4/(n|p₁ − p₂|)))² (Fleiss, 3.2). Shares equal: OutOfDomain, no trial tells them apart.
[[nodiscard]] tl::expected<TrialSize, StatisticsFault> smallestTrial(const TrialQuestion& question);

} // namespace holdfast::analytics::statistics
