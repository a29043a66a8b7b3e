#include "analytics/statistics/counts/hypergeometric.hpp"

#include "analytics/statistics/counts/count_domain.hpp"

#include <algorithm>
#include <limits>

namespace holdfast::analytics::statistics {
namespace {

constexpr double kNothing = 1e-18; ///< a weight that no longer moves a sum of doubles

double kept(double sum, double total) noexcept {
    return std::clamp(sum / total, std::numeric_limits<double>::min(), 1.0);
}

} // namespace

Hypergeometric::Hypergeometric(std::int64_t with, std::int64_t without, std::int64_t failed) noexcept
    : m_with{static_cast<double>(with)}, m_failed{static_cast<double>(failed)}, m_spare{static_cast<double>(without) -
                                                                                        static_cast<double>(failed)},
      m_lowest{std::max<std::int64_t>(0, failed - without)}, m_highest{std::min(failed, with)} {}

double Hypergeometric::ratioUp(double x) const noexcept {
    return (m_with - x) * (m_failed - x) / ((x + 1.0) * (m_spare + x + 1.0));
}

std::int64_t Hypergeometric::mode(double odds) const noexcept {
    std::int64_t low = m_lowest; // the ratio falls with x: the mode is the first x from which it is below 1
    std::int64_t high = m_highest;
    while (low < high) {
        const std::int64_t middle = low + (high - low) / 2;
        if (odds * ratioUp(static_cast<double>(middle)) < 1.0)
            high = middle;
        else
            low = middle + 1;
    }
    return low;
}

/// Visits the weights beyond `from` (weight 1, not visited itself) until the end of the support, a weight of 0, or
/// until `visit` says that it has enough.
template <typename Visit>
void Hypergeometric::walk(std::int64_t from, double odds, int direction, Visit&& visit) const noexcept {
    double weight = 1.0;
    if (direction > 0) {
        for (std::int64_t x = from; x < m_highest && weight > 0.0; ++x) {
            weight *= odds * ratioUp(static_cast<double>(x));
            if (!visit(x + 1, weight))
                return;
        }
        return;
    }
    for (std::int64_t x = from; x > m_lowest && weight > 0.0; --x) {
        weight /= odds * ratioUp(static_cast<double>(x - 1));
        if (!visit(x - 1, weight))
            return;
    }
}

Hypergeometric::Tails Hypergeometric::tails(std::int64_t x, double odds) const noexcept {
    const std::int64_t top = mode(odds);
    const int side = x >= top ? 1 : -1;
    double inside = x == top ? 0.0 : 1.0; // between the mode and x, mode included, x not
    double at = x == top ? 1.0 : 0.0;
    double beyond = 0.0;
    walk(top, odds, side, [&](std::int64_t y, double weight) {
        const std::int64_t past = side > 0 ? y - x : x - y;
        if (past == 0)
            at = weight;
        else
            (past < 0 ? inside : beyond) += weight;
        return past < 0 || weight > kNothing * (at + beyond);
    });
    double other = 0.0; // the other side of the mode, and of it what is as rare as x
    double otherRare = 0.0;
    const double limit = at * kTie;
    walk(top, odds, -side, [&](std::int64_t, double weight) {
        other += weight;
        if (weight <= limit)
            otherRare += weight;
        return weight > kNothing * std::min(1.0, limit);
    });
    const double total = inside + at + beyond + other;
    const double outer = kept(at + beyond, total);
    const double inner = kept(inside + at + other, total);
    const double rare = at >= 1.0 ? 1.0 : kept(at + beyond + otherRare, total);
    return side > 0 ? Tails{inner, outer, rare} : Tails{outer, inner, rare};
}

Hypergeometric::Moments Hypergeometric::moments(double odds) const noexcept {
    const std::int64_t top = mode(odds);
    double total = 1.0;
    double first = 0.0;
    double second = 0.0;
    const auto gather = [&](std::int64_t y, double weight) {
        const auto distance = static_cast<double>(y - top);
        total += weight;
        first += weight * distance;
        second += weight * distance * distance;
        return weight > kNothing;
    };
    walk(top, odds, 1, gather);
    walk(top, odds, -1, gather);
    const double shift = first / total;
    return {static_cast<double>(top) + shift, std::max(0.0, second / total - shift * shift)};
}

} // namespace holdfast::analytics::statistics
