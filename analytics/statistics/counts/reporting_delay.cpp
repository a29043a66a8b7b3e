#include "analytics/statistics/counts/reporting_delay.hpp"

#include "analytics/statistics/counts/count_domain.hpp"

#include <algorithm>
#include <cmath>

namespace holdfast::analytics::statistics {
namespace {

struct Weeks {
    std::vector<double> came;       ///< n_s
    std::vector<double> observable; ///< N_s
    std::int64_t complaints = 0;
};

tl::expected<Weeks, StatisticsFault> weeksOf(std::span<const DelayCount> counts) {
    Weeks weeks;
    std::int64_t longest = 0;
    for (const auto& count : counts) {
        if (count.delay < 0 || count.age < count.delay || count.age > kMostWeeks || !isCount(count.complaints) ||
            !isCount(weeks.complaints += count.complaints))
            return tl::unexpected(StatisticsFault::OutOfDomain);
        if (count.complaints > 0)
            longest = std::max(longest, count.delay);
    }
    if (weeks.complaints == 0)
        return tl::unexpected(StatisticsFault::NoValues);
    const auto size = static_cast<std::size_t>(longest) + 1;
    weeks.came.assign(size, 0.0);
    weeks.observable.assign(size + 1, 0.0);
    for (const auto& count : counts) { // observable in the weeks delay … age
        if (count.complaints == 0)
            continue;
        const auto pieces = static_cast<double>(count.complaints);
        weeks.came[static_cast<std::size_t>(count.delay)] += pieces;
        weeks.observable[static_cast<std::size_t>(count.delay)] += pieces;
        weeks.observable[std::min(static_cast<std::size_t>(count.age) + 1, size)] -= pieces;
    }
    for (std::size_t s = 1; s < size; ++s)
        weeks.observable[s] += weeks.observable[s - 1];
    return weeks;
}

} // namespace

tl::expected<DelayCurve, StatisticsFault> delayCurve(std::span<const DelayCount> counts) {
    const auto weeks = weeksOf(counts);
    if (!weeks)
        return tl::unexpected(weeks.error());
    const std::size_t size = weeks->came.size();
    DelayCurve curve;
    curve.complaints = weeks->complaints;
    curve.arrived.assign(size, 1.0);
    curve.standardError.assign(size, 0.0);
    double greenwood = 0.0;
    for (std::size_t s = size - 1; s > 0; --s) {
        const double came = weeks->came[s];
        const double observable = weeks->observable[s];
        double share = curve.arrived[s];
        if (came > 0.0) {
            share *= 1.0 - came / observable;
            curve.unstable = curve.unstable || came >= observable;
            greenwood += came < observable ? came / (observable * (observable - came)) : 0.0;
        }
        curve.arrived[s - 1] = share;
        curve.standardError[s - 1] = share * std::sqrt(greenwood);
    }
    return curve;
}

double DelayCurve::arrivedBy(std::int64_t weeks) const noexcept {
    if (weeks < 0 || arrived.empty())
        return weeks < 0 ? 0.0 : 1.0;
    return static_cast<std::size_t>(weeks) < arrived.size() ? arrived[static_cast<std::size_t>(weeks)] : 1.0;
}

} // namespace holdfast::analytics::statistics
