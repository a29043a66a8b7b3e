#include "analytics/statistics/summary/moments.hpp"

#include "analytics/statistics/summary/compensated.hpp"

#include <algorithm>
#include <cmath>

namespace holdfast::analytics::statistics {
namespace {

constexpr int kMostPlaces = 9;
constexpr double kMostWhole = 1e15; ///< whole numbers up to here, and their differences, are exact doubles

/// The power of ten that makes every value a whole number; absent if there is none.
std::optional<double> decimalScale(std::span<const double> values) {
    double scale = 1.0;
    int places = 0;
    for (const double value : values) {
        double whole = std::round(value * scale);
        while (whole / scale != value) {
            if (++places > kMostPlaces) {
                return std::nullopt;
            }
            scale *= 10.0;
            whole = std::round(value * scale);
        }
        if (std::abs(whole) >= kMostWhole) {
            return std::nullopt;
        }
    }
    const bool allFit = std::all_of(values.begin(), values.end(),
                                    [scale](double value) { return std::abs(value * scale) < kMostWhole; });
    return allFit ? std::optional{scale} : std::nullopt;
}

struct Sums final {
    double mean = 0.0;    ///< of the distances from the first value
    double squares = 0.0; ///< of the distances from the mean
    double products = 0.0;
};

/// Distances are taken from the first value before anything is added up.
template <typename Distance>
Sums sumsOf(std::size_t count, Distance distance) {
    const auto n = static_cast<double>(count);
    CompensatedSum total;
    for (std::size_t i = 0; i < count; ++i) {
        total.add(distance(i));
    }
    Sums sums;
    sums.mean = total.value() / n;
    CompensatedSum squares;
    CompensatedSum rest;
    CompensatedSum products;
    double before = 0.0;
    for (std::size_t i = 0; i < count; ++i) {
        const double deviation = distance(i) - sums.mean;
        rest.add(deviation);
        squares.add(deviation * deviation);
        products.add(before * deviation);
        before = deviation;
    }
    sums.squares = squares.value() - rest.value() * rest.value() / n;
    sums.products = products.value();
    return sums;
}

Moments momentsOf(std::span<const double> values, std::optional<double> scale) {
    const double by = scale.value_or(1.0);
    const double first = scale ? std::round(values.front() * by) : values.front();
    const auto sums = scale ? sumsOf(values.size(), [&](std::size_t i) { return std::round(values[i] * by) - first; })
                            : sumsOf(values.size(), [&](std::size_t i) { return values[i] - first; });
    Moments result;
    result.count = values.size();
    result.asDecimals = scale.has_value();
    result.mean = (first + sums.mean) / by;
    const auto [least, most] = std::minmax_element(values.begin(), values.end());
    result.min = *least;
    result.max = *most;
    if (values.size() > 1) {
        const double squares = result.min == result.max ? 0.0 : std::max(0.0, sums.squares);
        result.sd = std::sqrt(squares / static_cast<double>(values.size() - 1)) / by;
        if (squares > 0.0) {
            result.lag1 = sums.products / squares;
        }
    }
    if (result.min == result.max) {
        result.mean = result.min;
    }
    return result;
}

} // namespace

tl::expected<Moments, StatisticsFault> moments(std::span<const double> values) {
    if (values.empty()) {
        return tl::unexpected{StatisticsFault::NoValues};
    }
    if (!std::all_of(values.begin(), values.end(), [](double value) { return std::isfinite(value); })) {
        return tl::unexpected{StatisticsFault::NotFinite};
    }
    const auto result = momentsOf(values, decimalScale(values));
    if (!std::isfinite(result.mean) || !std::isfinite(result.sd.value_or(0.0)) ||
        !std::isfinite(result.lag1.value_or(0.0))) {
        return tl::unexpected{StatisticsFault::OutOfDomain};
    }
    return result;
}

} // namespace holdfast::analytics::statistics
