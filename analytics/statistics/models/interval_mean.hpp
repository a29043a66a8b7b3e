#pragma once

#include "analytics/statistics/fault.hpp"

#include <tl/expected.hpp>

#include <cstddef>
#include <limits>
#include <optional>
#include <vector>

namespace holdfast::analytics::statistics {

/// A value known only to lie between two ends, which is what a strip says: never its middle. An end may be infinite.
struct CensoredValue final {
    double lower = 0.0;
    double upper = 0.0;
    double weight = 1.0; ///< how many such values; 0 and more

    [[nodiscard]] static constexpr CensoredValue exact(double value) noexcept { return {value, value, 1.0}; }
    [[nodiscard]] static constexpr CensoredValue between(double low, double high) noexcept { return {low, high, 1.0}; }
    [[nodiscard]] static constexpr CensoredValue below(double high) noexcept {
        return {-std::numeric_limits<double>::infinity(), high, 1.0};
    }
    [[nodiscard]] static constexpr CensoredValue above(double low) noexcept {
        return {low, std::numeric_limits<double>::infinity(), 1.0};
    }
};

struct IntervalMean final {
    double mean = 0.0;
    double standardDeviation = 0.0; ///< by maximum likelihood: of n exact values with n, not n − 1, below the root
    double standardError = 0.0;     ///< of the mean, from the observed information
    double lower = 0.0;             ///< of the mean, by profile likelihood
    double upper = 0.0;
    double level = 0.95;
    double logLikelihood = 0.0; ///< density for exact values, chance for intervals, as survival analysis counts it
    double openShare = 0.0;     ///< of the weight, open at one end or both
};

/// Mean and spread of a normal law of which some values are known exactly, some only within an interval, some only from
/// one side; any unit. Maximum likelihood (Kalbfleisch and Prentice, The Statistical Analysis of Failure Time Data, 2nd
/// ed., 3.2), by Newton's method in (mean/sd, 1/sd), in which the likelihood is concave (Burridge, JRSS B 43:41, 1981).
///
/// Limits: all means with 2(l̂ − l(mean, sd fitted to it)) ≤ χ²₁: profile likelihood, not the mean ± z·error, since few
/// wide intervals make the likelihood skew and the plain limits too narrow (Meeker and Escobar, Statistical Methods for
/// Reliability Data, 8.3).
///
/// No mean if more than a third of the weight is open at one end (decisions 6): TooManyOpen. NoSpread if one value lies
/// in every interval: the spread could be nothing (commonRange says where that value lies). Values open at both ends
/// count as open and say nothing else. OutOfDomain: ends crossed, an end at the wrong infinity, weights below 0; at
/// least two values. n·log n, then linear in the number of distinct intervals a step.
[[nodiscard]] tl::expected<IntervalMean, StatisticsFault> intervalMean(const std::vector<CensoredValue>& values,
                                                                       double level = 0.95);

struct CommonRange final {
    double lower = 0.0;
    double upper = 0.0; ///< either end may be infinite
};

/// The range that lies in every interval, none if there is no such range, no values, or ends that are no numbers.
[[nodiscard]] std::optional<CommonRange> commonRange(const std::vector<CensoredValue>& values);

} // namespace holdfast::analytics::statistics
