#include "analytics/statistics/charts/subgroups.hpp"

#include "analytics/statistics/charts/constants.hpp"
#include "analytics/statistics/summary/compensated.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

namespace holdfast::analytics::statistics {
namespace {

constexpr std::size_t kLargestSubgroup = 1000;

struct Groups final {
    std::vector<double> means;
    std::vector<double> spreads;
};

std::optional<StatisticsFault> faultOf(std::span<const double> values, std::size_t size) {
    if (size < 2 || size > kLargestSubgroup) {
        return StatisticsFault::OutOfDomain;
    }
    if (values.empty()) {
        return StatisticsFault::NoValues;
    }
    if (values.size() % size != 0) {
        return StatisticsFault::UnequalLengths;
    }
    const bool finite = std::all_of(values.begin(), values.end(), [](double value) { return std::isfinite(value); });
    return finite ? std::nullopt : std::optional{StatisticsFault::NotFinite};
}

Groups groupsOf(std::span<const double> values, std::size_t size, SubgroupSpread spread) {
    Groups groups;
    for (std::size_t begin = 0; begin < values.size(); begin += size) {
        const auto group = values.subspan(begin, size);
        const double first = group.front();
        CompensatedSum sum;
        for (const double value : group) {
            sum.add(value - first);
        }
        const double apart = sum.value() / static_cast<double>(size);
        CompensatedSum squares;
        for (const double value : group) {
            squares.add((value - first - apart) * (value - first - apart));
        }
        const auto [least, most] = std::minmax_element(group.begin(), group.end());
        groups.means.push_back(first + apart);
        groups.spreads.push_back(spread == SubgroupSpread::Range
                                     ? *most - *least
                                     : std::sqrt(squares.value() / static_cast<double>(size - 1)));
    }
    return groups;
}

double meanOf(std::span<const double> values) {
    CompensatedSum sum;
    for (const double value : values) {
        sum.add(value - values.front());
    }
    return values.front() + sum.value() / static_cast<double>(values.size());
}

/// What one σ is in the spread that is plotted: d2 or c4, and its standard deviation.
struct SpreadScale final {
    double mean = 1.0;
    double deviation = 0.0;
};

SpreadScale scaleOf(std::size_t size, SubgroupSpread spread) {
    if (spread == SubgroupSpread::StandardDeviation) {
        const double c4 = c4Of(static_cast<double>(size));
        return {c4, std::sqrt(std::max(0.0, 1.0 - c4 * c4))};
    }
    const auto constants = chartConstants(static_cast<int>(size));
    return {constants->d2, constants->d3};
}

Baseline baselineOf(std::string name, std::span<const double> means, std::span<const double> spreads, std::size_t size,
                    SubgroupSpread spread) {
    const auto scale = scaleOf(size, spread);
    Baseline baseline;
    baseline.name = std::move(name);
    baseline.kind = spread == SubgroupSpread::Range ? ChartKind::MeanRange : ChartKind::MeanSd;
    baseline.center = meanOf(means);
    baseline.sigma = meanOf(spreads) / scale.mean;
    baseline.subgroup = size;
    baseline.points = means.size();
    baseline.spreadError = scale.deviation / (scale.mean * std::sqrt(static_cast<double>(means.size())));
    if (means.size() < kUsualPoints) {
        baseline.caveats.push_back(ChartCaveat::FewPoints);
    }
    if (!(baseline.sigma > 0.0)) {
        baseline.caveats.push_back(ChartCaveat::NoSpread);
    }
    return baseline;
}

tl::expected<Baseline, StatisticsFault> baselineFor(const Groups& groups, std::size_t size, SubgroupSpread spread,
                                                    const ChartOptions& options) {
    const auto kind = spread == SubgroupSpread::Range ? ChartKind::MeanRange : ChartKind::MeanSd;
    if (options.baseline) {
        if (options.baseline->kind != kind || options.baseline->subgroup != size || !(options.baseline->sigma >= 0.0)) {
            return tl::unexpected{StatisticsFault::OutOfDomain};
        }
        return *options.baseline;
    }
    const auto stretch = options.stretch.value_or(Stretch{0, groups.means.size()});
    if (stretch.count == 0 || stretch.first > groups.means.size() ||
        stretch.count > groups.means.size() - stretch.first) {
        return tl::unexpected{StatisticsFault::OutOfDomain};
    }
    return baselineOf({}, std::span{groups.means}.subspan(stretch.first, stretch.count),
                      std::span{groups.spreads}.subspan(stretch.first, stretch.count), size, spread);
}

} // namespace

tl::expected<Baseline, StatisticsFault> subgroupBaseline(std::string name, std::span<const double> values,
                                                         std::size_t size, SubgroupSpread spread) {
    if (const auto fault = faultOf(values, size)) {
        return tl::unexpected{*fault};
    }
    const auto groups = groupsOf(values, size, spread);
    auto baseline = baselineOf(std::move(name), groups.means, groups.spreads, size, spread);
    if (!std::isfinite(baseline.center) || !std::isfinite(baseline.sigma)) {
        return tl::unexpected{StatisticsFault::OutOfDomain};
    }
    return baseline;
}

tl::expected<SubgroupChart, StatisticsFault> subgroupChart(std::span<const double> values, std::size_t size,
                                                           SubgroupSpread spread, const ChartOptions& options) {
    if (const auto fault = faultOf(values, size)) {
        return tl::unexpected{*fault};
    }
    auto groups = groupsOf(values, size, spread);
    auto baseline = baselineFor(groups, size, spread, options);
    if (!baseline) {
        return tl::unexpected{baseline.error()};
    }
    const auto scale = scaleOf(size, spread);
    const double sigma = baseline->sigma;
    const double meanSigma = sigma / std::sqrt(static_cast<double>(size));
    if (!std::isfinite(baseline->center) || !std::isfinite(sigma)) {
        return tl::unexpected{StatisticsFault::OutOfDomain};
    }
    SubgroupChart chart;
    chart.means = {baseline->center - 3.0 * meanSigma, baseline->center, baseline->center + 3.0 * meanSigma};
    chart.spreads = {std::max(0.0, scale.mean - 3.0 * scale.deviation) * sigma, scale.mean * sigma,
                     (scale.mean + 3.0 * scale.deviation) * sigma};
    const bool hasSpread = sigma > 0.0;
    RuleReader reader{hasSpread ? options.rules : withoutSpread(options.rules), groups.means.size()};
    for (std::size_t i = 0; i < groups.means.size(); ++i) {
        reader.take(groups.means[i], (groups.means[i] - baseline->center) / (hasSpread ? meanSigma : 1.0));
        if (hasSpread && (groups.spreads[i] > chart.spreads.upper || groups.spreads[i] < chart.spreads.lower)) {
            chart.spreadsOutside.push_back(i);
        }
    }
    chart.findings = std::move(reader).finish();
    chart.baseline = std::move(*baseline);
    chart.meanValues = std::move(groups.means);
    chart.spreadValues = std::move(groups.spreads);
    return chart;
}

} // namespace holdfast::analytics::statistics
