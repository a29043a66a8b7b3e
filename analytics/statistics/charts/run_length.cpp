#include "analytics/statistics/charts/run_length.hpp"

#include "analytics/statistics/charts/quadrature.hpp"
#include "analytics/statistics/charts/root.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <vector>

namespace holdfast::analytics::statistics {
namespace {

using Result = tl::expected<double, StatisticsFault>;

constexpr double kLongest = 1e12; ///< beyond it the equations are singular to working precision
constexpr double kLongestWanted = 1e9;

Result runLength(double value) {
    if (!std::isfinite(value) || value < 1.0 - 1e-9 || value > kLongest) {
        return tl::unexpected{StatisticsFault::OutOfDomain};
    }
    return value;
}

/// Unknowns: L(0), then L at the nodes.
Result oneSidedCusum(double k, double h, double shift) {
    const auto nodeCount = static_cast<std::size_t>(std::clamp(40.0 + 8.0 * h, 60.0, 840.0));
    const auto rule = gaussLegendre(nodeCount, 0.0, h);
    const std::size_t size = nodeCount + 1;
    std::vector<double> matrix(size * size, 0.0);
    std::vector<double> right(size, 1.0);
    for (std::size_t row = 0; row < size; ++row) {
        const double s = row == 0 ? 0.0 : rule.nodes[row - 1];
        matrix[row * size] = -normalBelow(k - s - shift);
        for (std::size_t j = 0; j < nodeCount; ++j) {
            matrix[row * size + j + 1] = -rule.weights[j] * normalDensity(rule.nodes[j] + k - s - shift);
        }
        matrix[row * size + row] += 1.0;
    }
    if (!solveLinear(matrix, right)) {
        return tl::unexpected{StatisticsFault::NoConvergence};
    }
    return runLength(right[0]);
}

/// The argument at which a rising run length comes to what is wanted.
template <typename RunLength>
Result argumentFor(double wanted, double low, double high, RunLength of) {
    if (!(wanted > 1.0 && wanted <= kLongestWanted)) {
        return tl::unexpected{StatisticsFault::OutOfDomain};
    }
    const auto above = [&](double argument) {
        const auto length = of(argument);
        return length ? std::log(*length / wanted) : argument > 0.5 * high ? 100.0 : -100.0;
    };
    double upper = low + 0.5;
    while (upper < high && above(upper) < 0.0) {
        upper = std::min(high, upper * 1.6);
    }
    const auto root = rootBetween(above, low, upper);
    return root ? Result{*root} : tl::unexpected{StatisticsFault::NoConvergence};
}

} // namespace

Result shewhartRunLength(double width, double shift) {
    if (!(width > 0.0) || !std::isfinite(shift)) {
        return tl::unexpected{StatisticsFault::OutOfDomain};
    }
    const double length = 1.0 / (normalBelow(-width - shift) + normalBelow(-width + shift));
    return std::isfinite(length) ? Result{length} : tl::unexpected{StatisticsFault::OutOfDomain};
}

Result cusumRunLength(double k, double h, double shift, Sides sides) {
    if (!(k >= 0.0 && k <= 100.0 && h > 0.0 && h <= 100.0) || !std::isfinite(shift)) {
        return tl::unexpected{StatisticsFault::OutOfDomain};
    }
    const auto up = oneSidedCusum(k, h, shift);
    if (sides == Sides::One) {
        return up;
    }
    const auto down = shift == 0.0 ? up : oneSidedCusum(k, h, -shift);
    // The side the values move away from may never signal; the other then stands alone.
    const bool neither = !up && !down;
    if (neither) {
        return up;
    }
    return 1.0 / ((up ? 1.0 / *up : 0.0) + (down ? 1.0 / *down : 0.0));
}

Result ewmaRunLength(double lambda, double width, double shift) {
    if (!(lambda >= 0.001 && lambda <= 1.0 && width > 0.0 && width <= 10.0) || !std::isfinite(shift)) {
        return tl::unexpected{StatisticsFault::OutOfDomain};
    }
    if (lambda == 1.0) {
        return shewhartRunLength(width, shift).and_then(runLength);
    }
    const double h = width * std::sqrt(lambda / (2.0 - lambda));
    const auto nodeCount = static_cast<std::size_t>(std::clamp(40.0 + 4.0 * h / lambda, 60.0, 800.0)) | 1U;
    const auto rule = gaussLegendre(nodeCount, -h, h); // an odd number: the middle node is the centre
    std::vector<double> matrix(nodeCount * nodeCount, 0.0);
    std::vector<double> right(nodeCount, 1.0);
    for (std::size_t row = 0; row < nodeCount; ++row) {
        const double kept = (1.0 - lambda) * rule.nodes[row];
        for (std::size_t j = 0; j < nodeCount; ++j) {
            matrix[row * nodeCount + j] =
                -rule.weights[j] * normalDensity((rule.nodes[j] - kept) / lambda - shift) / lambda;
        }
        matrix[row * nodeCount + row] += 1.0;
    }
    if (!solveLinear(matrix, right)) {
        return tl::unexpected{StatisticsFault::NoConvergence};
    }
    return runLength(right[nodeCount / 2]);
}

Result shewhartWidthFor(double runLength) {
    if (!(runLength > 1.0 && runLength <= kLongestWanted)) {
        return tl::unexpected{StatisticsFault::OutOfDomain};
    }
    return -normalQuantile(0.5 / runLength);
}

Result cusumIntervalFor(double k, double runLength, Sides sides) {
    if (!(k >= 0.0 && k <= 100.0)) {
        return tl::unexpected{StatisticsFault::OutOfDomain};
    }
    return argumentFor(runLength, 1e-6, 100.0, [&](double h) { return cusumRunLength(k, h, 0.0, sides); });
}

Result ewmaWidthFor(double lambda, double runLength) {
    if (!(lambda >= 0.001 && lambda <= 1.0)) {
        return tl::unexpected{StatisticsFault::OutOfDomain};
    }
    if (lambda == 1.0) {
        return shewhartWidthFor(runLength);
    }
    return argumentFor(runLength, 1e-6, 10.0, [&](double width) { return ewmaRunLength(lambda, width, 0.0); });
}

} // namespace holdfast::analytics::statistics
