#include "analytics/statistics/summary/grubbs.hpp"

#include "analytics/statistics/summary/moments.hpp"

#include <algorithm>
#include <boost/math/distributions/students_t.hpp>
#include <cmath>
#include <exception>

namespace holdfast::analytics::statistics {

tl::expected<double, StatisticsFault> grubbsCritical(std::size_t count, double alpha, OutlierSide side) {
    if (count < 3) {
        return tl::unexpected{StatisticsFault::TooFewValues};
    }
    if (!(alpha > 0.0 && alpha < 1.0)) {
        return tl::unexpected{StatisticsFault::OutOfDomain};
    }
    const auto n = static_cast<double>(count);
    const double tail = alpha / (side == OutlierSide::Either ? 2.0 * n : n);
    try {
        const boost::math::students_t student{n - 2.0};
        const double t = boost::math::quantile(boost::math::complement(student, tail));
        const double critical = (n - 1.0) / std::sqrt(n) / std::sqrt((n - 2.0) / (t * t) + 1.0);
        if (std::isfinite(critical)) {
            return critical;
        }
    } catch (const std::exception&) {
        return tl::unexpected{StatisticsFault::NoConvergence};
    }
    return tl::unexpected{StatisticsFault::OutOfDomain};
}

tl::expected<GrubbsTest, StatisticsFault> grubbs(std::span<const double> values, double alpha, OutlierSide side) {
    const auto of = moments(values);
    if (!of) {
        return tl::unexpected{of.error()};
    }
    const auto critical = grubbsCritical(values.size(), alpha, side);
    if (!critical) {
        return tl::unexpected{critical.error()};
    }
    if (!(*of->sd > 0.0)) {
        return tl::unexpected{StatisticsFault::NoSpread};
    }
    const bool largest =
        side == OutlierSide::Largest || (side == OutlierSide::Either && of->max - of->mean >= of->mean - of->min);
    const double suspect = largest ? of->max : of->min;
    GrubbsTest test;
    test.suspect = static_cast<std::size_t>(std::find(values.begin(), values.end(), suspect) - values.begin());
    test.statistic = std::abs(suspect - of->mean) / *of->sd;
    test.critical = *critical;
    test.outlier = test.statistic > test.critical;
    return test;
}

} // namespace holdfast::analytics::statistics
