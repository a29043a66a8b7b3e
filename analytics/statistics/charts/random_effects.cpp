#include "analytics/statistics/charts/random_effects.hpp"

#include "analytics/statistics/charts/non_central_t.hpp"
#include "analytics/statistics/charts/quadrature.hpp"
#include "analytics/statistics/charts/root.hpp"
#include "analytics/statistics/summary/compensated.hpp"

#include <algorithm>
#include <cmath>

namespace holdfast::analytics::statistics {
namespace {

struct Group final {
    double size = 0.0;
    double mean = 0.0;
    double squares = 0.0;
};

/// Around `shift`, so that far-off values keep their digits.
Group groupOf(const std::vector<double>& values, double shift) {
    Group group;
    group.size = static_cast<double>(values.size());
    CompensatedSum sum;
    for (const double value : values) {
        sum.add(value - shift);
    }
    group.mean = sum.value() / group.size;
    CompensatedSum squares;
    for (const double value : values) {
        squares.add((value - shift - group.mean) * (value - shift - group.mean));
    }
    group.squares = squares.value();
    return group;
}

OneWay summed(const std::vector<Group>& groups, double shift) {
    OneWay of;
    of.groups = groups.size();
    const auto a = static_cast<double>(groups.size());
    double total = 0.0;
    double sizes = 0.0;
    double sizeSquares = 0.0;
    double inverse = 0.0;
    for (const auto& group : groups) {
        of.meanOfGroups += group.mean / a;
        total += group.mean * group.size;
        sizes += group.size;
        sizeSquares += group.size * group.size;
        inverse += 1.0 / group.size;
        of.squaresWithin += group.squares;
    }
    const double grand = total / sizes;
    for (const auto& group : groups) {
        of.squaresOfMeans += (group.mean - of.meanOfGroups) * (group.mean - of.meanOfGroups);
        of.squaresBetween += group.size * (group.mean - grand) * (group.mean - grand);
    }
    of.values = static_cast<std::size_t>(sizes);
    of.sizeMean = a / inverse;
    of.sizeEffective = (sizes - sizeSquares / sizes) / (a - 1.0);
    of.degreesWithin = sizes - a;
    of.meanOfGroups += shift;
    of.grandMean = grand + shift;
    return of;
}

/// √(σa² + σe²) by the mean squares, never below what lies within.
double spreadOf(const OneWay& of, double meanWithin) {
    const double between = of.squaresBetween / static_cast<double>(of.groups - 1);
    const double groupVariance = std::max(0.0, (between - meanWithin) / of.sizeEffective);
    return std::sqrt(groupVariance + meanWithin);
}

/// How far below the mean the (1 − γ) quantile of the pivotal quantity lies.
class Pivot final {
public:
    Pivot(const OneWay& of, double squaresWithin, double degreesWithin, double z)
        : m_a{static_cast<double>(of.groups)},
          m_meanSquare{of.squaresOfMeans / (m_a - 1.0)}, m_z{z}, m_first{spreadNodes(m_a - 1.0)} {
        const double share = 1.0 - 1.0 / of.sizeMean;
        if (degreesWithin > 0.0 && share > 0.0 && squaresWithin > 0.0) {
            m_withinSquare = share * squaresWithin / degreesWithin;
            m_second = spreadNodes(degreesWithin);
        } else {
            m_second = {{1.0}, {1.0}};
        }
    }

    /// Chance that the pivotal quantity lies no further below the mean than `distance`.
    [[nodiscard]] double within(double distance) const {
        // With few groups the distance is so long that the integrand jumps at a small ratio: more nodes there.
        const double unit = std::sqrt(m_meanSquare) / std::max(std::abs(distance), 1e-300);
        const bool steep = 9.0 * unit / std::sqrt(m_a) < 2.0 / std::sqrt(2.0 * (m_a - 1.0));
        return steep ? weighed(spreadNodes(m_a - 1.0, m_z * unit, 9.0 * unit / std::sqrt(m_a)), distance)
                     : weighed(m_first, distance);
    }

private:
    [[nodiscard]] double weighed(const SpreadNodes& first, double distance) const {
        double sum = 0.0;
        for (std::size_t i = 0; i < first.ratio.size(); ++i) {
            const double between = m_meanSquare / (first.ratio[i] * first.ratio[i]);
            if (first.chance[i] > 0.0 && std::isfinite(between)) {
                sum += first.chance[i] * weighedSecond(between, distance);
            }
        }
        return sum;
    }

    [[nodiscard]] double weighedSecond(double between, double distance) const {
        const double per = std::sqrt(between / m_a);
        double sum = 0.0;
        for (std::size_t j = 0; j < m_second.ratio.size(); ++j) {
            const double w = m_second.ratio[j];
            const double reach = m_z * std::sqrt(between + m_withinSquare / (w * w));
            sum += m_second.chance[j] * normalBelow((distance - reach) / per);
        }
        return sum;
    }

