#pragma once

#include "analytics/statistics/counts/beta_binomial.hpp"

namespace holdfast::analytics::statistics {

/// A lot whose bad pieces are asked for: what was read of it, and how many pieces it has in all.
struct LotAsked {
    CountOf own;             ///< bad of read; 0 of 0 when nothing was read
    std::int64_t pieces = 0; ///< of the whole lot, those read among them
};

/// Bad pieces in the lot, those found among them.
struct BadPieces {
    std::int64_t lower = 0; ///< smallest count reached with the chance (1 − coverage)/2
    std::int64_t upper = 0; ///< smallest count reached with the chance 1 − (1 − coverage)/2
    double expected = 0.0;
    double anyBad = 0.0; ///< chance that there is at least one
};

inline constexpr std::int64_t kMostPieces = 200'000;

/// Predictive range of the bad pieces of a lot, empirical Bayes: the lot's share given its own readings is Beta(a +
/// bad, b + good), the bad among the M pieces not read beta-binomial (Gelman and others, Bayesian Data Analysis, 3rd
/// ed., 2.1, 5.3; Griffiths, Biometrics 29, 1973); chance of none Π (b′ + i)/(a′ + b′ + i) over i < M. The model
/// is taken as known: with its caveats, or from few lots, the range is too narrow. Coverage strictly between 0 and 1,
/// model mean strictly between 0 and 1, 0 ≤ intraclass < 1, read ≤ pieces ≤ kMostPieces, otherwise OutOfDomain. Cost:
/// pieces.
[[nodiscard]] tl::expected<BadPieces, StatisticsFault> predictBad(const LotModel& model, const LotAsked& lot,
                                                                  double coverage = 0.90);

/// The same for several lots together, each with its own share: the sum of independent counts by convolution, what is
/// below 10⁻¹² at either end cut off. No lots: no bad pieces. All pieces together at most kMostPieces. Cost: pieces of
/// all lots × the width of the sum.
[[nodiscard]] tl::expected<BadPieces, StatisticsFault>
predictBadTogether(const LotModel& model, std::span<const LotAsked> lots, double coverage = 0.90);

} // namespace holdfast::analytics::statistics
