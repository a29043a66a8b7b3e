#include "analytics/statistics/summary/mean_difference.hpp"

#include <boost/math/distributions/students_t.hpp>

#include <algorithm>
#include <cmath>

namespace holdfast::analytics::statistics {

tl::expected<MeanDifference, StatisticsFault> compareMeans(const SampleMean& first, const SampleMean& second) {
    if (first.count < 2 || second.count < 2) {
        return tl::unexpected{StatisticsFault::TooFewValues};
    }
    const double one = first.variance / static_cast<double>(first.count);
    const double other = second.variance / static_cast<double>(second.count);
    MeanDifference result;
    result.difference = first.mean - second.mean;
    if (!std::isfinite(result.difference) || !std::isfinite(one + other)) {
        return tl::unexpected{StatisticsFault::NotFinite};
    }
    if (first.variance < 0.0 || second.variance < 0.0) {
        return tl::unexpected{StatisticsFault::OutOfDomain};
    }
    result.standardError = std::sqrt(one + other);
    const double share = one / (one + other); // of the variance; the degrees follow without squares of it
    if (!(result.standardError > 0.0)) {
        result.p = result.difference == 0.0 ? 1.0 : 0.0;
        return result;
    }
    result.degrees = 1.0 / (share * share / static_cast<double>(first.count - 1) +
                            (1.0 - share) * (1.0 - share) / static_cast<double>(second.count - 1));
    const double t = std::min(std::abs(result.difference) / result.standardError, 1e100);
    result.p = 2.0 * boost::math::cdf(boost::math::complement(boost::math::students_t{result.degrees}, t));
    return result;
}

} // namespace holdfast::analytics::statistics
