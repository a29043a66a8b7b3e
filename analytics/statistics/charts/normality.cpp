#include "analytics/statistics/charts/normality.hpp"

#include "analytics/statistics/charts/quadrature.hpp"
#include "analytics/statistics/summary/compensated.hpp"
#include "analytics/statistics/summary/moments.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

namespace holdfast::analytics::statistics {
namespace {

constexpr std::size_t kLeast = 8;

/// ln Φ(z), also where Φ(z) is too small for a double (Abramowitz and Stegun 26.2.12).
double logBelow(double z) {
    if (z > -30.0) {
        return std::log(normalBelow(z));
    }
    const double square = z * z;
    return -0.5 * square - std::log(-z) - 0.5 * std::log(2.0 * std::numbers::pi) +
           std::log1p(-1.0 / square + 3.0 / (square * square));
}

double chanceOf(double a) {
    if (a < 0.2) {
        return 1.0 - std::exp(-13.436 + 101.14 * a - 223.73 * a * a);
    }
    if (a < 0.34) {
        return 1.0 - std::exp(-8.318 + 42.796 * a - 59.938 * a * a);
    }
    if (a < 0.6) {
        return std::exp(0.9177 - 4.279 * a - 1.38 * a * a);
    }
    if (a < 10.0) {
        return std::exp(1.2937 - 5.709 * a + 0.0186 * a * a);
    }
    return 3.7e-24;
}

} // namespace

tl::expected<AndersonDarling, StatisticsFault> andersonDarling(std::span<const double> values) {
    const auto of = moments(values);
    if (!of) {
        return tl::unexpected{of.error()};
    }
    if (values.size() < kLeast) {
        return tl::unexpected{StatisticsFault::TooFewValues};
    }
    if (!(*of->sd > 0.0)) {
        return tl::unexpected{StatisticsFault::NoSpread};
    }
    std::vector<double> z;
    z.reserve(values.size());
    for (const double value : values) {
        z.push_back((value - of->mean) / *of->sd);
    }
    std::sort(z.begin(), z.end());
    const auto n = static_cast<double>(z.size());
    CompensatedSum sum;
    for (std::size_t i = 0; i < z.size(); ++i) {
        sum.add((2.0 * static_cast<double>(i) + 1.0) / n * (logBelow(z[i]) + logBelow(-z[z.size() - 1 - i])));
    }
    AndersonDarling result;
    result.statistic = -n - sum.value();
    result.adjusted = result.statistic * (1.0 + 0.75 / n + 2.25 / (n * n));
    result.p = std::clamp(chanceOf(result.adjusted), 0.0, 1.0);
    return result;
}

} // namespace holdfast::analytics::statistics
