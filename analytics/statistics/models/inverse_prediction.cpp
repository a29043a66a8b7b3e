#include "analytics/statistics/models/logistic.hpp"
#include "analytics/statistics/models/logistic_profile.hpp"
#include "analytics/statistics/models/root_search.hpp"

#include <boost/math/distributions/normal.hpp>

#include <algorithm>
#include <cmath>

namespace holdfast::analytics::statistics {

namespace {

/// The line held at one log odds while the place where it holds it moves.
class MovingPlace final {
public:
    MovingPlace(LogisticDesign design, Penalty penalty, const LogisticPeak& peak, std::size_t coefficient,
                double logOdds)
        : m_design{std::move(design)}, m_penalty{penalty}, m_peak{peak}, m_coefficient{coefficient}, m_logOdds{
                                                                                                         logOdds} {}

    /// 2(l̂ − l) of the line that has the log odds at `value` (in units of the covariate).
    [[nodiscard]] std::optional<double> chiSquareAt(double value) {
        m_design.recentre(m_coefficient, value);
        const auto top = climbLogistic(m_design, m_penalty, m_peak.beta, HeldCoefficient{0, m_logOdds});
        return top ? std::optional{std::max(0.0, 2.0 * (m_peak.objective - top->objective))} : std::nullopt;
    }

private:
    LogisticDesign m_design;
    Penalty m_penalty;
    const LogisticPeak& m_peak;
    std::size_t m_coefficient;
    double m_logOdds;
};

std::optional<double> limitOf(MovingPlace& place, double value, double error, double z, double side) {
    const auto beyond = [&](double distance) -> std::optional<double> {
        const auto chiSquare = place.chiSquareAt(value + side * distance);
        return chiSquare ? std::optional{std::sqrt(*chiSquare) - z} : std::nullopt;
    };
    const auto distance = distanceToZero(beyond, -z, z * error, 12);
    return distance ? std::optional{value + side * *distance} : std::nullopt;
}

bool argumentsAreValid(const LogisticData& data, std::size_t covariate, const std::vector<double>& at, double chance,
                       double level) {
    bool valid = covariate < data.covariates.size() && at.size() == data.covariates.size();
    for (std::size_t j = 0; valid && j < at.size(); ++j) {
        valid = j == covariate || std::isfinite(at[j]);
    }
    return valid && chance > 0.0 && chance < 1.0 && level > 0.0 && level < 1.0;
}

} // namespace

tl::expected<ValueForChance, StatisticsFault> valueForChance(const LogisticData& data, std::size_t covariate,
                                                             const std::vector<double>& at, double chance,
                                                             const LogisticOptions& options) {
    if (!argumentsAreValid(data, covariate, at, chance, options.level)) {
        return tl::unexpected{StatisticsFault::OutOfDomain};
    }
    auto design = LogisticDesign::of(data);
    if (!design) {
        return tl::unexpected{design.error()};
    }
    for (std::size_t j = 0; j < at.size(); ++j) {
        if (j != covariate) {
            design->recentre(j + 1, at[j]);
        }
    }
    SmallVector start{};
    start[0] = design->startLogOdds();
    const auto peak = climbLogistic(*design, options.penalty, start);
    if (!peak || peak->separation != Separation::None) {
        return tl::unexpected{peak ? StatisticsFault::Separated : StatisticsFault::NoConvergence};
    }
    const std::size_t j = covariate + 1;
    const double logOdds = std::log(chance) - std::log1p(-chance);
    const double slope = peak->beta[j];
    const double place = (logOdds - peak->beta[0]) / slope; // in spreads from the centre
    ValueForChance result;
    result.value = design->centre(j) + design->scale(j) * place;
    if (!(std::abs(slope) > 1e-9) || !std::isfinite(result.value)) {
        return tl::unexpected{StatisticsFault::NoSpread};
    }
    result.level = options.level;
    result.rises = slope > 0.0;
    const auto& column = data.covariates[covariate];
    const auto [low, high] = std::minmax_element(column.begin(), column.end());
    result.extrapolated = result.value < *low || result.value > *high;
    const double z = boost::math::quantile(boost::math::complement(boost::math::normal{}, (1.0 - options.level) / 2.0));
    const auto flat = LogisticProfile{*design, options.penalty, *peak, j}.chiSquareAt(0.0);
    if (!flat || !(*flat > z * z)) {
        return result;
    }
    const auto& covariance = peak->covariance;
    const double variance =
        covariance.at(0, 0) + 2.0 * place * covariance.at(0, j) + place * place * covariance.at(j, j);
    const double error = design->scale(j) * std::sqrt(std::max(0.0, variance)) / std::abs(slope);
    MovingPlace moving{*design, options.penalty, *peak, j, logOdds};
    result.lower = limitOf(moving, result.value, error, z, -1.0);
    result.upper = limitOf(moving, result.value, error, z, 1.0);
    return result;
}

} // namespace holdfast::analytics::statistics
