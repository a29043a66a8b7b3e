#include "analytics/statistics/charts/constants.hpp"

#include "analytics/statistics/charts/quadrature.hpp"

#include <algorithm>
#include <boost/math/special_functions/gamma.hpp>
#include <cmath>
#include <vector>

namespace holdfast::analytics::statistics {
namespace {

constexpr double kReach = 9.0; ///< in σ: beyond it a normal value is never met
constexpr double kStep = 0.05;
constexpr int kMost = 1'000'000;

/// P(R > r); the trapezoid converges like the integrand falls off, faster than any power of the step.
class RangeAbove final {
public:
    explicit RangeAbove(int n) : m_n{static_cast<double>(n)} {
        for (double x = -kReach; x <= kReach; x += kStep) {
            m_x.push_back(x);
            m_below.push_back(normalBelow(x));
            m_density.push_back(normalDensity(x));
        }
    }

    [[nodiscard]] double operator()(double r) const {
        double sum = 0.0;
        for (std::size_t i = 0; i < m_x.size(); ++i) {
            const double inside = normalBelow(m_x[i] + r) - m_below[i];
            sum += m_density[i] * std::pow(std::max(0.0, inside), m_n - 1.0);
        }
        return 1.0 - m_n * kStep * sum;
    }

private:
    double m_n;
    std::vector<double> m_x;
    std::vector<double> m_below;
    std::vector<double> m_density;
};

} // namespace

double c4Of(double n) {
    return std::sqrt(2.0 / (n - 1.0)) / boost::math::tgamma_delta_ratio((n - 1.0) / 2.0, 0.5);
}

tl::expected<ChartConstants, StatisticsFault> chartConstants(int n) {
    if (n < 2 || n > kMost) {
        return tl::unexpected{StatisticsFault::OutOfDomain};
    }
    ChartConstants c;
    c.n = n;
    if (n == 2) {
        c.d2 = kD2OfTwo;
        c.d3 = kD3OfTwo;
    } else {
        const RangeAbove above{n};
        double square = 0.0;
        for (double panel = 0.0; panel < 2.0 * kReach; panel += 1.5) {
            const auto rule = gaussLegendre(16, panel, panel + 1.5);
            for (std::size_t i = 0; i < rule.nodes.size(); ++i) {
                const double weighted = rule.weights[i] * above(rule.nodes[i]);
                c.d2 += weighted;
                square += 2.0 * rule.nodes[i] * weighted;
            }
        }
        c.d3 = std::sqrt(square - c.d2 * c.d2);
    }
    c.c4 = c4Of(n);
    const double root = std::sqrt(static_cast<double>(n));
    const double spread = 3.0 * std::sqrt(std::max(0.0, 1.0 - c.c4 * c.c4)) / c.c4;
    c.a2 = 3.0 / (c.d2 * root);
    c.a3 = 3.0 / (c.c4 * root);
    c.b3 = std::max(0.0, 1.0 - spread);
    c.b4 = 1.0 + spread;
    c.capitalD3 = std::max(0.0, 1.0 - 3.0 * c.d3 / c.d2);
    c.capitalD4 = 1.0 + 3.0 * c.d3 / c.d2;
    c.e2 = 3.0 / c.d2;
    return c;
}

} // namespace holdfast::analytics::statistics
