#include "analytics/statistics/models/change_contrast.hpp"

#include "analytics/statistics/models/plain_figures.hpp"
#include "analytics/statistics/models/random_order.hpp"

#include <algorithm>
#include <cmath>

namespace holdfast::analytics::statistics {

namespace {

constexpr std::size_t kMostBlocks = 10'000;
constexpr double kRounding = 1e-12; ///< the same contrast summed in another order

/// What one level explains of a stretch with this amount and weight, up to terms every split shares.
template <ChangeLaw law>
double explained(double amount, double weight) noexcept {
    if (!(weight > 0.0)) {
        return 0.0;
    }
    if constexpr (law == ChangeLaw::Normal) {
        return amount * amount / weight;
    } else if constexpr (law == ChangeLaw::Binomial) {
        return xLogX(amount) + xLogX(weight - amount) - xLogX(weight);
    } else {
        return amount > 0.0 ? amount * std::log(amount / weight) : 0.0;
    }
}

ChangeCell sumOf(const std::vector<ChangeCell>& cells) noexcept {
    ChangeCell sum;
    for (const auto& cell : cells) {
        sum.amount += cell.amount;
        sum.weight += cell.weight;
    }
    return sum;
}

/// Calls see(contrast) for every split in turn.
template <ChangeLaw law, class See>
void eachSplit(const std::vector<ChangeCell>& cells, ChangeCell sum, See&& see) {
    const double whole = explained<law>(sum.amount, sum.weight);
    ChangeCell left;
    for (std::size_t k = 0; k + 1 < cells.size(); ++k) {
        left.amount += cells[k].amount;
        left.weight += cells[k].weight;
        const double both = explained<law>(left.amount, left.weight) +
                            explained<law>(sum.amount - left.amount, sum.weight - left.weight);
        see(std::max(0.0, both - whole));
    }
}

template <ChangeLaw law>
double largest(const std::vector<ChangeCell>& cells, ChangeCell sum) {
    double most = 0.0;
    eachSplit<law>(cells, sum, [&](double contrast) { most = std::max(most, contrast); });
    return most;
}

std::vector<ChangeCell> pooled(const std::vector<ChangeCell>& cells) {
    const std::size_t size = (cells.size() + kMostBlocks - 1) / kMostBlocks;
    std::vector<ChangeCell> blocks((cells.size() + size - 1) / size);
    for (std::size_t i = 0; i < cells.size(); ++i) {
        blocks[i / size].amount += cells[i].amount;
        blocks[i / size].weight += cells[i].weight;
    }
    return blocks;
}

/// Of one law, orders of cells that carry their weights with them.
template <ChangeLaw law>
double permutationPOf(std::vector<ChangeCell> cells, int permutations, std::uint64_t seed) {
    const ChangeCell sum = sumOf(cells);
    const double whole = explained<law>(sum.amount, sum.weight);
    const double observed = largest<law>(cells, sum) * (1.0 - kRounding) + whole;
    Xoshiro256 random{seed};
    int asLarge = 0;
    for (int i = 0; i < permutations; ++i) {
        double most = whole;
        ChangeCell right;
        shuffle(cells, cells.size(), random, [&](const ChangeCell& cell, std::size_t) {
            right.amount += cell.amount;
            right.weight += cell.weight;
            most = std::max(most, explained<law>(right.amount, right.weight) +
                                      explained<law>(sum.amount - right.amount, sum.weight - right.weight));
        });
        asLarge += most >= observed ? 1 : 0;
    }
    return (1.0 + asLarge) / (1.0 + permutations);
}

/// Normal values about their mean, all of one weight but perhaps the last, which then keeps its place: the weights on
/// both sides of a split never change, so that it is as large as `observed` where the square of the right side's sum
/// reaches a figure known beforehand: observed·left·right/(left + right).
double permutationPOfNormal(const std::vector<ChangeCell>& cells, int permutations, std::uint64_t seed) {
    const ChangeCell sum = sumOf(cells);
    const double observed = largest<ChangeLaw::Normal>(cells, sum) * (1.0 - kRounding);
    std::vector<double> amounts;
    std::vector<double> enough;
    double left = 0.0;
    for (const auto& cell : cells) {
        amounts.push_back(cell.amount - sum.amount / sum.weight * cell.weight);
        enough.push_back(observed * left * (sum.weight - left) / sum.weight);
        left += cell.weight;
    }
    enough.front() = HUGE_VAL; // no split before the first
    const bool lastSmaller = cells.back().weight != cells.front().weight;
    const std::size_t moved = cells.size() - (lastSmaller ? 1 : 0);
    Xoshiro256 random{seed};
    int asLarge = 0;
    for (int i = 0; i < permutations; ++i) {
        double right = lastSmaller ? amounts.back() : 0.0;
        double most = lastSmaller ? right * right - enough.back() : -HUGE_VAL;
        shuffle(amounts, moved, random, [&, limits = enough.data()](double amount, std::size_t place) {
            right += amount;
            most = std::max(most, right * right - limits[place]);
        });
        asLarge += most >= 0.0 ? 1 : 0;
    }
    return (1.0 + asLarge) / (1.0 + permutations);
}

template <ChangeLaw law>
std::vector<double> contrastsOf(const std::vector<ChangeCell>& cells) {
    std::vector<double> result;
    result.reserve(cells.size());
    eachSplit<law>(cells, sumOf(cells), [&](double contrast) { result.push_back(contrast); });
    return result;
}

} // namespace

std::vector<double> contrasts(const std::vector<ChangeCell>& cells, ChangeLaw law) {
    switch (law) {
    case ChangeLaw::Normal:
        return contrastsOf<ChangeLaw::Normal>(cells);
    case ChangeLaw::Binomial:
        return contrastsOf<ChangeLaw::Binomial>(cells);
    case ChangeLaw::Poisson:
        break;
    }
    return contrastsOf<ChangeLaw::Poisson>(cells);
}

double permutationP(const std::vector<ChangeCell>& cells, ChangeLaw law, int permutations, std::uint64_t seed) {
    auto blocks = pooled(cells);
    switch (law) {
    case ChangeLaw::Normal:
        return permutationPOfNormal(blocks, permutations, seed);
    case ChangeLaw::Binomial:
        return permutationPOf<ChangeLaw::Binomial>(std::move(blocks), permutations, seed);
    case ChangeLaw::Poisson:
        break;
    }
    return permutationPOf<ChangeLaw::Poisson>(std::move(blocks), permutations, seed);
}

} // namespace holdfast::analytics::statistics
