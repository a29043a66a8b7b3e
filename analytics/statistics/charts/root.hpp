#pragma once

#include <boost/math/tools/toms748_solve.hpp>
#include <cmath>
#include <cstdint>
#include <exception>
#include <optional>

namespace holdfast::analytics::statistics {

/// Root of a rising or falling function within [low, high]; absent if it has the same sign at both ends or does not
/// settle. Alefeld, Potra and Shi, algorithm 748, ACM Trans. Math. Softw. 21 (1995).
template <typename Function>
std::optional<double> rootBetween(Function function, double low, double high) {
    const double atLow = function(low);
    const double atHigh = function(high);
    if (atLow == 0.0) {
        return low;
    }
    if (atHigh == 0.0) {
        return high;
    }
    if (!(atLow * atHigh < 0.0) || !std::isfinite(atLow) || !std::isfinite(atHigh)) {
        return std::nullopt;
    }
    try {
        std::uintmax_t steps = 200;
        const auto bracket = boost::math::tools::toms748_solve(function, low, high, atLow, atHigh,
                                                               boost::math::tools::eps_tolerance<double>{45}, steps);
        const double root = 0.5 * (bracket.first + bracket.second);
        return steps < 200 && std::isfinite(root) ? std::optional{root} : std::nullopt;
    } catch (const std::exception&) {
        return std::nullopt;
    }
}

/// Root of a rising function anywhere: the bracket is doubled around 0 until it holds the root.
template <typename Function>
std::optional<double> rootOfRising(Function function) {
    double low = -1.0;
    double high = 1.0;
    while (function(low) > 0.0 && low > -1e9) {
        low *= 2.0;
    }
    while (function(high) < 0.0 && high < 1e9) {
        high *= 2.0;
    }
    return rootBetween(function, low, high);
}

} // namespace holdfast::analytics::statistics
