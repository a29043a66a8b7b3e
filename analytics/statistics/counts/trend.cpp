#include "analytics/statistics/counts/trend.hpp"

#include "analytics/statistics/counts/count_domain.hpp"

#include <algorithm>
#include <cmath>

namespace holdfast::analytics::statistics {
namespace {

struct TrendTotals {
    double hits = 0.0;
    double of = 0.0;
    double meanScore = 0.0;
};

tl::expected<TrendTotals, StatisticsFault> trendTotals(std::span<const CountOf> groups,
                                                       std::span<const double> scores) {
    if (groups.size() != scores.size())
        return tl::unexpected(StatisticsFault::UnequalLengths);
    TrendTotals totals;
    for (std::size_t i = 0; i < groups.size(); ++i) {
        if (!std::isfinite(scores[i]))
            return tl::unexpected(StatisticsFault::NotFinite);
        if (!isCount(groups[i].hits) || !isCount(groups[i].of) || groups[i].hits > groups[i].of)
            return tl::unexpected(StatisticsFault::OutOfDomain);
        const auto n = static_cast<double>(groups[i].of);
        totals.hits += static_cast<double>(groups[i].hits);
        totals.of += n;
        if (n > 0.0)
            totals.meanScore += n / totals.of * (scores[i] - totals.meanScore);
    }
    if (totals.of == 0.0)
        return tl::unexpected(StatisticsFault::NoValues);
    if (!std::isfinite(totals.meanScore))
        return tl::unexpected(StatisticsFault::OutOfDomain);
    return totals;
}

} // namespace

tl::expected<TrendTest, StatisticsFault> cochranArmitage(std::span<const CountOf> groups,
                                                         std::span<const double> scores) noexcept {
    const auto totals = trendTotals(groups, scores);
    if (!totals)
        return tl::unexpected(totals.error());
    const double share = totals->hits / totals->of;
    double sum = 0.0;
    double squares = 0.0;
    for (std::size_t i = 0; i < groups.size(); ++i) {
        const auto n = static_cast<double>(groups[i].of);
        const double distance = scores[i] - totals->meanScore;
        sum += distance * (static_cast<double>(groups[i].hits) - n * share);
        squares += n * distance * distance;
    }
    const double variance = share * (1.0 - share) * squares;
    if (!(variance > 0.0))
        return tl::unexpected(StatisticsFault::NoSpread);
    TrendTest test;
    test.slope = sum / squares;
    test.z = sum / std::sqrt(variance);
    test.chiSquare = test.z * test.z;
    if (!std::isfinite(test.chiSquare) || !std::isfinite(test.slope))
        return tl::unexpected(StatisticsFault::OutOfDomain);
    test.twoSided = std::erfc(std::abs(test.z) / std::sqrt(2.0));
    return test;
}

} // namespace holdfast::analytics::statistics
