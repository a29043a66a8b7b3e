#include "analytics/metrology/conformance.hpp"

#include <boost/math/distributions/normal.hpp>

#include <cmath>
#include <limits>

namespace holdfast::analytics {
namespace {

/// Φ(high) − Φ(low), taken in the tail where both lie so that small chances keep their digits. Ends may be infinite.
double normalBetween(double low, double high) noexcept {
    const boost::math::normal_distribution<double> standard;
    const auto upTo = [&](double x) { return std::isinf(x) ? (x > 0 ? 1.0 : 0.0) : boost::math::cdf(standard, x); };
    return low > 0 ? upTo(-low) - upTo(-high) : upTo(high) - upTo(low);
}

bool areSound(const Limits& limits) noexcept {
    const bool finite = (!limits.lower || limits.lower->isFinite()) && (!limits.upper || limits.upper->isFinite());
    return finite && (!limits.lower || !limits.upper || *limits.lower <= *limits.upper);
}

bool meets(Temperature value, const Limits& limits) noexcept {
    return (!limits.lower || atLeast(value, *limits.lower)) && (!limits.upper || atMost(value, *limits.upper));
}

} // namespace

double GuardSetting::z() const noexcept {
    const double alpha = risk.fraction();
    if (!(alpha > 0.0 && alpha < 0.5)) {
        return std::numeric_limits<double>::infinity();
    }
    return boost::math::quantile(boost::math::complement(boost::math::normal_distribution<double>{}, alpha));
}

bool isAllowedRisk(Probability risk) noexcept {
    constexpr double kRounding = 1e-12;
    return risk.fraction() >= 0.001 - kRounding && risk.fraction() <= 0.2 + kRounding;
}

std::optional<Probability> conformanceProbability(Temperature value, TemperatureDifference u,
                                                  const Limits& limits) noexcept {
    if (!value.isFinite() || !u.isFinite() || u < TemperatureDifference{} || !areSound(limits)) {
        return std::nullopt;
    }
    if (u == TemperatureDifference{}) {
        return Probability::fromFraction(meets(value, limits) ? 1.0 : 0.0);
    }
    constexpr double kOpen = std::numeric_limits<double>::infinity();
    const double low = limits.lower ? (*limits.lower - value) / u : -kOpen;
    const double high = limits.upper ? (*limits.upper - value) / u : kOpen;
    return Probability::fromFraction(normalBetween(low, high));
}

std::optional<Limits> acceptanceLimits(const Limits& limits, const Guards& guards) noexcept {
    Limits acceptance;
    if (limits.lower) {
        acceptance.lower = *limits.lower + guards.lower;
    }
    if (limits.upper) {
        acceptance.upper = *limits.upper - guards.upper;
    }
    const bool finite =
        (!limits.lower || acceptance.lower->isFinite()) && (!limits.upper || acceptance.upper->isFinite());
    const bool empty = limits.lower && limits.upper && !atMost(*acceptance.lower, *acceptance.upper);
    return finite && !empty ? std::optional{acceptance} : std::nullopt;
}

Conformity decide(Temperature value, const Limits& limits, const Guards& guards) noexcept {
    if (!value.isFinite()) {
        return Conformity::undecided;
    }
    if ((limits.lower && atMost(value, *limits.lower - guards.lower)) ||
        (limits.upper && atLeast(value, *limits.upper + guards.upper))) {
        return Conformity::nonConforming;
    }
    const auto acceptance = acceptanceLimits(limits, guards);
    return acceptance && meets(value, *acceptance) ? Conformity::conforming : Conformity::undecided;
}

} // namespace holdfast::analytics
