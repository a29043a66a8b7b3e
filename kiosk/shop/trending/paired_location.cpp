#include "kiosk/shop/trending/paired_location.hpp"

#include <algorithm>
#include <boost/math/distributions/normal.hpp>
#include <cmath>

namespace holdfast::kiosk::shop::trending {
namespace {

constexpr std::size_t kLeast = 6;
constexpr std::size_t kMost = 1'500;

/// Two-sided p of the signed-rank sum, ties in mid-ranks, zeros left out.
std::optional<double> signedRankP(std::vector<double> values) {
    std::erase(values, 0.0);
    if (values.empty()) {
        return std::nullopt;
    }
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

std::optional<PairedLocation> locatePairs(const std::vector<double>& differences) {
    const auto from =
        differences.size() > kMost ? differences.end() - static_cast<std::ptrdiff_t>(kMost) : differences.begin();
    const std::vector<double> values(from, differences.end());
    const bool finite = std::all_of(values.begin(), values.end(), [](double value) { return std::isfinite(value); });
    const auto p = values.size() >= kLeast && finite ? signedRankP(values) : std::nullopt;
    if (!p) {
        return std::nullopt;
    }
    std::vector<double> walsh;
    walsh.reserve(values.size() * (values.size() + 1) / 2);
    for (std::size_t i = 0; i < values.size(); ++i) {
        for (std::size_t j = i; j < values.size(); ++j) {
            walsh.push_back((values[i] + values[j]) / 2.0);
        }
    }
    std::sort(walsh.begin(), walsh.end());
    const double n = static_cast<double>(values.size());
    const double all = static_cast<double>(walsh.size());
    const double z = boost::math::quantile(boost::math::normal{}, 0.975);
    const double rank = all / 2.0 - z * std::sqrt(n * (n + 1.0) * (2.0 * n + 1.0) / 24.0);
    const auto low = static_cast<std::size_t>(std::max(0.0, std::floor(rank)));
    const auto middle = walsh.size() / 2;
    PairedLocation location;
    location.estimate = walsh.size() % 2 == 1 ? walsh[middle] : (walsh[middle - 1] + walsh[middle]) / 2.0;
    location.lower = walsh[low];
    location.upper = walsh[walsh.size() - 1 - low];
    location.p = *p;
    return location;
}

} // namespace holdfast::kiosk::shop::trending
