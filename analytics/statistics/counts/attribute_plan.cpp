#include "analytics/statistics/counts/attribute_plan.hpp"

#include "analytics/statistics/counts/count_domain.hpp"

#include <boost/math/distributions/beta.hpp>
#include <boost/math/distributions/chi_squared.hpp>
#include <boost/math/special_functions/beta.hpp>
#include <boost/math/special_functions/gamma.hpp>

#include <cmath>
#include <exception>

namespace holdfast::analytics::statistics {
namespace {

std::optional<StatisticsFault> faultOf(AttributePlan plan) noexcept {
    if (!isCount(plan.size) || !isCount(plan.accept))
        return StatisticsFault::OutOfDomain;
    if (plan.size == 0)
        return StatisticsFault::NoValues;
    return std::nullopt;
}

/// P(X ≤ k) of a binomial, by the incomplete beta function: exact in both tails and fast for any n.
double binomialAtMost(std::int64_t k, std::int64_t n, double p) {
    if (k >= n || p <= 0.0)
        return 1.0;
    if (p >= 1.0)
        return 0.0;
    return boost::math::ibetac(static_cast<double>(k) + 1.0, static_cast<double>(n - k), p);
}

template <typename Figure>
tl::expected<double, StatisticsFault> guarded(Figure&& figure) noexcept {
    try {
        const double value = figure();
        if (std::isfinite(value))
            return value;
    } catch (const std::exception&) {
        return tl::unexpected(StatisticsFault::NoConvergence);
    }
    return tl::unexpected(StatisticsFault::NoConvergence);
}

} // namespace

tl::expected<double, StatisticsFault> acceptanceBinomial(AttributePlan plan, double bad) noexcept {
    if (const auto fault = faultOf(plan))
        return tl::unexpected(*fault);
    if (!isProbability(bad))
        return tl::unexpected(StatisticsFault::OutOfDomain);
    return guarded([&] { return binomialAtMost(plan.accept, plan.size, bad); });
}

tl::expected<double, StatisticsFault> acceptancePoisson(AttributePlan plan, double badPerPiece) noexcept {
    if (const auto fault = faultOf(plan))
        return tl::unexpected(*fault);
    if (!(badPerPiece >= 0.0) || !std::isfinite(badPerPiece))
        return tl::unexpected(StatisticsFault::OutOfDomain);
    const double mean = static_cast<double>(plan.size) * badPerPiece;
    if (!std::isfinite(mean))
        return tl::unexpected(StatisticsFault::OutOfDomain);
    return guarded([&] { return boost::math::gamma_q(static_cast<double>(plan.accept) + 1.0, mean); });
}

tl::expected<double, StatisticsFault> badShareAccepted(AttributePlan plan, double acceptance) noexcept {
    if (const auto fault = faultOf(plan))
        return tl::unexpected(*fault);
    if (!isInnerProbability(acceptance) || plan.accept >= plan.size)
        return tl::unexpected(StatisticsFault::OutOfDomain);
    const auto k = static_cast<double>(plan.accept);
    const auto n = static_cast<double>(plan.size);
    return guarded([&] {
        const boost::math::beta_distribution<> beta(k + 1.0, n - k);
        return boost::math::quantile(boost::math::complement(beta, acceptance));
    });
}

tl::expected<double, StatisticsFault> poissonMeanAccepted(std::int64_t accept, double acceptance) noexcept {
    if (!isCount(accept) || !isInnerProbability(acceptance))
        return tl::unexpected(StatisticsFault::OutOfDomain);
    return guarded([&] {
        const boost::math::chi_squared_distribution<> chi(2.0 * static_cast<double>(accept) + 2.0);
        return boost::math::quantile(boost::math::complement(chi, acceptance)) / 2.0;
    });
}

tl::expected<std::int64_t, StatisticsFault> demonstrationSize(double good, double confidence,
                                                              std::int64_t failures) noexcept {
    if (!isInnerProbability(good) || !isInnerProbability(confidence) || !isCount(failures))
        return tl::unexpected(StatisticsFault::OutOfDomain);
    const double risk = 1.0 - confidence;
    // (1 − 0.8)/1 and its like are not exact in binary: a chance equal to the risk but for the last bits is enough.
    const auto enough = [&](std::int64_t n) {
        return n > failures && binomialAtMost(failures, n, 1.0 - good) <= risk * (1.0 + 1e-12);
    };
    try {
        std::int64_t high = failures + 1;
        while (!enough(high)) {
            if (high > kLargestCount / 2)
                return tl::unexpected(StatisticsFault::OutOfDomain);
            high *= 2;
        }
        std::int64_t low = failures;
        while (high - low > 1) {
            const std::int64_t middle = low + (high - low) / 2;
            (enough(middle) ? high : low) = middle;
        }
        return high;
    } catch (const std::exception&) {
        return tl::unexpected(StatisticsFault::NoConvergence);
    }
}

} // namespace holdfast::analytics::statistics
