#pragma once

#include "analytics/statistics/charts/rules.hpp"
#include "analytics/statistics/fault.hpp"

#include <cstddef>
#include <span>
#include <tl/expected.hpp>
#include <vector>

namespace holdfast::analytics::statistics {

/// All in the unit of the values.
struct CusumRules final {
    double target = 0.0;
    double k = 0.0;         ///< reference value: half the shift to be found
    double h = 0.0;         ///< decision interval
    double headStart = 0.0; ///< fast initial response: where both sums start (Lucas and Crosier 1982: h/2)
};

/// The sum has gone beyond the decision interval.
struct CusumSignal final {
    std::size_t at = 0;
    SignalSide side = SignalSide::Above;
    std::size_t since = 0; ///< first point of the run of positive sums: when the change probably began
    double mean = 0.0;     ///< target ± (k + sum/points since then): the mean now, roughly
};

struct CusumTrack final {
    std::vector<double> high;
    std::vector<double> low;         ///< as a positive sum
    std::vector<CusumSignal> alarms; ///< one for every point beyond, in order; a sum is not reset
};

/// Tabular CUSUM: Hᵢ = max(0, Hᵢ₋₁ + xᵢ − target − k), Lᵢ = max(0, Lᵢ₋₁ + target − k − xᵢ), a signal where either is
/// above h (E. S. Page, Biometrika 41, 1954; NIST/SEMATECH e-Handbook 6.3.2.3; beginning and mean: Montgomery,
/// Introduction to Statistical Quality Control, 7th ed., 9.1.2). Linear. Faults: NoValues; NotFinite; OutOfDomain for k
/// below 0, h or a head start that is not in range, or a sum beyond the range of a double.
[[nodiscard]] tl::expected<CusumTrack, StatisticsFault> cusum(std::span<const double> values, const CusumRules& rules);

/// Reference value and interval in standard deviations: k·σ and h·σ around `center`. OutOfDomain without spread.
[[nodiscard]] tl::expected<CusumTrack, StatisticsFault> standardCusum(std::span<const double> values, double center,
                                                                      double sigma, double k = 0.5, double h = 5.0);

} // namespace holdfast::analytics::statistics
