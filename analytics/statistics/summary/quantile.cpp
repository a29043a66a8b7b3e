#include "analytics/statistics/summary/quantile.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

namespace holdfast::analytics::statistics {
namespace {

/// The position among the sorted values, from 0.
double positionOf(std::size_t count, double p, QuantileType type) {
    const auto n = static_cast<double>(count);
    double h = 1.0;
    switch (type) {
    case QuantileType::Six:
        h = (n + 1.0) * p;
        break;
    case QuantileType::Seven:
        h = (n - 1.0) * p + 1.0;
        break;
    case QuantileType::Eight:
        h = (n + 1.0 / 3.0) * p + 1.0 / 3.0;
        break;
    }
    // The rounding of p must not move a position off a value it stands on (R 4.2.2 quantile.default, fuzz).
    const double nearest = std::round(h);
    if (std::abs(h - nearest) < 4.0 * 2.220446049250313e-16 * n) {
        h = nearest;
    }
    return std::clamp(h, 1.0, n) - 1.0;
}

double between(double low, double high, double share) {
    return low == high || share == 0.0 ? low : low * (1.0 - share) + high * share;
}

std::optional<StatisticsFault> faultOf(std::span<const double> values, std::span<const double> ps) {
    if (values.empty()) {
        return StatisticsFault::NoValues;
    }
    if (!std::all_of(values.begin(), values.end(), [](double value) { return std::isfinite(value); })) {
        return StatisticsFault::NotFinite;
    }
    const bool inside = std::all_of(ps.begin(), ps.end(), [](double p) { return p >= 0.0 && p <= 1.0; });
    return inside ? std::nullopt : std::optional{StatisticsFault::OutOfDomain};
}

} // namespace

tl::expected<double, StatisticsFault> quantile(std::span<const double> values, double p, QuantileType type) {
    if (const auto fault = faultOf(values, {&p, 1})) {
        return tl::unexpected{*fault};
    }
    std::vector<double> copy{values.begin(), values.end()};
    const double position = positionOf(copy.size(), p, type);
    const auto below = static_cast<std::ptrdiff_t>(position);
    const auto at = copy.begin() + below;
    std::nth_element(copy.begin(), at, copy.end());
    const double share = position - static_cast<double>(below);
    if (share == 0.0 || at + 1 == copy.end()) {
        return *at;
    }
    return between(*at, *std::min_element(at + 1, copy.end()), share);
}

tl::expected<std::vector<double>, StatisticsFault> quantiles(std::span<const double> values, std::span<const double> ps,
                                                             QuantileType type) {
    if (const auto fault = faultOf(values, ps)) {
        return tl::unexpected{*fault};
    }
    std::vector<double> sorted{values.begin(), values.end()};
    std::sort(sorted.begin(), sorted.end());
    std::vector<double> result;
    for (const double p : ps) {
        const double position = positionOf(sorted.size(), p, type);
        const auto below = static_cast<std::size_t>(position);
        const auto above = std::min(below + 1, sorted.size() - 1);
        result.push_back(between(sorted[below], sorted[above], position - static_cast<double>(below)));
    }
    return result;
}

} // namespace holdfast::analytics::statistics
