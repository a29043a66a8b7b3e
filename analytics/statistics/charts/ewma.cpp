#include "analytics/statistics/charts/ewma.hpp"

#include <algorithm>
#include <cmath>

namespace holdfast::analytics::statistics {

tl::expected<EwmaTrack, StatisticsFault> ewma(std::span<const double> values, double center, double sigma,
                                              const EwmaRules& rules) {
    if (values.empty()) {
        return tl::unexpected{StatisticsFault::NoValues};
    }
    if (!std::isfinite(center) ||
        !std::all_of(values.begin(), values.end(), [](double value) { return std::isfinite(value); })) {
        return tl::unexpected{StatisticsFault::NotFinite};
    }
    const bool rulesHold = rules.lambda > 0.0 && rules.lambda <= 1.0 && rules.width > 0.0;
    const double settled = rules.width * sigma * std::sqrt(rules.lambda / (2.0 - rules.lambda));
    if (!rulesHold || !(sigma >= 0.0) || !std::isfinite(settled)) {
        return tl::unexpected{StatisticsFault::OutOfDomain};
    }
    EwmaTrack track;
    track.center = center;
    track.values.reserve(values.size());
    track.halfWidths.reserve(values.size());
    const double kept = (1.0 - rules.lambda) * (1.0 - rules.lambda);
    double remaining = 1.0;
    double average = center;
    for (const double value : values) {
        average = rules.lambda * value + (1.0 - rules.lambda) * average;
        remaining *= kept;
        const double half = rules.growingLimits ? settled * std::sqrt(1.0 - remaining) : settled;
        if (sigma > 0.0 && std::abs(average - center) > half) {
            track.outside.push_back(track.values.size());
        }
        track.values.push_back(average);
        track.halfWidths.push_back(half);
    }
    return track;
}

} // namespace holdfast::analytics::statistics
