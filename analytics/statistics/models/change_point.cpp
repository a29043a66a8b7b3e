#include "analytics/statistics/models/change_point.hpp"

#include "analytics/statistics/models/change_contrast.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

namespace holdfast::analytics::statistics {

namespace {

std::optional<StatisticsFault> faultOf(std::size_t n, const ChangeOptions& options) {
    if (n == 0) {
        return StatisticsFault::NoValues;
    }
    if (n < 3) {
        return StatisticsFault::TooFewValues;
    }
    const bool valid = options.level > 0.0 && options.level < 1.0 && options.permutations >= 0;
    return valid ? std::nullopt : std::optional{StatisticsFault::OutOfDomain};
}

/// How far below the largest 2·log likelihood a position may lie.
double reachOf(double level) {
    return -2.0 * std::log1p(-std::sqrt(level));
}

double levelOf(const std::vector<ChangeCell>& cells, std::size_t begin, std::size_t end) {
    ChangeCell sum;
    for (std::size_t i = begin; i < end; ++i) {
        sum.amount += cells[i].amount;
        sum.weight += cells[i].weight;
    }
    return sum.weight > 0.0 ? sum.amount / sum.weight : 0.0;
}

/// Position, set, levels and p; `twice` is 2·log likelihood ratio of every split, `reach` how far the set goes below.
ChangePoint changeFrom(const std::vector<ChangeCell>& cells, const std::vector<double>& twice, ChangeLaw law,
                       const ChangeOptions& options) {
    ChangePoint result;
    result.level = options.level;
    const auto best = std::max_element(twice.begin(), twice.end());
    result.position = static_cast<std::size_t>(best - twice.begin()) + 1;
    result.statistic = *best;
    result.before = levelOf(cells, 0, result.position);
    result.after = levelOf(cells, result.position, cells.size());
    result.p = permutationP(cells, law, options.permutations, options.seed);
    return result;
}

void fillSet(ChangePoint& change, const std::vector<double>& twice) {
    const double least = change.statistic - reachOf(change.level) * change.dispersion - 1e-9;
    for (std::size_t k = 0; k < twice.size(); ++k) {
        if (twice[k] >= least) {
            change.possible.push_back(k + 1);
        }
    }
}

/// Pearson's chi-square about the two levels over its degrees of freedom, at least 1.
double dispersionOf(const std::vector<ChangeCell>& cells, const ChangePoint& change, ChangeLaw law) {
    double chiSquare = 0.0;
    double informative = 0.0;
    for (std::size_t i = 0; i < cells.size(); ++i) {
        const double level = i < change.position ? change.before : change.after;
        const double expected = level * cells[i].weight;
        const double variance = law == ChangeLaw::Binomial ? expected * (1.0 - level) : expected;
        informative += cells[i].weight > 0.0 ? 1.0 : 0.0;
        if (variance > 0.0) {
            chiSquare += (cells[i].amount - expected) * (cells[i].amount - expected) / variance;
        }
    }
    return informative > 2.0 ? std::max(1.0, chiSquare / (informative - 2.0)) : 1.0;
}

ChangePoint changeInCounts(const std::vector<ChangeCell>& cells, ChangeLaw law, const ChangeOptions& options) {
    auto twice = contrasts(cells, law);
    for (double& value : twice) {
        value *= 2.0;
    }
    ChangePoint result = changeFrom(cells, twice, law, options);
    result.dispersion = dispersionOf(cells, result, law);
    fillSet(result, twice);
    return result;
}

} // namespace

tl::expected<ChangePoint, StatisticsFault> changeInMean(const std::vector<double>& values,
                                                        const ChangeOptions& options) {
    if (const auto fault = faultOf(values.size(), options)) {
        return tl::unexpected{*fault};
    }
    double mean = 0.0;
    double count = 0.0;
    for (const double value : values) {
        mean += (value - mean) / ++count;
    }
    double farthest = 0.0;
    for (const double value : values) {
        farthest = std::max(farthest, std::isfinite(value) ? std::abs(value - mean) : HUGE_VAL);
    }
    if (!std::isfinite(mean) || !std::isfinite(farthest)) {
        return tl::unexpected{StatisticsFault::NotFinite};
    }
    if (std::all_of(values.begin(), values.end(), [&](double value) { return value == values.front(); })) {
        return tl::unexpected{StatisticsFault::NoSpread};
    }
    std::vector<ChangeCell> cells(values.size());
    double squares = 0.0; // in units of the farthest deviation, so that nothing overflows
    for (std::size_t i = 0; i < values.size(); ++i) {
        cells[i] = {(values[i] - mean) / farthest, 1.0};
        squares += cells[i].amount * cells[i].amount;
    }
    auto twice = contrasts(cells, ChangeLaw::Normal);
    const double between = *std::max_element(twice.begin(), twice.end());
    for (double& value : twice) {
        const double within = std::max(squares - value, squares * 1e-15);
        value = count * std::log(squares / within);
    }
    ChangePoint result = changeFrom(cells, twice, ChangeLaw::Normal, options);
    result.before = mean + farthest * result.before;
    result.after = mean + farthest * result.after;
    result.squaresNone = squares * farthest * farthest;
    result.squaresOne = std::max(0.0, squares - between) * farthest * farthest;
    fillSet(result, twice);
    return result;
}

tl::expected<ChangePoint, StatisticsFault> changeInShare(const std::vector<FailedOfTotal>& periods,
                                                         const ChangeOptions& options) {
    if (const auto fault = faultOf(periods.size(), options)) {
        return tl::unexpected{*fault};
    }
    std::vector<ChangeCell> cells;
    cells.reserve(periods.size());
    bool failed = false;
    bool passed = false;
    for (const auto& period : periods) {
        if (period.failed < 0 || period.failed > period.total) {
            return tl::unexpected{StatisticsFault::OutOfDomain};
        }
        failed = failed || period.failed > 0;
        passed = passed || period.failed < period.total;
        cells.push_back({static_cast<double>(period.failed), static_cast<double>(period.total)});
    }
    if (!failed || !passed) {
        return tl::unexpected{StatisticsFault::NoSpread};
    }
    return changeInCounts(cells, ChangeLaw::Binomial, options);
}

tl::expected<ChangePoint, StatisticsFault> changeInRate(const std::vector<std::int64_t>& counts,
                                                        const ChangeOptions& options) {
    if (const auto fault = faultOf(counts.size(), options)) {
        return tl::unexpected{*fault};
    }
    std::vector<ChangeCell> cells;
    cells.reserve(counts.size());
    bool any = false;
    for (const std::int64_t count : counts) {
        if (count < 0) {
            return tl::unexpected{StatisticsFault::OutOfDomain};
        }
        any = any || count > 0;
        cells.push_back({static_cast<double>(count), 1.0});
    }
    if (!any) {
        return tl::unexpected{StatisticsFault::NoSpread};
    }
    return changeInCounts(cells, ChangeLaw::Poisson, options);
}

} // namespace holdfast::analytics::statistics
