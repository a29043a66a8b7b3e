#pragma once

#include "kiosk/records/test_queries.hpp"

/// When a print may be tested, and by what.
namespace holdfast::kiosk::shop {

inline constexpr std::int64_t kMillisecondsPerHour = 3'600'000;

/// Hours after printing: the longer of what its ink's families and what the method ask. A bleed watch and a drop on the
/// blank cloth wait for no cure: their method's own hours count alone.
[[nodiscard]] double restHours(const records::PrintRow& print, const records::MethodDescribed& method) noexcept;
/// Wall milliseconds from which on a test counts.
[[nodiscard]] std::int64_t restedAt(const records::PrintRow& print, const records::MethodDescribed& method) noexcept;

enum class Validity { valid, notForChemistry, chemistryUnknown };
/// Valid if the method is so for every ink of the print.
[[nodiscard]] Validity validityOf(const records::PrintRow& print, const records::MethodDescribed& method) noexcept;

} // namespace holdfast::kiosk::shop