    double m_a;
    double m_meanSquare;
    double m_z;
    double m_withinSquare = 0.0;
    SpreadNodes m_first;
    SpreadNodes m_second;
};

bool isAim(const ToleranceAim& aim) {
    return aim.content >= 0.5 && aim.content < 1.0 && aim.confidence > 0.0 && aim.confidence < 1.0;
}

tl::expected<ToleranceBound, StatisticsFault> finished(ToleranceBound bound, double distance, const ToleranceAim& aim) {
    bound.bound = aim.side == BoundSide::Lower ? bound.mean - distance : bound.mean + distance;
    bound.factor = bound.sd > 0.0 ? distance / bound.sd : 0.0;
    if (!std::isfinite(bound.bound) || !std::isfinite(bound.factor)) {
        return tl::unexpected{StatisticsFault::OutOfDomain};
    }
    return bound;
}

} // namespace

tl::expected<OneWay, StatisticsFault> oneWay(std::span<const std::vector<double>> groups) {
    if (groups.empty() || std::any_of(groups.begin(), groups.end(), [](const auto& group) { return group.empty(); })) {
        return tl::unexpected{StatisticsFault::NoValues};
    }
    if (groups.size() < 2) {
        return tl::unexpected{StatisticsFault::TooFewValues};
    }
    const double shift = groups.front().front();
    std::vector<Group> parts;
    for (const auto& group : groups) {
        if (!std::all_of(group.begin(), group.end(), [](double value) { return std::isfinite(value); })) {
            return tl::unexpected{StatisticsFault::NotFinite};
        }
        parts.push_back(groupOf(group, shift));
    }
    const auto of = summed(parts, shift);
    if (!std::isfinite(of.squaresBetween) || !std::isfinite(of.squaresWithin) || !std::isfinite(of.squaresOfMeans)) {
        return tl::unexpected{StatisticsFault::OutOfDomain};
    }
    return of;
}

tl::expected<ToleranceBound, StatisticsFault> randomEffectsBound(std::span<const std::vector<double>> groups,
                                                                 const ToleranceAim& aim, const PooledWithin& pooled) {
    const auto of = oneWay(groups);
    if (!of) {
        return tl::unexpected{of.error()};
    }
    if (!isAim(aim) || !(pooled.squares >= 0.0) || !(pooled.degrees >= 0.0) || !std::isfinite(pooled.squares) ||
        !std::isfinite(pooled.degrees)) {
        return tl::unexpected{StatisticsFault::OutOfDomain};
    }
    const double squaresWithin = of->squaresWithin + pooled.squares;
    const double degreesWithin = of->degreesWithin + pooled.degrees;
    const double meanWithin = degreesWithin > 0.0 ? squaresWithin / degreesWithin : 0.0;
    ToleranceBound bound;
    bound.mean = of->meanOfGroups;
    bound.sd = spreadOf(*of, meanWithin);
    if (!(of->squaresOfMeans + squaresWithin > 0.0)) {
        bound.caveat = ToleranceCaveat::NoSpread;
        return finished(bound, 0.0, aim);
    }
    if (of->groups < kUsualGroups) {
        bound.caveat = ToleranceCaveat::FewGroups;
    } else if (!(degreesWithin > 0.0)) {
        bound.caveat = ToleranceCaveat::NoWithinSpread;
    }
    // Means that happen to be equal still come from readings that differ: a thousandth of their own spread is assumed.
    auto floored = *of;
    floored.squaresOfMeans =
        std::max(of->squaresOfMeans, 1e-6 * meanWithin / of->sizeMean * static_cast<double>(of->groups - 1));
    const double unit = std::sqrt(floored.squaresOfMeans / static_cast<double>(of->groups - 1) + meanWithin);
    const Pivot pivot{floored, squaresWithin, degreesWithin, normalQuantile(aim.content)};
    const auto distance = rootOfRising([&](double units) { return pivot.within(units * unit) - aim.confidence; });
    if (!distance) {
        return tl::unexpected{StatisticsFault::NoConvergence};
    }
    return finished(bound, *distance * unit, aim);
}

tl::expected<ToleranceBound, StatisticsFault> randomEffectsHandbookBound(std::span<const std::vector<double>> groups,
                                                                         const ToleranceAim& aim) {
    const auto of = oneWay(groups);
    if (!of) {
        return tl::unexpected{of.error()};
    }
    const auto all = toleranceFactor(of->values, aim);
    const auto few = toleranceFactor(of->groups, aim);
    if (!all || !few) {
        return tl::unexpected{!all ? all.error() : few.error()};
    }
    if (!(of->degreesWithin > 0.0)) {
        return tl::unexpected{StatisticsFault::TooFewValues};
    }
    const double n = of->sizeEffective;
    const double between = of->squaresBetween / static_cast<double>(of->groups - 1);
    const double within = of->squaresWithin / of->degreesWithin;
    ToleranceBound bound;
    bound.mean = of->grandMean;
    bound.sd = std::sqrt(between / n + (n - 1.0) / n * within);
    if (!(bound.sd > 0.0)) {
        bound.caveat = ToleranceCaveat::NoSpread;
        return finished(bound, 0.0, aim);
    }
    if (of->groups < kUsualGroups) {
        bound.caveat = ToleranceCaveat::FewGroups;
    }
    const double ratio = within > 0.0 ? std::max(1.0, between / within) : 0.0;
    const double w = within > 0.0 ? std::sqrt(ratio / (ratio + n - 1.0)) : 1.0;
    const double root = std::sqrt(n);
    const double factor = (*all - *few / root + (*few - *all) * w) / (1.0 - 1.0 / root);
    return finished(bound, factor * bound.sd, aim);
}

} // namespace holdfast::analytics::statistics
