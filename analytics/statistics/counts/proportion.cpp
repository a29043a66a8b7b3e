#include "analytics/statistics/counts/proportion.hpp"

#include "analytics/statistics/counts/count_domain.hpp"

#include <boost/math/distributions/beta.hpp>
#include <boost/math/distributions/normal.hpp>

#include <algorithm>
#include <cmath>
#include <exception>

namespace holdfast::analytics::statistics {
namespace {

/// What each end may miss: half of it on both sides, all of it on one.
double tailOf(double confidence, LimitSide side) noexcept {
    return side == LimitSide::Both ? (1.0 - confidence) / 2.0 : std::min(1.0 - confidence, 1.0 - 1e-15);
}

double betaQuantile(double a, double b, double p) {
    return boost::math::quantile(boost::math::beta_distribution<>(a, b), p);
}

double betaUpperQuantile(double a, double b, double tail) {
    return boost::math::quantile(boost::math::complement(boost::math::beta_distribution<>(a, b), tail));
}

std::optional<StatisticsFault> faultOf(CountOf count, double confidence) noexcept {
    if (!isInnerProbability(confidence))
        return StatisticsFault::OutOfDomain;
    return faultOfShare(count.hits, count.of);
}

} // namespace

tl::expected<ShareLimits, StatisticsFault> clopperPearson(CountOf count, double confidence, LimitSide side) noexcept {
    if (const auto fault = faultOf(count, confidence))
        return tl::unexpected(*fault);
    const auto k = static_cast<double>(count.hits);
    const auto n = static_cast<double>(count.of);
    const double tail = tailOf(confidence, side);
    ShareLimits limits;
    try {
        if (side != LimitSide::UpperOnly && count.hits > 0)
            limits.lower = betaQuantile(k, n - k + 1.0, tail);
        if (side != LimitSide::LowerOnly && count.hits < count.of)
            limits.upper = betaUpperQuantile(k + 1.0, n - k, tail);
    } catch (const std::exception&) {
        return tl::unexpected(StatisticsFault::NoConvergence);
    }
    return limits;
}

tl::expected<ShareLimits, StatisticsFault> wilson(CountOf count, double confidence, LimitSide side) noexcept {
    if (const auto fault = faultOf(count, confidence))
        return tl::unexpected(*fault);
    const auto k = static_cast<double>(count.hits);
    const auto n = static_cast<double>(count.of);
    const double tail = tailOf(confidence, side);
    const double z = -boost::math::quantile(boost::math::normal_distribution<>(), tail);
    const double share = k / n;
    const double middle = (share + z * z / (2.0 * n)) / (1.0 + z * z / n);
    const double half = z * std::sqrt(share * (1.0 - share) / n + z * z / (4.0 * n * n)) / (1.0 + z * z / n);
    ShareLimits limits;
    if (side != LimitSide::UpperOnly && count.hits > 0)
        limits.lower = std::clamp(middle - half, 0.0, 1.0);
    if (side != LimitSide::LowerOnly && count.hits < count.of)
        limits.upper = std::clamp(middle + half, 0.0, 1.0);
    return limits;
}

tl::expected<RateWithMissed, StatisticsFault> rateWithMissed(std::int64_t failed, std::int64_t read,
                                                             std::int64_t missed, double confidence) noexcept {
    if (!isCount(failed) || !isCount(read) || !isCount(missed) || failed > read)
        return tl::unexpected(StatisticsFault::OutOfDomain);
    const std::int64_t due = read + missed;
    const auto low = clopperPearson({failed, due}, confidence);
    if (!low)
        return tl::unexpected(low.error());
    const auto high = clopperPearson({failed + missed, due}, confidence);
    if (!high)
        return tl::unexpected(high.error());
    const auto n = static_cast<double>(due);
    return RateWithMissed{
        static_cast<double>(failed) / n, static_cast<double>(failed + missed) / n, {low->lower, high->upper}, due};
}

} // namespace holdfast::analytics::statistics
