#pragma once

#include "analytics/statistics/fault.hpp"

#include <tl/expected.hpp>

#include <cstdint>
#include <optional>
#include <span>
#include <vector>

namespace holdfast::analytics::statistics {

/// Complaints that came so many weeks after the pieces went out.
struct DelayCount {
    std::int64_t delay = 0;      ///< weeks from shipment to complaint
    std::int64_t age = 0;        ///< weeks from shipment to today; delay ≤ age
    std::int64_t complaints = 1; ///< ≥ 0
};

/// Share of the complaints that have come t weeks after shipment, of those that come within the longest delay seen.
struct DelayCurve {
    std::vector<double> arrived;       ///< at t = 0, 1, …, longest; the last is 1
    std::vector<double> standardError; ///< Greenwood
    std::int64_t complaints = 0;
    /// Some share hangs on one week in which everything observable came: the curve before it is 0, not known.
    bool unstable = false;

    [[nodiscard]] double arrivedBy(std::int64_t weeks) const noexcept; ///< 0 for a negative week, 1 beyond the longest
};

/// The shop's own delay curve from complaints that have come, right-truncated: a late one of a young shipment cannot be
/// among them. Reverse-time product limit F(t) = Π_{s > t}(1 − n_s/N_s), n_s complaints with delay s and age ≥ s, N_s
/// those with delay ≤ s and age ≥ s (Lagakos, Barraj and De Gruttola, Biometrika 75, 1988, 515–523; Lawless, Can. J.
/// Stat. 22, 1994, 15–31); the same as chain-ladder factors F(s − 1)/F(s) (Mack, ASTIN Bulletin 23, 1993, 213–225).
/// Says nothing of complaints later than the longest seen. No complaints: NoValues; delay or age negative, delay above
/// age, more than 5,200 weeks, a negative count: OutOfDomain. Cost: complaints + weeks.
[[nodiscard]] tl::expected<DelayCurve, StatisticsFault> delayCurve(std::span<const DelayCount> counts);

} // namespace holdfast::analytics::statistics
