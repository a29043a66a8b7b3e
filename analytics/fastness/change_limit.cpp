#include "analytics/fastness/colour_direction.hpp"
#include "analytics/fastness/same.hpp"

#include <boost/math/distributions/students_t.hpp>

#include <algorithm>
#include <cmath>

namespace holdfast::analytics {
namespace {

Lab meanOf(const RepeatReadings& readings) noexcept {
    Lab sum;
    for (const auto& reading : readings)
        sum = {sum.l + reading.l, sum.a + reading.a, sum.b + reading.b};
    const auto n = static_cast<double>(readings.size());
    return {sum.l / n, sum.a / n, sum.b / n};
}

/// Σ|x − mean|² over one spot.
double scatterOf(const RepeatReadings& readings) noexcept {
    const Lab mean = meanOf(readings);
    double sum = 0.0;
    for (const auto& reading : readings)
        sum += square(reading.l - mean.l) + square(reading.a - mean.a) + square(reading.b - mean.b);
    return sum;
}

double quantileT(std::size_t freedoms, double risk) noexcept {
    const boost::math::students_t t(static_cast<double>(freedoms));
    return boost::math::quantile(boost::math::complement(t, risk / 2.0));
}

} // namespace

tl::expected<RepeatSpread, RepeatFault> repeatSpread(std::span<const RepeatReadings> spots) {
    RepeatSpread spread;
    double scatter = 0.0;
    for (const auto& readings : spots) {
        if (std::any_of(readings.begin(), readings.end(), [](const Lab& x) { return faultOf(x).has_value(); }))
            return tl::unexpected(RepeatFault::invalidColour);
        if (readings.size() < 2)
            continue;
        scatter += scatterOf(readings);
        spread.freedoms += readings.size() - 1;
    }
    if (spread.freedoms < kFewestFreedoms)
        return tl::unexpected(RepeatFault::tooFewRepeats);
    spread.total = std::sqrt(scatter / static_cast<double>(spread.freedoms));
    return spread;
}

tl::expected<double, RepeatFault> changeLimit(const ChangeLimitRequest& request) noexcept {
    const double risk = request.risk.fraction();
    if (!(risk >= 0.001 && risk <= 0.20))
        return tl::unexpected(RepeatFault::riskInvalid);
    if (request.spread.freedoms < kFewestFreedoms)
        return tl::unexpected(RepeatFault::tooFewRepeats);
    if (!std::isfinite(request.spread.total) || request.spread.total < 0.0 || !std::isfinite(request.step) ||
        request.step < 0.0)
        return tl::unexpected(RepeatFault::spreadInvalid);
    const double total = std::max(request.spread.total, request.step / 2.0);
    const auto n1 = static_cast<double>(std::max<std::size_t>(request.referenceReadings, 1));
    const auto n2 = static_cast<double>(std::max<std::size_t>(request.sampleReadings, 1));
    return quantileT(request.spread.freedoms, risk) * total * std::sqrt(1.0 / n1 + 1.0 / n2);
}

} // namespace holdfast::analytics
