#include "analytics/statistics/counts/survival.hpp"

#include "analytics/statistics/counts/count_domain.hpp"
#include "analytics/statistics/counts/risk_table.hpp"

#include <boost/math/distributions/normal.hpp>

#include <algorithm>
#include <cmath>

namespace holdfast::analytics::statistics {

tl::expected<std::vector<RiskRow>, StatisticsFault> riskTable(std::span<const WashOutcome> outcomes) {
    std::vector<RiskRow> rows;
    std::int64_t pieces = 0;
    for (const auto& outcome : outcomes) {
        if (!std::isfinite(outcome.cycles))
            return tl::unexpected(StatisticsFault::NotFinite);
        if (outcome.cycles < 0.0 || !isCount(outcome.pieces) || !isCount(pieces += outcome.pieces))
            return tl::unexpected(StatisticsFault::OutOfDomain);
        if (outcome.pieces > 0)
            rows.push_back(
                {outcome.cycles, outcome.failed ? outcome.pieces : 0, outcome.failed ? 0 : outcome.pieces, 0});
    }
    std::sort(rows.begin(), rows.end(), [](const auto& l, const auto& r) { return l.cycles < r.cycles; });
    std::size_t last = 0;
    for (std::size_t i = 1; i < rows.size(); ++i) {
        if (rows[i].cycles == rows[last].cycles) {
            rows[last].failed += rows[i].failed;
            rows[last].withdrawn += rows[i].withdrawn;
        } else {
            rows[++last] = rows[i];
        }
    }
    rows.resize(rows.empty() ? 0 : last + 1);
    for (auto& row : rows) {
        row.atRisk = pieces;
        pieces -= row.failed + row.withdrawn;
    }
    return rows;
}

namespace {

/// Limits of S by the complementary log-log.
void setLimits(SurvivalStep& step, double greenwood, double z, double upperBefore) noexcept {
    if (step.survival <= 0.0) {
        step.survival = step.lower = step.standardError = 0.0;
        step.upper = upperBefore;
        return;
    }
    step.standardError = step.survival * std::sqrt(greenwood);
    const double half = z * std::sqrt(greenwood) / std::abs(std::log(step.survival));
    step.lower = std::pow(step.survival, std::exp(half));
    step.upper = std::pow(step.survival, std::exp(-half));
}

} // namespace

tl::expected<SurvivalCurve, StatisticsFault> kaplanMeier(std::span<const WashOutcome> outcomes, double confidence) {
    if (!isInnerProbability(confidence))
        return tl::unexpected(StatisticsFault::OutOfDomain);
    const auto rows = riskTable(outcomes);
    if (!rows)
        return tl::unexpected(rows.error());
    if (rows->empty())
        return tl::unexpected(StatisticsFault::NoValues);
    const double z = -boost::math::quantile(boost::math::normal_distribution<>(), (1.0 - confidence) / 2.0);
    SurvivalCurve curve;
    curve.pieces = rows->front().atRisk;
    curve.followedTo = rows->back().cycles;
    double survival = 1.0;
    double greenwood = 0.0;
    double upper = 1.0;
    for (const auto& row : *rows) {
        if (row.failed == 0)
            continue;
        const auto n = static_cast<double>(row.atRisk);
        const auto d = static_cast<double>(row.failed);
        survival *= (n - d) / n;
        greenwood += d < n ? d / (n * (n - d)) : 0.0;
        SurvivalStep step{row.cycles, row.atRisk, row.failed, survival, 0.0, 0.0, 1.0};
        setLimits(step, greenwood, z, upper);
        upper = step.upper;
        curve.steps.push_back(step);
    }
    return curve;
}

std::optional<double> SurvivalCurve::at(double cycles) const noexcept {
    if (!(cycles >= 0.0))
        return std::nullopt;
    const auto next = std::upper_bound(steps.begin(), steps.end(), cycles,
                                       [](double value, const SurvivalStep& step) { return value < step.cycles; });
    const double survival = next == steps.begin() ? 1.0 : std::prev(next)->survival;
    if (cycles > followedTo && survival > 0.0)
        return std::nullopt;
    return survival;
}

std::optional<double> SurvivalCurve::median() const noexcept {
    for (const auto& step : steps)
        if (step.survival <= 0.5)
            return step.cycles;
    return std::nullopt;
}

tl::expected<std::vector<LifeRow>, StatisticsFault> lifeTable(std::int64_t pieces,
                                                              std::span<const LifeInterval> intervals) {
    if (!isCount(pieces))
        return tl::unexpected(StatisticsFault::OutOfDomain);
    if (pieces == 0 || intervals.empty())
        return tl::unexpected(StatisticsFault::NoValues);
    std::vector<LifeRow> rows;
    double survival = 1.0;
    double greenwood = 0.0;
    for (const auto& interval : intervals) {
        if (!isCount(interval.failed) || !isCount(interval.withdrawn) || interval.failed + interval.withdrawn > pieces)
            return tl::unexpected(StatisticsFault::OutOfDomain);
        const auto d = static_cast<double>(interval.failed);
        LifeRow row{pieces, static_cast<double>(pieces) - static_cast<double>(interval.withdrawn) / 2.0, 0.0, survival,
                    0.0};
        if (row.exposed > 0.0) {
            row.failing = d / row.exposed;
            row.survival = survival = survival * (1.0 - row.failing);
            greenwood += d < row.exposed ? d / (row.exposed * (row.exposed - d)) : 0.0;
        }
        row.standardError = survival * std::sqrt(greenwood);
        rows.push_back(row);
        pieces -= interval.failed + interval.withdrawn;
    }
    return rows;
}

} // namespace holdfast::analytics::statistics
