#pragma once

#include "analytics/statistics/charts/tolerance.hpp"

#include <span>
#include <vector>

namespace holdfast::analytics::statistics {

/// What a one-way layout comes to: groups (episodes) with their values (readings).
struct OneWay final {
    std::size_t groups = 0;
    std::size_t values = 0;
    double meanOfGroups = 0.0;   ///< unweighted
    double grandMean = 0.0;      ///< over all values
    double sizeMean = 0.0;       ///< harmonic mean of the group sizes
    double sizeEffective = 0.0;  ///< (N − Σnᵢ²/N)/(a − 1)
    double squaresOfMeans = 0.0; ///< Σ(x̄ᵢ − mean of groups)²
    double squaresBetween = 0.0; ///< Σnᵢ(x̄ᵢ − grand mean)²
    double squaresWithin = 0.0;
    double degreesWithin = 0.0; ///< N − a
};

/// Squares and degrees of freedom of the spread within groups known from elsewhere, such as a dryer's history.
struct PooledWithin final {
    double squares = 0.0;
    double degrees = 0.0;
};

/// Faults: NoValues for an empty group or none; TooFewValues below two groups; NotFinite; OutOfDomain.
[[nodiscard]] tl::expected<OneWay, StatisticsFault> oneWay(std::span<const std::vector<double>> groups);

inline constexpr std::size_t kUsualGroups = 5; ///< decisions 6; also CMH-17-1G, 8.3.5.2.5

/// Bound for a single value of a group yet to come, groups drawn at random: x = μ + aᵢ + eᵢⱼ. Generalized pivotal
/// quantity of K. Krishnamoorthy and T. Mathew, "One-sided tolerance limits in balanced and unbalanced one-way random
/// models based on generalized confidence intervals", Technometrics 46 (2004); Statistical Tolerance Regions (Wiley
/// 2009), 5.3 and 5.4: with ñ the harmonic mean size, SSₓ̄ = Σ(x̄ᵢ − x̄̄)² taken as (σa² + σe²/ñ)·χ²(a − 1),
///   G = x̄̄ + Z√(SSₓ̄/(a·U₁)) ∓ z₍p₎√(SSₓ̄/U₁ + (1 − 1/ñ)·SSe/U₂),
/// U₁ ~ χ²(a − 1), U₂ ~ χ²(N − a); the bound is the quantile of G, here by quadrature over U₁ and U₂ instead of drawing
/// them, so it is the same every time. Exact for groups of one, nearly so when balanced. `pooled` is added to SSe and
/// its degrees. `sd` is √(σa² + σe²) from the analysis of variance. Caveats: FewGroups below kUsualGroups,
/// NoWithinSpread, NoSpread. Faults as oneWay.
[[nodiscard]] tl::expected<ToleranceBound, StatisticsFault>
randomEffectsBound(std::span<const std::vector<double>> groups, const ToleranceAim& aim = {},
                   const PooledWithin& pooled = {});

/// The same by the handbook's closed form: x̄ ∓ T·S with S² = MSB/n′ + (n′ − 1)/n′·MSE and T between the factors of N
/// and of a independent values by w = √(u/(u + n′ − 1)), u = max(1, MSB/MSE) (M. G. Vangel, Technometrics 34, 1992;
/// CMH-17-1G, 8.3.5.2.5; after G. H. Lemon, Technometrics 19, 1977). Kept beside the other because its results are
/// published.
[[nodiscard]] tl::expected<ToleranceBound, StatisticsFault>
randomEffectsHandbookBound(std::span<const std::vector<double>> groups, const ToleranceAim& aim = {});

} // namespace holdfast::analytics::statistics
