#pragma once

#include <optional>
#include <vector>

namespace holdfast::kiosk::shop::trending {

/// Where the differences of pairs lie, however wild a few of them are.
struct PairedLocation final {
    double estimate = 0.0; ///< median of the Walsh averages
    double lower = 0.0;    ///< 95 %
    double upper = 0.0;
    double p = 1.0; ///< two-sided, against 0
};

/// Wilcoxon's signed ranks with the Hodges–Lehmann estimate and Tukey's limits (Hollander and Wolfe, Nonparametric
/// Statistical Methods, 2nd ed., 3.1 to 3.3), by the normal law with ties and without zeros; for six pairs and more.
/// Of more than 1,500 the newest. Nothing for fewer than six, none that is not 0, or values that are no numbers. n² log
/// n.
[[nodiscard]] std::optional<PairedLocation> locatePairs(const std::vector<double>& differences);

} // namespace holdfast::kiosk::shop::trending
