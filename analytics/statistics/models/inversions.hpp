#pragma once

#include <cstdint>
#include <vector>

namespace holdfast::analytics::statistics {

/// Which pairs i < j of a sequence count as out of order.
enum class Inversion {
    Falling,       ///< a[i] > a[j]
    FallingOrEqual ///< a[i] ≥ a[j]
};

/// Number of pairs out of order, by merge sort: n·log n. Sorts `values`; `scratch` is resized and used.
[[nodiscard]] std::int64_t countInversions(std::vector<double>& values, std::vector<double>& scratch, Inversion kind);

} // namespace holdfast::analytics::statistics
