#pragma once

#include "analytics/statistics/counts/fisher.hpp"

#include <span>

namespace holdfast::analytics::statistics {

struct CommonOdds {
    OddsRatio odds;             ///< Σ(ad/n)/Σ(bc/n) with Robins–Breslow–Greenland limits
    double chiSquare = 0.0;     ///< without continuity correction
    double twoSided = 1.0;      ///< p of chiSquare, one degree of freedom
    double correctedChi = 0.0;  ///< (max(0, |Σa − ΣE| − ½))²/ΣV
    double correctedP = 1.0;    ///< p of correctedChi
    std::size_t strataUsed = 0; ///< strata of two or more pieces
};

/// Mantel–Haenszel: does failing go with something within strata (within dryer, within family), and the odds ratio they
/// share (Mantel and Haenszel, J. Natl. Cancer Inst. 22, 1959, 719–748; limits exp(ln θ ± z·√V), V by Robins, Breslow
/// and Greenland, Biometrics 42, 1986, 311–323). The correction is never larger than the distance it corrects. Strata
/// of fewer than two pieces are passed over. No stratum with a contrast: NoSpread; Σbc = 0 has no finite ratio, and
/// with Σad = 0 or Σbc = 0 the limits are open (0, kUnbounded), for V is not defined there.
[[nodiscard]] tl::expected<CommonOdds, StatisticsFault> mantelHaenszel(std::span<const FourfoldTable> strata,
                                                                       double confidence = 0.95) noexcept;

} // namespace holdfast::analytics::statistics
