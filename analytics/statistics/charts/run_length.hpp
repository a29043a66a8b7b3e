#pragma once

#include "analytics/statistics/charts/rules.hpp"
#include "analytics/statistics/fault.hpp"

#include <cstdint>
#include <tl/expected.hpp>

namespace holdfast::analytics::statistics {

/// Average run lengths: how many points on average until the chart signals, from its start, when independent normal
/// values have moved by `shift` standard deviations of the plotted point. With shift 0 it is the time between false
/// alarms. Limits are taken as known; limits from few points make the true figure differ from chart to chart.

enum class Sides {
    One, ///< upper side only
    Two,
};

/// Points beyond ± width only: 1/(Φ(−width − shift) + Φ(−width + shift)). OutOfDomain for a width that is not positive
/// or a run length beyond the range of a double.
[[nodiscard]] tl::expected<double, StatisticsFault> shewhartRunLength(double width, double shift);

/// Rules 1, 2, 5, 6, 7 and 8 in any combination, exactly, by the Markov chain of what the coming points can still
/// complete (C. W. Champ and W. H. Woodall, Technometrics 29, 1987). Trends and alternation (3 and 4) depend on more
/// than zones: OutOfDomain, as without any rule; see drawnRunLength.
[[nodiscard]] tl::expected<double, StatisticsFault> rulesRunLength(RuleSet rules, double shift);

/// A run length drawn, not computed.
struct DrawnRunLength final {
    double mean = 0.0;
    double standardError = 0.0; ///< of the mean, from the charts drawn
    int charts = 0;
};

/// Any rules, trends and alternation among them, by simulation: the mean of `charts` charts read until their first
/// signal, the same for the same seed. A single run length scatters about as much as it is long, so that the standard
/// error is near mean/√charts: 1 % of the mean at 10,000. Time goes with mean · charts. OutOfDomain without any rule,
/// for fewer than two charts or a shift that is no number; NoConvergence where more than 2·10⁸ points would be drawn.
[[nodiscard]] tl::expected<DrawnRunLength, StatisticsFault> drawnRunLength(RuleSet rules, double shift,
                                                                           int charts = 10'000, std::uint64_t seed = 1);

/// CUSUM with reference value k and interval h in standard deviations, from 0: L(s) = 1 + L(0)Φ(k − s − shift) +
/// ∫₀ʰL(x)φ(x + k − s − shift)dx by Gauss–Legendre nodes (E. S. Page 1954; A. L. Goel and S. M. Wu, Technometrics 13,
/// 1971); two-sided 1/L = 1/L⁺ + 1/L⁻. OutOfDomain for k < 0, h outside (0, 100], or a run length above 10¹².
[[nodiscard]] tl::expected<double, StatisticsFault> cusumRunLength(double k, double h, double shift,
                                                                   Sides sides = Sides::Two);

/// EWMA with settled limits ± width, two-sided, from the centre: L(u) = 1 + ∫L(x)φ((x − (1 − λ)u)/λ − shift)dx/λ (S. V.
/// Crowder, Technometrics 29, 1987). OutOfDomain for λ outside [0.001, 1], width outside (0, 10], or a run length above
/// 10¹².
[[nodiscard]] tl::expected<double, StatisticsFault> ewmaRunLength(double lambda, double width, double shift);

/// Width or interval whose run length in control is `runLength`, 1 < runLength ≤ 10⁹. OutOfDomain, NoConvergence.
[[nodiscard]] tl::expected<double, StatisticsFault> shewhartWidthFor(double runLength);
[[nodiscard]] tl::expected<double, StatisticsFault> cusumIntervalFor(double k, double runLength,
                                                                     Sides sides = Sides::Two);
[[nodiscard]] tl::expected<double, StatisticsFault> ewmaWidthFor(double lambda, double runLength);

} // namespace holdfast::analytics::statistics
