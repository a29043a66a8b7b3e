#pragma once

#include "analytics/statistics/fault.hpp"

#include <tl/expected.hpp>

#include <cstdint>

namespace holdfast::analytics::statistics {

/// So many of so many: failed of read, bad of drawn.
struct CountOf {
    std::int64_t hits = 0;
    std::int64_t of = 0;
};

/// Both ends of a confidence interval. A one-sided limit keeps its open side at the end of the domain.
struct ShareLimits {
    double lower = 0.0;
    double upper = 1.0;
};

enum class LimitSide { Both, UpperOnly, LowerOnly };

/// Exact limits of a proportion from beta quantiles: lower B(α'; k, n − k + 1), upper B(1 − α'; k + 1, n − k), α' = α/2
/// for both sides and α for one (Clopper and Pearson, Biometrika 26, 1934, 404–413; NIST/SEMATECH e-Handbook 7.2.4.1).
/// k = 0 has lower 0, k = n upper 1. `confidence` strictly between 0 and 1. Never covers less than it says, often more.
[[nodiscard]] tl::expected<ShareLimits, StatisticsFault> clopperPearson(CountOf count, double confidence = 0.95,
                                                                        LimitSide side = LimitSide::Both) noexcept;

/// Score limits (p̂ + z²/2n ± z·√(p̂(1 − p̂)/n + z²/4n²))/(1 + z²/n) (Wilson, J. Am. Stat. Assoc. 22, 1927, 209–212;
/// Newcombe, Stat. Med. 17, 1998, 857–872, method 3). Covers what it says on average, not always: for charts, not for
/// decisions on which a lot hangs. Ends as for clopperPearson.
[[nodiscard]] tl::expected<ShareLimits, StatisticsFault> wilson(CountOf count, double confidence = 0.95,
                                                                LimitSide side = LimitSide::Both) noexcept;

/// A failure rate when some readings that were due were missed: nobody knows what those would have shown.
struct RateWithMissed {
    double lowest = 0.0;  ///< failed/due: every missed reading would have passed
    double highest = 0.0; ///< (failed + missed)/due: every missed reading would have failed
    ShareLimits limits;   ///< Clopper–Pearson: lower of `lowest`, upper of `highest`
    std::int64_t due = 0; ///< read + missed
};

/// Rate of drawn readings, widened by the missed ones (decisions 6; bounds without assumptions on what is missing:
/// Manski, Partial Identification of Probability Distributions, 2003, ch. 1). `failed` of `read` failed, `missed` more
/// were due. Nothing due: NoValues.
[[nodiscard]] tl::expected<RateWithMissed, StatisticsFault>
rateWithMissed(std::int64_t failed, std::int64_t read, std::int64_t missed, double confidence = 0.95) noexcept;

} // namespace holdfast::analytics::statistics
