#include "analytics/statistics/charts/cusum.hpp"

#include <algorithm>
#include <cmath>

namespace holdfast::analytics::statistics {
namespace {

/// One of the two sums.
struct Side final {
    double sum = 0.0;
    std::size_t since = 0;
    std::size_t points = 0; ///< in a row with a positive sum

    void add(double step, std::size_t at) {
        sum = std::max(0.0, sum + step);
        if (sum > 0.0) {
            since = points == 0 ? at : since;
            ++points;
        } else {
            points = 0;
        }
    }
};

} // namespace

tl::expected<CusumTrack, StatisticsFault> cusum(std::span<const double> values, const CusumRules& rules) {
    if (values.empty()) {
        return tl::unexpected{StatisticsFault::NoValues};
    }
    if (!std::isfinite(rules.target) ||
        !std::all_of(values.begin(), values.end(), [](double value) { return std::isfinite(value); })) {
        return tl::unexpected{StatisticsFault::NotFinite};
    }
    if (!(rules.k >= 0.0 && rules.h > 0.0 && rules.headStart >= 0.0 && rules.headStart <= rules.h) ||
        !std::isfinite(rules.k)) {
        return tl::unexpected{StatisticsFault::OutOfDomain};
    }
    CusumTrack track;
    track.high.reserve(values.size());
    track.low.reserve(values.size());
    Side high{rules.headStart, 0, 0};
    Side low{rules.headStart, 0, 0};
    for (std::size_t i = 0; i < values.size(); ++i) {
        const double above = values[i] - rules.target;
        high.add(above - rules.k, i);
        low.add(-above - rules.k, i);
        track.high.push_back(high.sum);
        track.low.push_back(low.sum);
        if (high.sum > rules.h) {
            const double mean = rules.target + rules.k + high.sum / static_cast<double>(high.points);
            track.alarms.push_back({i, SignalSide::Above, high.since, mean});
        }
        if (low.sum > rules.h) {
            const double mean = rules.target - rules.k - low.sum / static_cast<double>(low.points);
            track.alarms.push_back({i, SignalSide::Below, low.since, mean});
        }
        if (!std::isfinite(high.sum + low.sum)) {
            return tl::unexpected{StatisticsFault::OutOfDomain};
        }
    }
    return track;
}

tl::expected<CusumTrack, StatisticsFault> standardCusum(std::span<const double> values, double center, double sigma,
                                                        double k, double h) {
    if (!(sigma > 0.0) || !std::isfinite(sigma)) {
        return tl::unexpected{StatisticsFault::OutOfDomain};
    }
    return cusum(values, {center, k * sigma, h * sigma, 0.0});
}

} // namespace holdfast::analytics::statistics
