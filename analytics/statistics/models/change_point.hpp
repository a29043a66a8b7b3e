#pragma once

#include "analytics/statistics/fault.hpp"

#include <tl/expected.hpp>

#include <cstddef>
#include <cstdint>
#include <vector>

/// One change at an unknown place in a series: where it may have been, and whether there was one.
namespace holdfast::analytics::statistics {

struct ChangeOptions final {
    double level = 0.95;    ///< of the set of positions, 0 < level < 1
    int permutations = 999; ///< behind p; 0 gives p = 1
    std::uint64_t seed = 1; ///< of the permutations
};

/// Failures among the pieces, lots or tests of one period.
struct FailedOfTotal final {
    std::int64_t failed = 0;
    std::int64_t total = 0;
};

struct ChangePoint final {
    std::size_t position = 0;          ///< values before the most likely change, 1 … n − 1
    std::vector<std::size_t> possible; ///< ascending: every position that cannot be excluded; may have gaps
    double before = 0.0;               ///< mean, share or rate up to `position`
    double after = 0.0;
    double statistic = 0.0;  ///< twice the log likelihood ratio, change against none
    double p = 1.0;          ///< against no change; 1/(permutations + 1) is the smallest it can be
    double dispersion = 1.0; ///< of counts about the two shares or rates, never below 1
    double level = 0.95;
    double squaresNone = 0.0; ///< sum of squares about one mean (values only)
    double squaresOne = 0.0;  ///< about two means

    [[nodiscard]] std::size_t earliest() const noexcept { return possible.front(); }
    [[nodiscard]] std::size_t latest() const noexcept { return possible.back(); }
};

/// One change in the mean of normal values with one unknown spread, by maximum likelihood (Hinkley, Biometrika 57:1,
/// 1970).
///
/// Set: all k with 2(l(k̂) − l(k)) ≤ −2·ln(1 − √level), the limit law of that difference for the true k: the larger of
/// two independent exponentials (Yao, Ann. Statist. 15:1321, 1987; Hansen, Econometrica 68:575, 2000, table 1; as a
/// likelihood-ratio set Siegmund, Int. Statist. Rev. 56:31, 1988; Worsley, Biometrika 73:91, 1986). For steps that are
/// large beside the spread it holds more than its level. It says where a change was if there was one; p says whether.
///
/// p: of the largest likelihood ratio among random orders of the values, (1 + as large)/(1 + permutations) (Phipson and
/// Smyth, Stat. Appl. Genet. Mol. Biol. 9:39, 2010); beyond 10,000 values, orders of 10,000 blocks of neighbours.
///
/// At least 3 finite values, not all equal. Linear in n, and permutations · min(n, 10,000) for p.
[[nodiscard]] tl::expected<ChangePoint, StatisticsFault> changeInMean(const std::vector<double>& values,
                                                                      const ChangeOptions& options = {});

/// One change in the share of failures, binomial likelihood (Hinkley and Hinkley, Biometrika 57:477, 1970; Worsley,
/// JASA 78:278, 1983); set and p as changeInMean, p by orders of whole periods. Pearson's dispersion about the two
/// shares, where above 1, widens the set (McCullagh and Nelder, Generalized Linear Models, 2nd ed., 4.5). Empty periods
/// are allowed and say nothing. At least 3 periods, 0 ≤ failed ≤ total, neither none nor all failed.
[[nodiscard]] tl::expected<ChangePoint, StatisticsFault> changeInShare(const std::vector<FailedOfTotal>& periods,
                                                                       const ChangeOptions& options = {});

/// One change in the rate of events, Poisson likelihood, one period the unit of exposure; otherwise as changeInShare.
/// Counts of 0 and more, not all 0.
[[nodiscard]] tl::expected<ChangePoint, StatisticsFault> changeInRate(const std::vector<std::int64_t>& counts,
                                                                      const ChangeOptions& options = {});

} // namespace holdfast::analytics::statistics
