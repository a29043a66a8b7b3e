#pragma once

#include "analytics/statistics/fault.hpp"

#include <cmath>
#include <cstdint>
#include <limits>
#include <optional>

namespace holdfast::analytics::statistics {

/// The largest count this room takes, 10¹²: beyond it a double no longer tells neighbouring weights apart.
inline constexpr std::int64_t kLargestCount = 1'000'000'000'000;

/// The most weeks an age or a delay may have, a hundred years.
inline constexpr std::int64_t kMostWeeks = 5'200;

/// A table whose chance is no more than this many times the one seen counts as one at least as unlikely: the rounding
/// of the chances themselves must not tell two equal ones apart (the factor of R’s fisher.test and binom.test).
inline constexpr double kTie = 1.0 + 1e-7;

/// "No limit on this side" of a ratio that has no upper one.
inline constexpr double kUnbounded = std::numeric_limits<double>::infinity();

[[nodiscard]] constexpr bool isCount(std::int64_t count) noexcept {
    return count >= 0 && count <= kLargestCount;
}

/// A probability strictly between 0 and 1; NaN is none.
[[nodiscard]] constexpr bool isInnerProbability(double p) noexcept {
    return p > 0.0 && p < 1.0;
}

/// A probability, ends included; NaN is none.
[[nodiscard]] constexpr bool isProbability(double p) noexcept {
    return p >= 0.0 && p <= 1.0;
}

/// What is wrong with `hits` of `of`, if anything.
[[nodiscard]] constexpr std::optional<StatisticsFault> faultOfShare(std::int64_t hits, std::int64_t of) noexcept {
    if (!isCount(hits) || !isCount(of) || hits > of)
        return StatisticsFault::OutOfDomain;
    if (of == 0)
        return StatisticsFault::NoValues;
    return std::nullopt;
}

} // namespace holdfast::analytics::statistics
