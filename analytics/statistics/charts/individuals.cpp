#include "analytics/statistics/charts/individuals.hpp"

#include "analytics/statistics/charts/constants.hpp"
#include "analytics/statistics/summary/compensated.hpp"

#include <algorithm>
#include <cmath>

namespace holdfast::analytics::statistics {
namespace {

struct Ranges final {
    double mean = 0.0;
    double averageRange = 0.0;
    bool finite = true;
};

Ranges rangesOf(std::span<const double> values) {
    CompensatedSum sum;
    CompensatedSum ranges;
    double before = values.front();
    bool finite = true;
    for (const double value : values) {
        finite = finite && std::isfinite(value);
        sum.add(value);
        ranges.add(std::abs(value - before));
        before = value;
    }
    Ranges result;
    result.finite = finite;
    result.mean = sum.value() / static_cast<double>(values.size());
    result.averageRange = values.size() < 2 ? 0.0 : ranges.value() / static_cast<double>(values.size() - 1);
    return result;
}

bool isCorrelated(std::span<const double> values, double mean) {
    double squares = 0.0;
    double products = 0.0;
    double before = 0.0;
    for (const double value : values) {
        const double deviation = value - mean;
        squares += deviation * deviation;
        products += before * deviation;
        before = deviation;
    }
    return products > 2.0 / std::sqrt(static_cast<double>(values.size())) * squares;
}

tl::expected<Baseline, StatisticsFault> baselineFor(std::span<const double> values, const ChartOptions& options) {
    if (options.baseline) {
        if (options.baseline->kind != ChartKind::Individuals || !(options.baseline->sigma >= 0.0)) {
            return tl::unexpected{StatisticsFault::OutOfDomain};
        }
        return *options.baseline;
    }
    if (!options.stretch) {
        return individualsBaseline({}, values);
    }
    if (options.stretch->first > values.size() || options.stretch->count > values.size() - options.stretch->first) {
        return tl::unexpected{StatisticsFault::OutOfDomain};
    }
    return individualsBaseline({}, values.subspan(options.stretch->first, options.stretch->count));
}

void readPoints(std::span<const double> values, const ChartOptions& options, IndividualsChart& chart) {
    const double center = chart.baseline.center;
    const double sigma = chart.baseline.sigma;
    const bool spread = sigma > 0.0;
    const double per = spread ? sigma : 1.0;
    const double rangeLimit = chart.ranges.upper;
    RuleReader reader{spread ? options.rules : withoutSpread(options.rules), values.size()};
    double before = values.front();
    for (std::size_t i = 0; i < values.size(); ++i) {
        reader.take(values[i], (values[i] - center) / per);
        if (std::abs(values[i] - before) > rangeLimit && spread) {
            chart.rangesOutside.push_back(i);
        }
        before = values[i];
    }
    chart.findings = std::move(reader).finish();
}

} // namespace

RuleSet withoutSpread(RuleSet rules) {
    for (const auto rule : {NelsonRule::BeyondThreeSigma, NelsonRule::TwoOfThree, NelsonRule::FourOfFive,
                            NelsonRule::FifteenWithin, NelsonRule::EightBeyond}) {
        rules = rules.without(rule);
    }
    return rules;
}

tl::expected<Baseline, StatisticsFault> individualsBaseline(std::string name, std::span<const double> stretch) {
    if (stretch.empty()) {
        return tl::unexpected{StatisticsFault::NoValues};
    }
    const auto of = rangesOf(stretch);
    if (!of.finite) {
        return tl::unexpected{StatisticsFault::NotFinite};
    }
    if (stretch.size() < 2) {
        return tl::unexpected{StatisticsFault::TooFewValues};
    }
    if (!std::isfinite(of.mean) || !std::isfinite(of.averageRange)) {
        return tl::unexpected{StatisticsFault::OutOfDomain};
    }
    Baseline baseline;
    baseline.name = std::move(name);
    baseline.kind = ChartKind::Individuals;
    baseline.points = stretch.size();
    baseline.sigma = of.averageRange / kD2OfTwo;
    baseline.center = of.averageRange > 0.0 ? of.mean : stretch.front();
    const auto n = static_cast<double>(stretch.size());
    baseline.spreadError = std::sqrt(0.8264 * n - 1.082) / (n - 1.0);
    if (stretch.size() < kUsualPoints) {
        baseline.caveats.push_back(ChartCaveat::FewPoints);
    }
    if (!(baseline.sigma > 0.0)) {
        baseline.caveats.push_back(ChartCaveat::NoSpread);
    } else if (isCorrelated(stretch, of.mean)) {
        baseline.caveats.push_back(ChartCaveat::Correlated);
    }
    return baseline;
}

tl::expected<IndividualsChart, StatisticsFault> individualsChart(std::span<const double> values,
                                                                 const ChartOptions& options) {
    if (values.empty()) {
        return tl::unexpected{StatisticsFault::NoValues};
    }
    if ((options.baseline || options.stretch) &&
        !std::all_of(values.begin(), values.end(), [](double value) { return std::isfinite(value); })) {
        return tl::unexpected{StatisticsFault::NotFinite};
    }
    auto baseline = baselineFor(values, options);
    if (!baseline) {
        return tl::unexpected{baseline.error()};
    }
    IndividualsChart chart;
    chart.baseline = std::move(*baseline);
    const double center = chart.baseline.center;
    const double sigma = chart.baseline.sigma;
    chart.limits = {center - 3.0 * sigma, center, center + 3.0 * sigma};
    chart.ranges = {0.0, kD2OfTwo * sigma, (kD2OfTwo + 3.0 * kD3OfTwo) * sigma};
    if (!std::isfinite(chart.limits.lower) || !std::isfinite(chart.limits.upper)) {
        return tl::unexpected{StatisticsFault::OutOfDomain};
    }
    readPoints(values, options, chart);
    return chart;
}

tl::expected<IndividualsWithEwma, StatisticsFault>
individualsWithEwma(std::span<const double> values, const ChartOptions& options, const EwmaRules& rules) {
    auto individuals = individualsChart(values, options);
    if (!individuals) {
        return tl::unexpected{individuals.error()};
    }
    auto track = ewma(values, individuals->baseline.center, individuals->baseline.sigma, rules);
    if (!track) {
        return tl::unexpected{track.error()};
    }
    return IndividualsWithEwma{std::move(*individuals), std::move(*track)};
}

} // namespace holdfast::analytics::statistics
