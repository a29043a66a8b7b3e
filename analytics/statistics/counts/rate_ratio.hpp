#pragma once

#include "analytics/statistics/fault.hpp"

#include <tl/expected.hpp>

#include <cstdint>
#include <optional>

namespace holdfast::analytics::statistics {

/// Events over an exposure: complaints over pieces sold, failures over hours.
struct EventCount {
    std::int64_t events = 0;
    double exposure = 0.0; ///< finite, above 0
};

struct RateRatio {
    std::optional<double> ratio; ///< rate of the first over that of the second; absent when neither has an event
    double lower = 0.0;          ///< exact limits; kUnbounded above when the second has no event
    double upper = 0.0;
    double less = 1.0;    ///< p: the first rate is the lower one
    double greater = 1.0; ///< p: the first rate is the higher one
    double twoSided = 1.0;
};

/// Two Poisson rates compared given their total: the first count is binomial with share E₁/(E₁ + E₂) under equal rates
/// (Przyborowski and Wilenski, Biometrika 31, 1940, 313–323); limits of the ratio from Clopper–Pearson's of that share;
/// two-sided p the sum of all counts no likelier, ties within a relative 10⁻⁷ (as R's poisson.test). No events at all:
/// ratio absent, p 1, limits 0 to kUnbounded.
[[nodiscard]] tl::expected<RateRatio, StatisticsFault> compareRates(EventCount first, EventCount second,
                                                                    double confidence = 0.95) noexcept;

/// Chance that the one-sided exact test above, at `risk`, shows the second rate to be lower than the first when on
/// average `expectedFirst` and `expectedSecond` events come over these exposures (Gu, Ng, Tang and Schucany, Biom. J.
/// 50, 2008, 283–298: unconditional power of the conditional test); above 1,000 expected events together by the normal
/// law of the log ratio. Expected counts finite and ≥ 0. Cost: square root of the expected events.
[[nodiscard]] tl::expected<double, StatisticsFault> lowerRatePower(double expectedFirst, double exposureFirst,
                                                                   double expectedSecond, double exposureSecond,
                                                                   double risk) noexcept;

} // namespace holdfast::analytics::statistics
