#pragma once

#include "analytics/statistics/counts/proportion.hpp"

#include <span>

namespace holdfast::analytics::statistics {

enum class LotModelCaveat {
    None,
    NothingBad,    ///< no bad reading at all: Beta(½, ½ + readings) stands in, nothing is known of the spread of lots
    EverythingBad, ///< the same the other way round
    NothingRepeated, ///< no lot has two readings: how far lots differ cannot be told, 0 is taken
    LotsAlike,       ///< lots differ no more than chance: the spread is estimated at 0
    FewLots,         ///< fewer than kFewLots lots: the spread between them is hardly known
};

inline constexpr std::size_t kFewLots = 5;

/// How the share of bad pieces varies from lot to lot: Beta(a, b) with mean μ = a/(a + b) and intraclass correlation
/// ρ = 1/(a + b + 1); ρ = 0 is one share for all lots (binomial).
struct LotModel {
    double mean = 0.0;
    double intraclass = 0.0;
    LotModelCaveat caveat = LotModelCaveat::None;

    /// a + b; only with intraclass > 0.
    [[nodiscard]] double precision() const noexcept { return (1.0 - intraclass) / intraclass; }
    [[nodiscard]] double alpha() const noexcept { return mean * precision(); }
    [[nodiscard]] double beta() const noexcept { return (1.0 - mean) * precision(); }
};

/// Fit by moments, weights nᵢ: ρ = (S/(p̂q̂) − (k − 1))/Σ(1 − nᵢ/N)(nᵢ − 1), S = Σnᵢ(pᵢ − p̂)², not below 0 (Kleinman, J.
/// Am. Stat. Assoc. 68, 1973, 46–54, with the degrees of freedom of the k lots). Lots without a reading are passed
/// over; none left: NoValues; negative counts or more bad than read: OutOfDomain.
[[nodiscard]] tl::expected<LotModel, StatisticsFault> fitLotsByMoments(std::span<const CountOf> lots);

/// Maximum likelihood fit (Griffiths, Biometrics 29, 1973, 637–648) in the mean and θ = 1/(a + b), where
/// ln L = Σⱼ Aⱼln(μ + jθ) + Bⱼln(1 − μ + jθ) − Cⱼln(1 + jθ), with how many lots have more than j bad, good, read; θ = 0
/// is the binomial. For each θ the mean is found by Newton's steps (concave), θ by Brent's search. Cost 10³ × the
/// largest number of readings, at most 10⁶ (else OutOfDomain).
[[nodiscard]] tl::expected<LotModel, StatisticsFault> fitLots(std::span<const CountOf> lots);

struct OverDispersion {
    double pearson = 0.0;  ///< Σ(xᵢ − nᵢp̂)²/(nᵢp̂q̂)
    double freedoms = 0.0; ///< lots with readings − 1
    double factor = 1.0;   ///< pearson/freedoms: variance is so many times the binomial one
    double greaterP = 1.0; ///< χ² chance of so large a value if lots were alike (large-sample)
};

/// Pearson's over-dispersion of proportions (McCullagh and Nelder, Generalized Linear Models, 2nd ed., 4.5). Two lots
/// or more, else TooFewValues; all pass or all fail: NoSpread.
[[nodiscard]] tl::expected<OverDispersion, StatisticsFault> overDispersion(std::span<const CountOf> lots);

} // namespace holdfast::analytics::statistics
