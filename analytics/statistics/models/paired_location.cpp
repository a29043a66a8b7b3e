#include "analytics/statistics/models/paired_location.hpp"

#include <boost/math/distributions/normal.hpp>

#include <algorithm>
#include <cmath>

namespace holdfast::analytics::statistics {
namespace {

/// Two-sided p of the signed-rank sum; one value at least is not 0.
double signedRankP(std::vector<double> values) {
    std::erase(values, 0.0);
    std::sort(values.begin(), values.end(), [](double a, double b) { return std::abs(a) < std::abs(b); });
    const double n = static_cast<double>(values.size());
    double sum = 0.0;
    double ties = 0.0;
    for (std::size_t i = 0; i < values.size();) {
        auto end = i;
        while (end < values.size() && std::abs(values[end]) == std::abs(values[i])) {
            ++end;
        }
        const double size = static_cast<double>(end - i);
        const double rank = (static_cast<double>(i + end) + 1.0) / 2.0;
        ties += size * (size * size - 1.0);
        for (; i < end; ++i) {
            sum += values[i] > 0.0 ? rank : 0.0;
        }
    }
    const double deviation = std::sqrt(n * (n + 1.0) * (2.0 * n + 1.0) / 24.0 - ties / 48.0);
    const double z = deviation > 0.0 ? std::abs(sum - n * (n + 1.0) / 4.0) / deviation : 0.0;
    return 2.0 * boost::math::cdf(boost::math::complement(boost::math::normal{}, z));
}

} // namespace

tl::expected<PairedLocation, StatisticsFault> locatePairs(const std::vector<double>& differences) {
    const std::size_t left = differences.size() - std::min(differences.size(), kPairedLocationMost);
    const std::vector<double> values(differences.begin() + static_cast<std::ptrdiff_t>(left), differences.end());
    if (values.size() < kPairedLocationLeast) {
        return tl::unexpected{StatisticsFault::TooFewValues};
    }
    if (!std::all_of(values.begin(), values.end(), [](double value) { return std::isfinite(value); })) {
        return tl::unexpected{StatisticsFault::NotFinite};
    }
    if (std::all_of(values.begin(), values.end(), [](double value) { return value == 0.0; })) {
        return tl::unexpected{StatisticsFault::NoSpread};
    }
    std::vector<double> walsh;
    walsh.reserve(values.size() * (values.size() + 1) / 2);
    for (std::size_t i = 0; i < values.size(); ++i) {
        for (std::size_t j = i; j < values.size(); ++j) {
            walsh.push_back(values[i] / 2.0 + values[j] / 2.0);
        }
    }
    const auto ranked = [&walsh](std::size_t rank) {
        const auto at = walsh.begin() + static_cast<std::ptrdiff_t>(rank);
        std::nth_element(walsh.begin(), at, walsh.end());
        return *at;
    };
    const double n = static_cast<double>(values.size());
    const std::size_t all = walsh.size();
    const double z = boost::math::quantile(boost::math::normal{}, 0.975);
    const double rank = static_cast<double>(all) / 2.0 - z * std::sqrt(n * (n + 1.0) * (2.0 * n + 1.0) / 24.0);
    const auto low = static_cast<std::size_t>(std::max(0.0, std::floor(rank)));
    PairedLocation location;
    location.estimate = ranked((all - 1) / 2) / 2.0 + ranked(all / 2) / 2.0;
    location.lower = ranked(low);
    location.upper = ranked(all - 1 - low);
    location.p = signedRankP(values);
    return location;
}

} // namespace holdfast::analytics::statistics
