#include "analytics/statistics/models/logistic_profile.hpp"

#include "analytics/statistics/models/root_search.hpp"

#include <algorithm>
#include <cmath>

namespace holdfast::analytics::statistics {

LogisticProfile::LogisticProfile(const LogisticDesign& design, Penalty penalty, const LogisticPeak& peak,
                                 std::size_t coefficient)
    : m_design{design}, m_penalty{penalty}, m_peak{peak}, m_coefficient{coefficient} {}

std::optional<double> LogisticProfile::chiSquareAt(double value) const {
    SmallVector start = m_peak.beta;
    const auto& covariance = m_peak.covariance;
    const double share = (value - start[m_coefficient]) / covariance.at(m_coefficient, m_coefficient);
    for (std::size_t j = 0; j < m_design.coefficients(); ++j) {
        start[j] +=
            share * covariance.at(j, m_coefficient); // the ridge as it would be if the likelihood were a parabola
    }
    const HeldCoefficient held{m_coefficient, value};
    auto top = climbLogistic(m_design, m_penalty, start, held);
    if (!top) {
        top = climbLogistic(m_design, m_penalty, m_peak.beta, held);
    }
    if (!top) {
        return std::nullopt;
    }
    return std::max(0.0, 2.0 * (m_peak.objective - top->objective));
}

std::optional<double> LogisticProfile::limit(double z, double side) const {
    const double best = m_peak.beta[m_coefficient];
    const double error = std::sqrt(m_peak.covariance.at(m_coefficient, m_coefficient));
    const auto beyond = [&](double distance) -> std::optional<double> {
        const auto chiSquare = chiSquareAt(best + side * distance);
        return chiSquare ? std::optional{std::sqrt(*chiSquare) - z} : std::nullopt;
    };
    const auto distance = distanceToZero(beyond, -z, z * error, 12);
    return distance ? std::optional{best + side * *distance} : std::nullopt;
}

} // namespace holdfast::analytics::statistics
