#include "analytics/statistics/models/censored_normal.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace holdfast::analytics::statistics {

namespace {

constexpr double kLogRootTwoPi = 0.918938533204672741780329736406;
constexpr double kRootTwo = 1.41421356237309504880168872421;
constexpr double kNarrow = 1e-4; ///< below this the chance is density times width, right to width²/24

double logDensity(double z) noexcept {
    return -0.5 * z * z - kLogRootTwoPi;
}

/// log Φ(z), by the asymptotic series (Abramowitz and Stegun 26.2.12) where erfc underflows.
double logBelow(double z) noexcept {
    if (z > -30.0) {
        return std::log(0.5 * std::erfc(-z / kRootTwo));
    }
    const double r = 1.0 / (z * z);
    return logDensity(z) - std::log(-z) + std::log1p(-r * (1.0 - 3.0 * r * (1.0 - 5.0 * r)));
}

/// log(Φ(b) − Φ(a)), a < b, either infinite.
double logBetween(double a, double b) noexcept {
    if (a > 0.0) {
        std::swap(a, b);
        a = -a;
        b = -b;
    }
    if (b - a < kNarrow) {
        return logDensity(0.5 * (a + b)) + std::log(b - a);
    }
    if (b > 0.0) {
        return std::log1p(-0.5 * std::erfc(-a / kRootTwo) - 0.5 * std::erfc(b / kRootTwo));
    }
    const double below = logBelow(b);
    return std::isinf(a) ? below : below + std::log1p(-std::exp(logBelow(a) - below));
}

/// Density at an end over the chance of the interval; 0 at an infinite end.
double ratio(double z, double logChance) noexcept {
    return std::isinf(z) ? 0.0 : std::exp(logDensity(z) - logChance);
}

double finiteOr(double value, double other) noexcept {
    return std::isfinite(value) ? value : other;
}

/// An interval's share of value and derivatives.
void add(CensoredLikelihood& sum, const CensoredValue& interval, double gamma, double theta) noexcept {
    const double a = theta * interval.lower - gamma;
    const double b = theta * interval.upper - gamma;
    const double chance = logBetween(a, b);
    const double low = ratio(a, chance);
    const double high = ratio(b, chance);
    const double x = finiteOr(interval.lower, 0.0); // da/dθ; an infinite end has low = 0
    const double y = finiteOr(interval.upper, 0.0);
    const double aa = finiteOr(a, 0.0) * low - low * low;
    const double bb = -finiteOr(b, 0.0) * high - high * high;
    const double ab = low * high;
    const double w = interval.weight;
    sum.value += w * chance;
    sum.gamma += w * (low - high);
    sum.theta += w * (y * high - x * low);
    sum.gammaGamma += w * (aa + 2.0 * ab + bb);
    sum.gammaTheta -= w * (x * aa + (x + y) * ab + y * bb);
    sum.thetaTheta += w * (x * x * aa + 2.0 * x * y * ab + y * y * bb);
}

/// An interval so narrow against the spread that its ends' densities cancel in `add`: density of its middle times
/// width.
void addNarrow(CensoredLikelihood& sum, const CensoredValue& interval, double gamma, double theta) noexcept {
    const double x = 0.5 * (interval.lower + interval.upper);
    const double z = theta * x - gamma;
    const double w = interval.weight;
    sum.value += w * (logDensity(z) + std::log(theta * (interval.upper - interval.lower)));
    sum.gamma += w * z;
    sum.theta += w * (1.0 / theta - z * x);
    sum.gammaGamma -= w;
    sum.gammaTheta += w * x;
    sum.thetaTheta -= w * (x * x + 1.0 / (theta * theta));
}

} // namespace

CensoredNormal::CensoredNormal(const std::vector<CensoredValue>& values) {
    chooseScale(values);
    std::vector<CensoredValue> sorted;
    for (const auto& value : values) {
        const double low = (value.lower - m_centre) / m_scale;
        const double high = (value.upper - m_centre) / m_scale;
        const bool informative = value.weight > 0.0 && (std::isfinite(low) || std::isfinite(high));
        if (informative && value.lower == value.upper) {
            m_weight += value.weight;
            m_sum += value.weight * low;
            m_squares += value.weight * low * low;
        } else if (informative) {
            sorted.push_back({low, high, value.weight});
        }
    }
    std::sort(sorted.begin(), sorted.end(), [](const auto& a, const auto& b) {
        return std::pair{a.lower, a.upper} < std::pair{b.lower, b.upper};
    });
    for (const auto& interval : sorted) {
        const bool same = !m_intervals.empty() && m_intervals.back().lower == interval.lower &&
                          m_intervals.back().upper == interval.upper;
        if (same) {
            m_intervals.back().weight += interval.weight;
        } else {
            m_intervals.push_back(interval);
        }
    }
}

void CensoredNormal::chooseScale(const std::vector<CensoredValue>& values) {
    double mean = 0.0;
    double squares = 0.0;
    double weight = 0.0;
    for (const auto& value : values) {
        for (const double end : {value.lower, value.upper}) {
            if (std::isfinite(end) && value.weight > 0.0) {
                weight += value.weight;
                const double step = end - mean;
                mean += step * value.weight / weight;
                squares += value.weight * step * (end - mean);
            }
        }
    }
    m_centre = mean;
    m_scale = squares > 0.0 ? std::sqrt(squares / weight) : 1.0;
}

CensoredLikelihood CensoredNormal::at(double gamma, double theta) const {
    CensoredLikelihood sum;
    sum.value = m_weight * (std::log(theta / m_scale) - kLogRootTwoPi) -
                0.5 * (theta * theta * m_squares - 2.0 * theta * gamma * m_sum + gamma * gamma * m_weight);
    sum.gamma = theta * m_sum - gamma * m_weight;
    sum.theta = m_weight / theta - theta * m_squares + gamma * m_sum;
    sum.gammaGamma = -m_weight;
    sum.gammaTheta = m_sum;
    sum.thetaTheta = -m_weight / (theta * theta) - m_squares;
    for (const auto& interval : m_intervals) {
        if (theta * (interval.upper - interval.lower) < kNarrow) {
            addNarrow(sum, interval, gamma, theta);
        } else {
            add(sum, interval, gamma, theta);
        }
    }
    return sum;
}

} // namespace holdfast::analytics::statistics
