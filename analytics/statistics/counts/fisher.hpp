#pragma once

#include "analytics/statistics/counts/count_domain.hpp"

#include <tl/expected.hpp>

#include <cstdint>
#include <optional>

namespace holdfast::analytics::statistics {

/// Pieces or lots with and without something, failed and passed.
struct FourfoldTable {
    std::int64_t failedWith = 0;
    std::int64_t passedWith = 0;
    std::int64_t failedWithout = 0;
    std::int64_t passedWithout = 0;
};

struct FisherTest {
    double less;     ///< P(X ≤ failedWith): failing is rarer with it
    double greater;  ///< P(X ≥ failedWith): failing is commoner with it
    double twoSided; ///< Σ of all tables as rare as this one
};

/// Fisher's exact test, all margins fixed (Fisher, Statistical Methods for Research Workers, 1925, §21.02; two-sided by
/// the sum of tables no likelier, ties within a relative 10⁻⁷). A margin of nothing (all pass, all fail, everything or
/// nothing with it) gives 1 everywhere; an empty table is NoValues, a negative count or a total above 10¹² OutOfDomain.
/// Cost: some tens of standard deviations of the count, microseconds for thousands of lots, no tables kept.
[[nodiscard]] tl::expected<FisherTest, StatisticsFault> fisherExact(const FourfoldTable& table) noexcept;

/// Odds ratio of failing, with against without.
struct OddsRatio {
    std::optional<double> ratio; ///< absent when the table holds no contrast; 0 or kUnbounded at the ends
    double lower = 0.0;
    double upper = kUnbounded;
};

/// Conditional maximum likelihood odds ratio: the ω whose mean of X is the count seen, Newton's steps in ln ω kept
/// between bounds; exact limits P(X ≥ x; lower) = P(X ≤ x; upper) = α/2 (Cornfield, Proc. 3rd Berkeley Symp. 4, 1956,
/// 135–148; Breslow and Day, Statistical Methods in Cancer Research I, 1980, 4.2). Faults as for fisherExact;
/// `confidence` strictly between 0 and 1.
[[nodiscard]] tl::expected<OddsRatio, StatisticsFault> conditionalOddsRatio(const FourfoldTable& table,
                                                                            double confidence = 0.95) noexcept;

/// What is wrong with the table, if anything.
[[nodiscard]] std::optional<StatisticsFault> faultOf(const FourfoldTable& table) noexcept;

} // namespace holdfast::analytics::statistics
