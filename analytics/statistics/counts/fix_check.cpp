#include "analytics/statistics/counts/fix_check.hpp"

#include "analytics/statistics/counts/count_domain.hpp"

#include <algorithm>
#include <cmath>

namespace holdfast::analytics::statistics {
namespace {

bool inDomain(const FixQuestion& question) noexcept {
    return question.weeklyShipped >= 0.0 && std::isfinite(question.weeklyShipped) &&
           isInnerProbability(question.effect) && isInnerProbability(question.power) &&
           isInnerProbability(question.risk) && isInnerProbability(question.confidence) && question.horizon >= 0 &&
           question.horizon <= kMostWeeks;
}

bool inDomain(std::span<const ShippedWeek> weeks) noexcept {
    return std::all_of(weeks.begin(), weeks.end(), [](const ShippedWeek& week) {
        return week.age >= 0 && week.age <= kMostWeeks && week.shipped >= 0.0 && std::isfinite(week.shipped) &&
               isCount(week.complaints);
    });
}

double exposedIn(const DelayCurve& curve, std::span<const ShippedWeek> weeks, std::int64_t later) noexcept {
    double exposed = 0.0;
    for (const auto& week : weeks)
        exposed += week.shipped * curve.arrivedBy(week.age + later);
    return exposed;
}

std::int64_t complaintsOf(std::span<const ShippedWeek> weeks) noexcept {
    std::int64_t sum = 0;
    for (const auto& week : weeks)
        sum = std::min(kLargestCount + 1, sum + week.complaints);
    return sum;
}

} // namespace

tl::expected<FixCheck, StatisticsFault> checkFix(const DelayCurve& curve, std::span<const ShippedWeek> before,
                                                 std::span<const ShippedWeek> after, const FixQuestion& question) {
    if (!inDomain(question) || !inDomain(before) || !inDomain(after))
        return tl::unexpected(StatisticsFault::OutOfDomain);
    FixCheck check;
    check.exposedBefore = exposedIn(curve, before, 0);
    check.exposedAfter = exposedIn(curve, after, 0);
    if (!(check.exposedBefore > 0.0) || !(check.exposedAfter > 0.0))
        return tl::unexpected(StatisticsFault::NoValues);
    const std::int64_t complaints = complaintsOf(before);
    const auto ratio =
        compareRates({complaintsOf(after), check.exposedAfter}, {complaints, check.exposedBefore}, question.confidence);
    if (!ratio)
        return tl::unexpected(ratio.error());
    check.afterOverBefore = *ratio;
    const double rate = static_cast<double>(complaints) / check.exposedBefore;
    double going = 0.0; // exposure of what goes out from now on
    for (std::int64_t week = 0; week <= question.horizon && complaints > 0; ++week) {
        going += week > 0 ? question.weeklyShipped * curve.arrivedBy(week - 1) : 0.0;
        const double first = exposedIn(curve, before, week);
        const double second = exposedIn(curve, after, week) + going;
        const auto power =
            lowerRatePower(rate * first, first, question.effect * rate * second, second, question.risk / 2.0);
        if (!power)
            return tl::unexpected(power.error());
        if (week == 0)
            check.powerNow = *power;
        if (*power >= question.power) {
            check.weeksToShow = week;
            break;
        }
    }
    return check;
}

} // namespace holdfast::analytics::statistics
