#include "analytics/statistics/counts/rate_ratio.hpp"

#include "analytics/statistics/counts/count_domain.hpp"
#include "analytics/statistics/counts/proportion.hpp"

#include <boost/math/distributions/binomial.hpp>
#include <boost/math/distributions/normal.hpp>
#include <boost/math/distributions/poisson.hpp>

#include <algorithm>
#include <cmath>
#include <exception>

namespace holdfast::analytics::statistics {
namespace {

constexpr double kMostExactEvents = 1e3; ///< expected events above which the power is taken from the normal law

bool isExposure(double exposure) noexcept {
    return exposure > 0.0 && std::isfinite(exposure);
}

/// Sum of the chances of all counts no likelier than x, of n at `share`.
double asRare(std::int64_t x, std::int64_t n, double share) {
    const boost::math::binomial_distribution<> law(static_cast<double>(n), share);
    const auto chance = [&](std::int64_t k) { return boost::math::pdf(law, static_cast<double>(k)); };
    const double limit = chance(x) * kTie;
    const double middle = static_cast<double>(n) * share;
    const bool above = static_cast<double>(x) > middle;
    if (static_cast<double>(x) == middle)
        return 1.0;
    // beyond the middle on the other side chances fall outwards: the first that is as rare
    std::int64_t low = above ? -1 : static_cast<std::int64_t>(std::ceil(middle)) - 1;
    std::int64_t high = above ? static_cast<std::int64_t>(std::floor(middle)) + 1 : n + 1;
    while (high - low > 1) {
        const std::int64_t k = low + (high - low) / 2;
        if ((chance(k) <= limit) == above)
            low = k;
        else
            high = k;
    }
    const double own = above ? boost::math::cdf(boost::math::complement(law, static_cast<double>(x - 1)))
                             : boost::math::cdf(law, static_cast<double>(x));
    const double other =
        above ? (low >= 0 ? boost::math::cdf(law, static_cast<double>(low)) : 0.0)
              : (high <= n ? boost::math::cdf(boost::math::complement(law, static_cast<double>(high - 1))) : 0.0);
    return std::min(1.0, own + other);
}

RateRatio testsOf(std::int64_t x, std::int64_t n, double share) {
    RateRatio result;
    const boost::math::binomial_distribution<> law(static_cast<double>(n), share);
    result.less = boost::math::cdf(law, static_cast<double>(x));
    result.greater = x > 0 ? boost::math::cdf(boost::math::complement(law, static_cast<double>(x - 1))) : 1.0;
    result.twoSided = asRare(x, n, share);
    return result;
}

/// Largest second count of n that the test still calls lower, −1 for none.
std::int64_t criticalCount(std::int64_t n, double share, double risk) {
    const boost::math::binomial_distribution<> law(static_cast<double>(n), share);
    std::int64_t critical = -1;
    std::int64_t tooMany = n;
    while (tooMany - critical > 1) {
        const std::int64_t middle = critical + (tooMany - critical) / 2;
        (boost::math::cdf(law, static_cast<double>(middle)) <= risk ? critical : tooMany) = middle;
    }
    return critical;
}

/// Normal law of the difference of log rates, for many events.
double manyEventsPower(double expectedFirst, double expectedSecond, double share, double risk) {
    if (expectedFirst <= 0.0 || expectedSecond <= 0.0)
        return expectedFirst > 0.0 ? 1.0 : 0.0;
    const double logRatio = std::log(expectedFirst / (1.0 - share)) - std::log(expectedSecond / share);
    const boost::math::normal_distribution<> normal;
    const double z = boost::math::quantile(boost::math::complement(normal, risk));
    return boost::math::cdf(normal, logRatio / std::sqrt(1.0 / expectedFirst + 1.0 / expectedSecond) - z);
}

double powerOf(double expectedFirst, double expectedSecond, double share, double risk) {
    const double mean = expectedFirst + expectedSecond;
    const double trueShare = expectedSecond / mean;
    const boost::math::poisson_distribution<> totals(mean);
    const double width = 8.0 * std::sqrt(mean) + 10.0;
    const auto first = static_cast<std::int64_t>(std::max(1.0, std::floor(mean - width)));
    const auto last = static_cast<std::int64_t>(std::ceil(mean + width));
    double power = 0.0;
    for (std::int64_t n = first; n <= last; ++n) {
        const std::int64_t critical = criticalCount(n, share, risk);
        if (critical < 0)
            continue;
        const boost::math::binomial_distribution<> law(static_cast<double>(n), trueShare);
        power +=
            boost::math::pdf(totals, static_cast<double>(n)) * boost::math::cdf(law, static_cast<double>(critical));
    }
    return std::clamp(power, 0.0, 1.0);
}

} // namespace

tl::expected<RateRatio, StatisticsFault> compareRates(EventCount first, EventCount second, double confidence) noexcept {
    if (!isCount(first.events) || !isCount(second.events) || !isCount(first.events + second.events) ||
        !isExposure(first.exposure) || !isExposure(second.exposure) || !isInnerProbability(confidence))
        return tl::unexpected(StatisticsFault::OutOfDomain);
    const double share = first.exposure / (first.exposure + second.exposure);
    if (!isInnerProbability(share))
        return tl::unexpected(StatisticsFault::OutOfDomain);
    const std::int64_t n = first.events + second.events;
    if (n == 0)
        return RateRatio{std::nullopt, 0.0, kUnbounded, 1.0, 1.0, 1.0};
    const auto limits = clopperPearson({first.events, n}, confidence);
    if (!limits)
        return tl::unexpected(limits.error());
    try {
        RateRatio result = testsOf(first.events, n, share);
        const double exposures = second.exposure / first.exposure;
        const auto odds = [&](double p) { return p < 1.0 ? p / (1.0 - p) * exposures : kUnbounded; };
        result.ratio = second.events > 0
                           ? static_cast<double>(first.events) / static_cast<double>(second.events) * exposures
                           : kUnbounded;
        result.lower = odds(limits->lower);
        result.upper = odds(limits->upper);
        return result;
    } catch (const std::exception&) {
        return tl::unexpected(StatisticsFault::NoConvergence);
    }
}

tl::expected<double, StatisticsFault> lowerRatePower(double expectedFirst, double exposureFirst, double expectedSecond,
                                                     double exposureSecond, double risk) noexcept {
    if (!(expectedFirst >= 0.0) || !(expectedSecond >= 0.0) || !std::isfinite(expectedFirst + expectedSecond) ||
        !isExposure(exposureFirst) || !isExposure(exposureSecond) || !isInnerProbability(risk))
        return tl::unexpected(StatisticsFault::OutOfDomain);
    const double share = exposureSecond / (exposureFirst + exposureSecond);
    if (!isInnerProbability(share))
        return tl::unexpected(StatisticsFault::OutOfDomain);
    if (expectedFirst + expectedSecond == 0.0)
        return 0.0;
    try {
        return expectedFirst + expectedSecond > kMostExactEvents
                   ? manyEventsPower(expectedFirst, expectedSecond, share, risk)
                   : powerOf(expectedFirst, expectedSecond, share, risk);
    } catch (const std::exception&) {
        return tl::unexpected(StatisticsFault::NoConvergence);
    }
}

} // namespace holdfast::analytics::statistics
