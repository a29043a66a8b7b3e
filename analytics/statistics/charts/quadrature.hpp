#pragma once

#include <cstddef>
#include <vector>

namespace holdfast::analytics::statistics {

/// Nodes and weights of Gauss–Legendre quadrature over an interval.
struct Quadrature final {
    std::vector<double> nodes;
    std::vector<double> weights;
};

/// `count` nodes over [low, high], by Newton's method on the Legendre polynomial (Abramowitz and Stegun 25.4.29).
[[nodiscard]] Quadrature gaussLegendre(std::size_t count, double low, double high);

/// Solves the square system in place by elimination with partial pivoting; `matrix` is row by row, `right` becomes the
/// solution. False for a matrix that is singular to working precision. count³/3 steps.
[[nodiscard]] bool solveLinear(std::vector<double>& matrix, std::vector<double>& right);

/// Standard normal distribution function and density, accurate in both tails.
[[nodiscard]] double normalBelow(double z);
[[nodiscard]] double normalDensity(double z);
/// Its quantile for p in (0, 1).
[[nodiscard]] double normalQuantile(double p);

} // namespace holdfast::analytics::statistics
