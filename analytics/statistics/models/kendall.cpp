#include "analytics/statistics/models/kendall.hpp"

#include "analytics/statistics/models/inversions.hpp"
#include "analytics/statistics/models/plain_figures.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <cstdlib>
#include <utility>

namespace holdfast::analytics::statistics {

namespace {

/// Sums over groups of t equal values.
struct Ties final {
    double pairs2 = 0.0;    ///< Σ t(t−1)
    double triples = 0.0;   ///< Σ t(t−1)(t−2)
    double variance = 0.0;  ///< Σ t(t−1)(2t+5)
    std::int64_t pairs = 0; ///< Σ t(t−1)/2
    void add(std::size_t group) noexcept {
        const auto t = static_cast<double>(group);
        pairs2 += t * (t - 1.0);
        triples += t * (t - 1.0) * (t - 2.0);
        variance += t * (t - 1.0) * (2.0 * t + 5.0);
        pairs += static_cast<std::int64_t>(group) * (static_cast<std::int64_t>(group) - 1) / 2;
    }
};

/// Groups of equal neighbours in a sorted column.
template <class T>
Ties tiesOf(const std::vector<T>& sorted) {
    Ties ties;
    for (std::size_t start = 0; start < sorted.size();) {
        std::size_t end = start + 1;
        while (end < sorted.size() && sorted[end] == sorted[start]) {
            ++end;
        }
        ties.add(end - start);
        start = end;
    }
    return ties;
}

double varianceOfScore(double n, const Ties& x, const Ties& y) {
    double variance = (n * (n - 1.0) * (2.0 * n + 5.0) - x.variance - y.variance) / 18.0;
    variance += x.pairs2 * y.pairs2 / (2.0 * n * (n - 1.0));
    if (n > 2.0) {
        variance += x.triples * y.triples / (9.0 * n * (n - 1.0) * (n - 2.0));
    }
    return variance;
}

/// P(|S| ≥ |score|) over all n! orders.
double exactTail(std::size_t n, std::int64_t score) {
    const auto chance = discordantChances(n);
    const auto pairs = static_cast<std::int64_t>(chance.size()) - 1;
    double tail = 0.0;
    for (std::int64_t discordant = 0; pairs - 2 * discordant >= std::max<std::int64_t>(1, std::abs(score));
         ++discordant) {
        tail += chance[static_cast<std::size_t>(discordant)];
    }
    return score == 0 ? 1.0 : std::min(1.0, 2.0 * tail);
}

} // namespace

std::vector<double> discordantChances(std::size_t n) {
    assert(n >= 1 && n <= kMostExactKendall);
    std::vector<double> chance(n * (n - 1) / 2 + 1, 0.0);
    chance[0] = 1.0;
    for (std::size_t m = 2; m <= n; ++m) {
        std::vector<double> next(chance.size(), 0.0);
        double window = 0.0;
        for (std::size_t k = 0; k <= m * (m - 1) / 2; ++k) {
            window += chance[k];
            if (k >= m) {
                window -= chance[k - m];
            }
            next[k] = window / static_cast<double>(m);
        }
        const std::size_t most = m * (m - 1) / 2;
        for (std::size_t k = 0; k < most - k; ++k) {
            next[most - k] = next[k]; // the far tail would be differences of rounding
        }
        chance = std::move(next);
    }
    return chance;
}

tl::expected<Kendall, StatisticsFault> kendall(const std::vector<double>& x, const std::vector<double>& y) {
    if (x.size() != y.size()) {
        return tl::unexpected{StatisticsFault::UnequalLengths};
    }
    if (x.size() < 2) {
        return tl::unexpected{x.empty() ? StatisticsFault::NoValues : StatisticsFault::TooFewValues};
    }
    if (!allFinite(x) || !allFinite(y)) {
        return tl::unexpected{StatisticsFault::NotFinite};
    }
    std::vector<std::pair<double, double>> points(x.size());
    for (std::size_t i = 0; i < x.size(); ++i) {
        points[i] = {x[i], y[i]};
    }
    std::sort(points.begin(), points.end());
    std::vector<double> first(x.size());
    std::vector<double> second(x.size());
    for (std::size_t i = 0; i < x.size(); ++i) {
        first[i] = points[i].first;
        second[i] = points[i].second;
    }
    const Ties both = tiesOf(points);
    const Ties inX = tiesOf(first);
    std::vector<double> scratch;
    const std::int64_t discordant = countInversions(second, scratch, Inversion::Falling);
    const Ties inY = tiesOf(second);

    Kendall result;
    result.n = x.size();
    const auto count = static_cast<std::int64_t>(x.size());
    const std::int64_t pairs = count * (count - 1) / 2;
    result.slopes = pairs - inX.pairs;
    const double untied =
        std::sqrt(static_cast<double>(pairs - inX.pairs)) * std::sqrt(static_cast<double>(pairs - inY.pairs));
    if (untied <= 0.0) {
        return tl::unexpected{StatisticsFault::NoSpread};
    }
    result.score = pairs - inX.pairs - inY.pairs + both.pairs - 2 * discordant;
    result.tauB = std::clamp(static_cast<double>(result.score) / untied, -1.0, 1.0);
    result.deviation = std::sqrt(varianceOfScore(static_cast<double>(count), inX, inY));
    result.z = static_cast<double>(result.score) / result.deviation;
    result.ties = inX.pairs > 0 || inY.pairs > 0;
    result.exact = !result.ties && result.n <= kMostExactKendall;
    result.p = result.exact ? exactTail(result.n, result.score) : std::erfc(std::abs(result.z) / std::sqrt(2.0));
    return result;
}

} // namespace holdfast::analytics::statistics
