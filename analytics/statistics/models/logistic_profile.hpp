#pragma once

#include "analytics/statistics/models/logistic_climb.hpp"

namespace holdfast::analytics::statistics {

/// The profile of the (penalised) likelihood along one coefficient of a design, from the peak outwards.
class LogisticProfile final {
public:
    LogisticProfile(const LogisticDesign& design, Penalty penalty, const LogisticPeak& peak, std::size_t coefficient);
    /// 2(l̂ − l(value)); none where the fit with that value does not settle.
    [[nodiscard]] std::optional<double> chiSquareAt(double value) const;
    /// Where the root of chiSquareAt reaches z below (side −1) or above (1) the peak.
    [[nodiscard]] std::optional<double> limit(double z, double side) const;

private:
    const LogisticDesign& m_design;
    Penalty m_penalty;
    const LogisticPeak& m_peak;
    std::size_t m_coefficient;
};

} // namespace holdfast::analytics::statistics
