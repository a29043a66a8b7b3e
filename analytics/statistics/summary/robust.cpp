#include "analytics/statistics/summary/robust.hpp"

#include <algorithm>
#include <array>
#include <bit>
#include <cmath>
#include <cstdint>
#include <vector>

namespace holdfast::analytics::statistics {
namespace {

constexpr double kQnToSigma = 2.219144465985076; ///< 1/(√2·Φ⁻¹(5/8))

/// Pairs of sorted values no further apart than this.
std::uint64_t pairsWithin(const std::vector<double>& sorted, double distance) {
    std::uint64_t pairs = 0;
    std::size_t low = 0;
    for (std::size_t high = 0; high < sorted.size(); ++high) {
        while (sorted[high] - sorted[low] > distance) {
            ++low;
        }
        pairs += high - low;
    }
    return pairs;
}

/// The k-th smallest distance. Doubles that are not negative are ordered as their bits are.
double distanceOfRank(const std::vector<double>& sorted, std::uint64_t rank) {
    std::uint64_t below = 0;
    std::uint64_t enough = std::bit_cast<std::uint64_t>(sorted.back() - sorted.front());
    while (below < enough) {
        const std::uint64_t middle = below + (enough - below) / 2;
        if (pairsWithin(sorted, std::bit_cast<double>(middle)) >= rank) {
            enough = middle;
        } else {
            below = middle + 1;
        }
    }
    return std::bit_cast<double>(enough);
}

double smallSampleFactor(std::size_t count) {
    constexpr std::array<double, 10> kFew{1.0, 1.0, 0.399, 0.994, 0.512, 0.844, 0.611, 0.857, 0.669, 0.872};
    if (count < kFew.size()) {
        return kFew[count];
    }
    const auto n = static_cast<double>(count);
    return n / (n + (count % 2 == 1 ? 1.4 : 3.8));
}

} // namespace

tl::expected<double, StatisticsFault> median(std::span<const double> values) {
    return quantile(values, 0.5, QuantileType::Seven);
}

tl::expected<double, StatisticsFault> medianDistance(std::span<const double> values, double scale) {
    const auto middle = median(values);
    if (!middle) {
        return middle;
    }
    std::vector<double> distances;
    distances.reserve(values.size());
    for (const double value : values) {
        distances.push_back(std::abs(value - *middle));
    }
    return median(distances).map([scale](double distance) { return scale * distance; });
}

tl::expected<double, StatisticsFault> interquartileRange(std::span<const double> values, QuantileType type) {
    constexpr std::array<double, 2> kQuartiles{0.25, 0.75};
    return quantiles(values, kQuartiles, type).map([](const std::vector<double>& q) { return q[1] - q[0]; });
}

tl::expected<double, StatisticsFault> qn(std::span<const double> values, bool smallSample) {
    if (!std::all_of(values.begin(), values.end(), [](double value) { return std::isfinite(value); })) {
        return tl::unexpected{StatisticsFault::NotFinite};
    }
    if (values.size() < 2) {
        return tl::unexpected{StatisticsFault::TooFewValues};
    }
    std::vector<double> sorted{values.begin(), values.end()};
    std::sort(sorted.begin(), sorted.end());
    if (!std::isfinite(sorted.back() - sorted.front())) {
        return tl::unexpected{StatisticsFault::OutOfDomain};
    }
    const std::uint64_t h = sorted.size() / 2 + 1;
    const double distance = distanceOfRank(sorted, h * (h - 1) / 2);
    return kQnToSigma * distance * (smallSample ? smallSampleFactor(sorted.size()) : 1.0);
}

} // namespace holdfast::analytics::statistics
