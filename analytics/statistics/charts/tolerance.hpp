#pragma once

#include "analytics/statistics/fault.hpp"

#include <cstddef>
#include <optional>
#include <span>
#include <tl/expected.hpp>

namespace holdfast::analytics::statistics {

enum class BoundSide {
    Lower,
    Upper,
};

/// At least the share `content` of the values lies on the good side of the bound, with confidence `confidence`.
struct ToleranceAim final {
    double content = 0.95;    ///< in [0.5, 1)
    double confidence = 0.95; ///< in (0, 1)
    BoundSide side = BoundSide::Lower;
};

enum class ToleranceCaveat {
    NoSpread,       ///< equal values: the bound is their value and says nothing of later ones
    FewGroups,      ///< fewer than kUsualGroups groups: the spread between them is hardly known
    NoWithinSpread, ///< one value a group: worked as independent values
};

/// x̄ ∓ k·s with k = t₍γ₎(ν = n − 1, δ = z₍p₎√n)/√n, the non-central t (D. B. Owen 1968; ISO 16269-6:2014, annex;
/// NIST/SEMATECH e-Handbook 7.2.6.3, which also gives Natrella's approximation). For independent normal values. Faults:
/// TooFewValues for n < 2; OutOfDomain.
[[nodiscard]] tl::expected<double, StatisticsFault> toleranceFactor(std::size_t count, const ToleranceAim& aim);

struct ToleranceBound final {
    double bound = 0.0;
    double mean = 0.0;
    double sd = 0.0;     ///< of a single value; between and within groups together where there are groups
    double factor = 0.0; ///< |bound − mean|/sd; 0 without spread
    std::optional<ToleranceCaveat> caveat;
};

/// The bound for independent normal values, in their unit. Linear. Faults: NoValues; TooFewValues below two; NotFinite;
/// OutOfDomain.
[[nodiscard]] tl::expected<ToleranceBound, StatisticsFault> toleranceBound(std::span<const double> values,
                                                                           const ToleranceAim& aim = {});

} // namespace holdfast::analytics::statistics
