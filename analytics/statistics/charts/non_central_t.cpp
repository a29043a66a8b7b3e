#include "analytics/statistics/charts/non_central_t.hpp"

#include "analytics/statistics/charts/quadrature.hpp"

#include <algorithm>
#include <boost/math/special_functions/gamma.hpp>
#include <cmath>
#include <utility>

namespace holdfast::analytics::statistics {
namespace {

constexpr std::size_t kNodes = 48;

/// Density of s = √(χ²/ν).
double spreadDensity(double s, double degrees) {
    const double half = 0.5 * degrees;
    return boost::math::gamma_p_derivative(half, half * s * s) * degrees * s;
}

const Quadrature& unitRule() {
    static const Quadrature rule = gaussLegendre(kNodes, 0.0, 1.0);
    return rule;
}

void addPanel(SpreadNodes& nodes, double degrees, double low, double high) {
    if (!(high > low)) {
        return;
    }
    const auto& rule = unitRule();
    for (std::size_t i = 0; i < rule.nodes.size(); ++i) {
        const double s = low + (high - low) * rule.nodes[i];
        nodes.ratio.push_back(s);
        nodes.chance.push_back((high - low) * rule.weights[i] * spreadDensity(s, degrees));
    }
}

} // namespace

SpreadNodes spreadNodes(double degrees, double steepAt, double steepWidth) {
    const double reach = 10.0 / std::sqrt(2.0 * degrees);
    const double low = std::max(0.0, 1.0 - reach);
    const double high = 1.0 + reach;
    const double steepLow = std::clamp(steepAt - steepWidth, low, high);
    const double steepHigh = std::clamp(steepAt + steepWidth, low, high);
    SpreadNodes nodes;
    for (const auto& [from, to] :
         {std::pair{low, steepLow}, std::pair{steepLow, steepHigh}, std::pair{steepHigh, high}}) {
        const double middle = 0.5 * (from + to);
        addPanel(nodes, degrees, from, middle);
        addPanel(nodes, degrees, middle, to);
    }
    return nodes;
}

double nonCentralTBelow(double t, double degrees, double noncentrality) {
    const bool steep = t != 0.0;
    const auto nodes = spreadNodes(degrees, steep ? noncentrality / t : 0.0, steep ? 9.0 / std::abs(t) : 0.0);
    double sum = 0.0;
    for (std::size_t i = 0; i < nodes.ratio.size(); ++i) {
        sum += nodes.chance[i] * normalBelow(t * nodes.ratio[i] - noncentrality);
    }
    return std::clamp(sum, 0.0, 1.0);
}

} // namespace holdfast::analytics::statistics
