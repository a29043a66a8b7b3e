#include "analytics/statistics/counts/mantel_haenszel.hpp"

#include <boost/math/distributions/normal.hpp>

#include <algorithm>
#include <cmath>

namespace holdfast::analytics::statistics {
namespace {

struct OddsSums {
    double excess = 0.0;   ///< Σ(a − E)
    double variance = 0.0; ///< ΣV under no association
    double r = 0.0;        ///< Σ ad/n
    double s = 0.0;        ///< Σ bc/n
    double pr = 0.0;
    double psqr = 0.0;
    double qs = 0.0;
    std::size_t used = 0;
};

void add(OddsSums& sums, const FourfoldTable& table) noexcept {
    const auto a = static_cast<double>(table.failedWith);
    const auto b = static_cast<double>(table.passedWith);
    const auto c = static_cast<double>(table.failedWithout);
    const auto d = static_cast<double>(table.passedWithout);
    const double n = a + b + c + d;
    if (n < 2.0)
        return;
    const double p = (a + d) / n;
    const double q = (b + c) / n;
    const double r = a * d / n;
    const double s = b * c / n;
    sums.excess += a - (a + b) * (a + c) / n;
    sums.variance += (a + b) / n * ((c + d) / n) * (a + c) * (b + d) / (n - 1.0);
    sums.r += r;
    sums.s += s;
    sums.pr += p * r;
    sums.psqr += p * s + q * r;
    sums.qs += q * s;
    ++sums.used;
}

OddsRatio oddsOf(const OddsSums& sums, double z) noexcept {
    if (sums.s <= 0.0)
        return {sums.r > 0.0 ? std::optional{kUnbounded} : std::nullopt, 0.0, kUnbounded};
    if (sums.r <= 0.0)
        return {0.0, 0.0, kUnbounded};
    const double ratio = sums.r / sums.s;
    const double variance =
        sums.pr / (2.0 * sums.r * sums.r) + sums.psqr / (2.0 * sums.r * sums.s) + sums.qs / (2.0 * sums.s * sums.s);
    const double half = z * std::sqrt(variance);
    return {ratio, ratio * std::exp(-half), ratio * std::exp(half)};
}

} // namespace

tl::expected<CommonOdds, StatisticsFault> mantelHaenszel(std::span<const FourfoldTable> strata,
                                                         double confidence) noexcept {
    if (!isInnerProbability(confidence))
        return tl::unexpected(StatisticsFault::OutOfDomain);
    OddsSums sums;
    for (const auto& table : strata) {
        if (faultOf(table) == StatisticsFault::OutOfDomain)
            return tl::unexpected(StatisticsFault::OutOfDomain);
        add(sums, table);
    }
    if (sums.used == 0)
        return tl::unexpected(StatisticsFault::NoValues);
    if (!(sums.variance > 0.0))
        return tl::unexpected(StatisticsFault::NoSpread);
    CommonOdds common;
    common.odds = oddsOf(sums, -boost::math::quantile(boost::math::normal_distribution<>(), (1.0 - confidence) / 2.0));
    const double distance = std::abs(sums.excess);
    const double corrected = std::max(0.0, distance - 0.5);
    common.chiSquare = distance * distance / sums.variance;
    common.correctedChi = corrected * corrected / sums.variance;
    common.twoSided = std::erfc(std::sqrt(common.chiSquare / 2.0));
    common.correctedP = std::erfc(std::sqrt(common.correctedChi / 2.0));
    common.strataUsed = sums.used;
    return common;
}

} // namespace holdfast::analytics::statistics
