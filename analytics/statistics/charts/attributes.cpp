#include "analytics/statistics/charts/attributes.hpp"

#include "analytics/statistics/charts/constants.hpp"
#include "analytics/statistics/summary/compensated.hpp"

#include <algorithm>
#include <boost/math/distributions/chi_squared.hpp>
#include <cmath>
#include <exception>
#include <limits>
#include <optional>

namespace holdfast::analytics::statistics {
namespace {

constexpr double kUpperChi = 0.01;
constexpr double kFewExpected = 5.0;

bool isShare(ChartKind kind) {
    return kind == ChartKind::P || kind == ChartKind::Np || kind == ChartKind::LaneyP;
}
bool isLaney(ChartKind kind) {
    return kind == ChartKind::LaneyP || kind == ChartKind::LaneyU;
}
bool isOfCounts(ChartKind kind) {
    return isShare(kind) || isLaney(kind) || kind == ChartKind::C || kind == ChartKind::U;
}

double sizeOf(ChartKind kind, const Counted& period) {
    return kind == ChartKind::C ? 1.0 : period.inspected;
}

std::optional<StatisticsFault> faultOf(ChartKind kind, std::span<const Counted> periods) {
    if (!isOfCounts(kind)) {
        return StatisticsFault::OutOfDomain;
    }
    for (const auto& period : periods) {
        if (!std::isfinite(period.failed) || !std::isfinite(sizeOf(kind, period))) {
            return StatisticsFault::NotFinite;
        }
        const bool tooMany =
            isShare(kind) ? period.failed > period.inspected : sizeOf(kind, period) == 0.0 && period.failed > 0.0;
        if (period.failed < 0.0 || sizeOf(kind, period) < 0.0 || tooMany) {
            return StatisticsFault::OutOfDomain;
        }
    }
    return std::nullopt;
}

/// Standard deviation of the rate of one period by chance alone.
double chanceOf(ChartKind kind, double center, double size) {
    const double one = isShare(kind) ? center * (1.0 - center) : center;
    return std::sqrt(std::max(0.0, one) / size);
}

struct Dispersion final {
    double squares = 0.0; ///< Σz²
    double sigma = 1.0;   ///< mean |zᵢ − zᵢ₋₁|/d2
};

Dispersion dispersionOf(ChartKind kind, std::span<const Counted> stretch, double center, std::size_t points) {
    CompensatedSum squares;
    CompensatedSum ranges;
    std::optional<double> before;
    for (const auto& period : stretch) {
        const double size = sizeOf(kind, period);
        if (size > 0.0) {
            const double z = (period.failed / size - center) / chanceOf(kind, center, size);
            squares.add(z * z);
            ranges.add(before ? std::abs(z - *before) : 0.0);
            before = z;
        }
    }
    Dispersion result;
    result.squares = squares.value();
    result.sigma = points < 2 ? 1.0 : ranges.value() / static_cast<double>(points - 1) / kD2OfTwo;
    return result;
}

bool isOverDispersed(double squares, std::size_t points) {
    if (points < 2 || !std::isfinite(squares)) {
        return false;
    }
    try {
        const boost::math::chi_squared chi{static_cast<double>(points - 1)};
        return boost::math::cdf(boost::math::complement(chi, squares)) < kUpperChi;
    } catch (const std::exception&) {
        return false;
    }
}

struct Totals final {
    double center = 0.0;
    double fewest = std::numeric_limits<double>::infinity(); ///< smallest size
    std::size_t points = 0;
    std::size_t empty = 0;
};

Totals totalsOf(ChartKind kind, std::span<const Counted> stretch) {
    CompensatedSum failed;
    CompensatedSum inspected;
    Totals totals;
    for (const auto& period : stretch) {
        const double size = sizeOf(kind, period);
        if (size > 0.0) {
            failed.add(period.failed);
            inspected.add(size);
            totals.fewest = std::min(totals.fewest, size);
            ++totals.points;
        } else {
            ++totals.empty;
        }
    }
    totals.center = totals.points == 0 ? 0.0 : failed.value() / inspected.value();
    return totals;
}

Baseline baselineOf(std::string name, ChartKind kind, std::span<const Counted> stretch, const Totals& totals) {
    Baseline baseline;
    baseline.name = std::move(name);
    baseline.kind = kind;
    baseline.center = totals.center;
    baseline.points = totals.points;
    bool hasSpread = totals.center > 0.0 && !(isShare(kind) && totals.center >= 1.0);
    if (hasSpread) {
        const auto dispersion = dispersionOf(kind, stretch, totals.center, totals.points);
        if (isLaney(kind)) {
            baseline.dispersion = dispersion.sigma;
            hasSpread = dispersion.sigma > 0.0;
        } else if (isOverDispersed(dispersion.squares, totals.points)) {
            baseline.caveats.push_back(ChartCaveat::OverDispersed);
        }
        const double rarer = isShare(kind) ? std::min(totals.center, 1.0 - totals.center) : totals.center;
        if (rarer * totals.fewest < kFewExpected) {
            baseline.caveats.push_back(ChartCaveat::SmallCounts);
        }
    }
    if (totals.points < kUsualPoints) {
        baseline.caveats.push_back(ChartCaveat::FewPoints);
    }
    if (!hasSpread) {
        baseline.caveats.push_back(ChartCaveat::NoSpread);
    }
    if (totals.empty > 0) {
        baseline.caveats.push_back(ChartCaveat::EmptyPeriods);
    }
    return baseline;
}

AttributePoint pointOf(const Baseline& baseline, const Counted& period) {
    const double size = sizeOf(baseline.kind, period);
    AttributePoint point;
    point.inspected = size > 0.0;
    if (!point.inspected) {
        return point;
    }
    const double deviation = chanceOf(baseline.kind, baseline.center, size) * baseline.dispersion;
    const double times = baseline.kind == ChartKind::Np ? size : 1.0;
    const double rate = period.failed / size;
    const double most = isShare(baseline.kind) ? 1.0 : std::numeric_limits<double>::infinity();
    point.value = baseline.kind == ChartKind::Np ? period.failed : rate;
    point.z = deviation > 0.0 ? (rate - baseline.center) / deviation : 0.0;
    point.limits = {times * std::max(0.0, baseline.center - 3.0 * deviation), times * baseline.center,
                    times * std::min(most, baseline.center + 3.0 * deviation)};
    return point;
}

/// Findings over the inspected points, told by the places of all.
RuleFindings findingsOf(const std::vector<AttributePoint>& points, const Baseline& baseline, RuleSet rules) {
    const bool hasSpread =
        baseline.dispersion > 0.0 && baseline.center > 0.0 && !(isShare(baseline.kind) && baseline.center >= 1.0);
    RuleReader reader{hasSpread ? rules : withoutSpread(rules), points.size()};
    std::vector<std::size_t> places;
    for (std::size_t i = 0; i < points.size(); ++i) {
        if (points[i].inspected) {
            const double z = hasSpread ? points[i].z : points[i].value - points[i].limits.center;
            reader.take(z, z);
            places.push_back(i);
        }
    }
    auto findings = std::move(reader).finish();
    std::vector<std::uint16_t> marks(points.size(), 0);
    for (std::size_t i = 0; i < places.size(); ++i) {
        marks[places[i]] = findings.marks[i];
    }
    findings.marks = std::move(marks);
    for (auto& signal : findings.alarms) {
        signal.first = places[signal.first];
        signal.at = places[signal.at];
        signal.last = places[signal.last];
    }
    return findings;
}

tl::expected<Baseline, StatisticsFault> baselineFor(ChartKind kind, std::span<const Counted> periods,
                                                    const ChartOptions& options) {
    if (options.baseline) {
        const auto& frozen = *options.baseline;
        const bool holds = frozen.kind == kind && frozen.center >= 0.0 && frozen.dispersion >= 0.0 &&
                           std::isfinite(frozen.center) && (!isShare(kind) || frozen.center <= 1.0);
        return holds ? tl::expected<Baseline, StatisticsFault>{frozen} : tl::unexpected{StatisticsFault::OutOfDomain};
    }
    const auto stretch = options.stretch.value_or(Stretch{0, periods.size()});
    if (stretch.first > periods.size() || stretch.count > periods.size() - stretch.first) {
        return tl::unexpected{StatisticsFault::OutOfDomain};
    }
    return attributeBaseline({}, kind, periods.subspan(stretch.first, stretch.count));
}

} // namespace

tl::expected<Baseline, StatisticsFault> attributeBaseline(std::string name, ChartKind kind,
                                                          std::span<const Counted> stretch) {
    if (const auto fault = faultOf(kind, stretch)) {
        return tl::unexpected{*fault};
    }
    const auto totals = totalsOf(kind, stretch);
    if (totals.points == 0) {
        return tl::unexpected{StatisticsFault::NoValues};
    }
    if (isLaney(kind) && totals.points < 2) {
        return tl::unexpected{StatisticsFault::TooFewValues};
    }
    auto baseline = baselineOf(std::move(name), kind, stretch, totals);
    if (!std::isfinite(baseline.center) || !std::isfinite(baseline.dispersion)) {
        return tl::unexpected{StatisticsFault::OutOfDomain};
    }
    return baseline;
}

tl::expected<AttributeChart, StatisticsFault> attributeChart(ChartKind kind, std::span<const Counted> periods,
                                                             const ChartOptions& options) {
    if (const auto fault = faultOf(kind, periods)) {
        return tl::unexpected{*fault};
    }
    if (periods.empty()) {
        return tl::unexpected{StatisticsFault::NoValues};
    }
    auto baseline = baselineFor(kind, periods, options);
    if (!baseline) {
        return tl::unexpected{baseline.error()};
    }
    AttributeChart chart;
    chart.baseline = std::move(*baseline);
    chart.points.reserve(periods.size());
    for (const auto& period : periods) {
        chart.points.push_back(pointOf(chart.baseline, period));
    }
    chart.findings = findingsOf(chart.points, chart.baseline, options.rules);
    return chart;
}

} // namespace holdfast::analytics::statistics
