#include "analytics/statistics/counts/false_discovery.hpp"

#include "analytics/statistics/counts/count_domain.hpp"

#include <algorithm>
#include <numeric>

namespace holdfast::analytics::statistics {

tl::expected<std::vector<double>, StatisticsFault> benjaminiHochberg(std::span<const double> p) {
    if (!std::all_of(p.begin(), p.end(), isProbability))
        return tl::unexpected(StatisticsFault::OutOfDomain);
    std::vector<std::size_t> order(p.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::sort(order.begin(), order.end(), [&](std::size_t l, std::size_t r) { return p[l] > p[r]; });
    std::vector<double> adjusted(p.size());
    const auto m = static_cast<double>(p.size());
    double least = 1.0;
    for (std::size_t i = 0; i < order.size(); ++i) { // from the largest p down
        least = std::min(least, p[order[i]] * m / (m - static_cast<double>(i)));
        adjusted[order[i]] = least;
    }
    return adjusted;
}

} // namespace holdfast::analytics::statistics
