#include "analytics/statistics/charts/quadrature.hpp"

#include <algorithm>
#include <boost/math/distributions/normal.hpp>
#include <cmath>
#include <numbers>

namespace holdfast::analytics::statistics {
namespace {

struct Legendre final {
    double value = 0.0;
    double slope = 0.0;
};

Legendre legendre(std::size_t degree, double x) {
    double before = 1.0;
    double now = x;
    for (std::size_t k = 2; k <= degree; ++k) {
        const auto order = static_cast<double>(k);
        const double next = ((2.0 * order - 1.0) * x * now - (order - 1.0) * before) / order;
        before = now;
        now = next;
    }
    return {now, static_cast<double>(degree) * (x * now - before) / (x * x - 1.0)};
}

} // namespace

Quadrature gaussLegendre(std::size_t count, double low, double high) {
    Quadrature result;
    result.nodes.resize(count);
    result.weights.resize(count);
    const double half = 0.5 * (high - low);
    const double middle = 0.5 * (high + low);
    for (std::size_t i = 0; i < count; ++i) {
        const double angle = std::numbers::pi * (static_cast<double>(i) + 0.75) / (static_cast<double>(count) + 0.5);
        double x = -std::cos(angle);
        Legendre at;
        for (int step = 0; step < 8; ++step) {
            at = legendre(count, x);
            x -= at.value / at.slope;
        }
        result.nodes[i] = middle + half * x;
        result.weights[i] = half * 2.0 / ((1.0 - x * x) * at.slope * at.slope);
    }
    return result;
}

bool solveLinear(std::vector<double>& matrix, std::vector<double>& right) {
    const std::size_t n = right.size();
    for (std::size_t column = 0; column < n; ++column) {
        std::size_t pivot = column;
        for (std::size_t row = column + 1; row < n; ++row) {
            if (std::abs(matrix[row * n + column]) > std::abs(matrix[pivot * n + column])) {
                pivot = row;
            }
        }
        if (!(std::abs(matrix[pivot * n + column]) > 0.0)) {
            return false;
        }
        if (pivot != column) {
            std::swap_ranges(&matrix[pivot * n], &matrix[pivot * n] + n, &matrix[column * n]);
            std::swap(right[pivot], right[column]);
        }
        for (std::size_t row = column + 1; row < n; ++row) {
            const double share = matrix[row * n + column] / matrix[column * n + column];
            if (share == 0.0) {
                continue;
            }
            for (std::size_t k = column; k < n; ++k) {
                matrix[row * n + k] -= share * matrix[column * n + k];
            }
            right[row] -= share * right[column];
        }
    }
    for (std::size_t row = n; row-- > 0;) {
        double sum = right[row];
        for (std::size_t k = row + 1; k < n; ++k) {
            sum -= matrix[row * n + k] * right[k];
        }
        right[row] = sum / matrix[row * n + row];
    }
    return std::all_of(right.begin(), right.end(), [](double x) { return std::isfinite(x); });
}

double normalBelow(double z) {
    return 0.5 * std::erfc(-z / std::numbers::sqrt2);
}

double normalDensity(double z) {
    return std::exp(-0.5 * z * z) * std::numbers::inv_sqrtpi / std::numbers::sqrt2;
}

double normalQuantile(double p) {
    return boost::math::quantile(boost::math::normal_distribution<double>{}, p);
}

} // namespace holdfast::analytics::statistics
