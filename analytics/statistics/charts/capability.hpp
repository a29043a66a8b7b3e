#pragma once

#include "analytics/statistics/fault.hpp"

#include <cstddef>
#include <optional>
#include <span>
#include <tl/expected.hpp>

namespace holdfast::analytics::statistics {

/// What is asked of the values, in their unit; at least one of the two.
struct Specification final {
    std::optional<double> lower;
    std::optional<double> upper;
};

/// An index with its two-sided confidence limits.
struct CapabilityIndex final {
    double value = 0.0;
    double low = 0.0;
    double high = 0.0;
};

struct Capability final {
    std::size_t count = 0;
    double mean = 0.0;
    double sd = 0.0;
    std::optional<CapabilityIndex> cp;  ///< (U − L)/6s, with both limits
    std::optional<CapabilityIndex> cpu; ///< (U − x̄)/3s
    std::optional<CapabilityIndex> cpl; ///< (x̄ − L)/3s
    CapabilityIndex cpk;                ///< the smaller of the two, or the only one
    std::optional<double> k;            ///< |middle − x̄|/half the width, with both limits
    double shareOutside = 0.0;          ///< of normal values with this mean and sd
    bool fewValues = false;             ///< fewer than 30: read the confidence limits, not the index
    bool notNormal = false; ///< Anderson–Darling below 5 %: the share outside is not what the index suggests
};

/// Cp's limits by χ² (V. E. Kane, Journal of Quality Technology 18, 1986). Cpu and Cpl are 1/(3√n) times a non-central
/// t with non-centrality 3√n·C, so their limits are those of the non-centrality (S. Kushler and P. Hurley, "Confidence
/// bounds for capability indices", Journal of Quality Technology 24, 1992); Cpk with one limit is one of them. With
/// two, Cpk ± z√(1/(9n) + Cpk²/(2(n − 1))) (A. F. Bissell, Applied Statistics 39, 1990). NIST/SEMATECH
/// e-Handbook 6.1.6. `sd` is whichever the caller means, within subgroups or overall, with n − 1 degrees of freedom.
/// Faults: TooFewValues below two; NotFinite; NoSpread for sd = 0; OutOfDomain for no limit, limits the wrong way round
/// or a confidence outside (0, 1), or an index beyond a million.
[[nodiscard]] tl::expected<Capability, StatisticsFault>
capability(std::size_t count, double mean, double sd, const Specification& specification, double confidence = 0.95);

/// The same from values; n log n for the test of normality.
[[nodiscard]] tl::expected<Capability, StatisticsFault>
capability(std::span<const double> values, const Specification& specification, double confidence = 0.95);

} // namespace holdfast::analytics::statistics
