#pragma once

#include "analytics/statistics/fault.hpp"

#include <tl/expected.hpp>

#include <span>
#include <vector>

namespace holdfast::analytics::statistics {

/// Benjamini–Hochberg adjusted values q, in the order given: q₍ᵢ₎ = min over j ≥ i of m·p₍ⱼ₎/j, at most 1; calling
/// everything with q ≤ α a suspect keeps the expected share of false suspects at α (Benjamini and Hochberg, J. R. Stat.
/// Soc. B 57, 1995, 289–300), also when the p rise and fall together (Benjamini and Yekutieli, Ann. Stat. 29, 2001,
/// 1165–1188). None given: an empty list. A p outside 0..1 or NaN: OutOfDomain. Cost n log n.
[[nodiscard]] tl::expected<std::vector<double>, StatisticsFault> benjaminiHochberg(std::span<const double> p);

} // namespace holdfast::analytics::statistics
