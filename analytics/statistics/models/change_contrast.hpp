#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

namespace holdfast::analytics::statistics {

/// What one value or period adds: amount over weight is its mean, share or rate.
struct ChangeCell final {
    double amount = 0.0;
    double weight = 0.0;
};

enum class ChangeLaw { Normal, Binomial, Poisson };

/// What two levels explain beyond one, for every split: index k − 1 holds the split after k cells. Normal: the sum of
/// squares between; binomial and Poisson: the log likelihood ratio. Linear.
[[nodiscard]] std::vector<double> contrasts(const std::vector<ChangeCell>& cells, ChangeLaw law);

/// (1 + orders whose largest contrast is not below that of the cells as they stand)/(1 + permutations). More than
/// 10,000 cells are first pooled into 10,000 blocks of neighbours; of values a smaller last block keeps its place.
[[nodiscard]] double permutationP(const std::vector<ChangeCell>& cells, ChangeLaw law, int permutations,
                                  std::uint64_t seed);

} // namespace holdfast::analytics::statistics
