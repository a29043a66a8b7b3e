#include "analytics/statistics/models/inversions.hpp"

#include <algorithm>
#include <cstddef>

namespace holdfast::analytics::statistics {

namespace {

constexpr std::size_t kRun = 16;

/// Sorts a short run by insertion; every step past a neighbour is one inversion.
std::int64_t insertionSort(double* first, double* last, Inversion kind) {
    std::int64_t count = 0;
    for (double* at = first + 1; at < last; ++at) {
        const double value = *at;
        double* to = at;
        for (; to > first && to[-1] > value; --to) {
            *to = to[-1];
            ++count;
        }
        if (kind == Inversion::FallingOrEqual) {
            for (const double* equal = to; equal > first && equal[-1] == value; --equal) {
                ++count;
            }
        }
        *to = value;
    }
    return count;
}

/// Without a branch on the values, which nobody can foretell.
template <Inversion kind>
std::int64_t merge(const double* left, const double* middle, const double* right, double* out) {
    std::int64_t count = 0;
    const double* low = left;
    const double* high = middle;
    while (low < middle && high < right) {
        const bool takeHigh = kind == Inversion::FallingOrEqual ? *high <= *low : *high < *low;
        const std::int64_t passed = middle - low;
        const double* const taken = takeHigh ? high : low;
        count += passed & -static_cast<std::int64_t>(takeHigh);
        *out++ = *taken;
        high += static_cast<std::ptrdiff_t>(takeHigh);
        low += static_cast<std::ptrdiff_t>(!takeHigh);
    }
    out = std::copy(low, middle, out);
    std::copy(high, right, out);
    return count;
}

} // namespace

std::int64_t countInversions(std::vector<double>& values, std::vector<double>& scratch, Inversion kind) {
    const std::size_t n = values.size();
    scratch.resize(n);
    std::int64_t count = 0;
    for (std::size_t start = 0; start < n; start += kRun) {
        count += insertionSort(values.data() + start, values.data() + std::min(n, start + kRun), kind);
    }
    for (std::size_t width = kRun; width < n; width *= 2) {
        for (std::size_t start = 0; start < n; start += 2 * width) {
            const double* begin = values.data() + start;
            const double* middle = values.data() + std::min(n, start + width);
            const double* end = values.data() + std::min(n, start + 2 * width);
            count += kind == Inversion::FallingOrEqual
                         ? merge<Inversion::FallingOrEqual>(begin, middle, end, scratch.data() + start)
                         : merge<Inversion::Falling>(begin, middle, end, scratch.data() + start);
        }
        values.swap(scratch);
    }
    return count;
}

} // namespace holdfast::analytics::statistics
