#include "analytics/statistics/charts/tolerance.hpp"

#include "analytics/statistics/charts/non_central_t.hpp"
#include "analytics/statistics/charts/quadrature.hpp"
#include "analytics/statistics/charts/root.hpp"
#include "analytics/statistics/summary/moments.hpp"

#include <cmath>

namespace holdfast::analytics::statistics {

tl::expected<double, StatisticsFault> toleranceFactor(std::size_t count, const ToleranceAim& aim) {
    if (count < 2) {
        return tl::unexpected{StatisticsFault::TooFewValues};
    }
    if (!(aim.content >= 0.5 && aim.content < 1.0 && aim.confidence > 0.0 && aim.confidence < 1.0)) {
        return tl::unexpected{StatisticsFault::OutOfDomain};
    }
    const auto n = static_cast<double>(count);
    const double root = std::sqrt(n);
    const double noncentrality = normalQuantile(aim.content) * root;
    const auto factor =
        rootOfRising([&](double k) { return nonCentralTBelow(k * root, n - 1.0, noncentrality) - aim.confidence; });
    if (!factor) {
        return tl::unexpected{StatisticsFault::NoConvergence};
    }
    return *factor;
}

tl::expected<ToleranceBound, StatisticsFault> toleranceBound(std::span<const double> values, const ToleranceAim& aim) {
    const auto of = moments(values);
    if (!of) {
        return tl::unexpected{of.error()};
    }
    const auto factor = toleranceFactor(values.size(), aim);
    if (!factor) {
        return tl::unexpected{factor.error()};
    }
    ToleranceBound bound;
    bound.mean = of->mean;
    bound.sd = *of->sd;
    bound.factor = bound.sd > 0.0 ? *factor : 0.0;
    bound.bound = of->mean + (aim.side == BoundSide::Lower ? -1.0 : 1.0) * bound.factor * bound.sd;
    if (!(bound.sd > 0.0)) {
        bound.caveat = ToleranceCaveat::NoSpread;
    }
    if (!std::isfinite(bound.bound)) {
        return tl::unexpected{StatisticsFault::OutOfDomain};
    }
    return bound;
}

} // namespace holdfast::analytics::statistics
