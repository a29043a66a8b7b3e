#pragma once

#include "analytics/statistics/models/interval_mean.hpp"

#include <vector>

namespace holdfast::analytics::statistics {

/// Log likelihood and its derivatives in gamma = mean/sd and theta = 1/sd.
struct CensoredLikelihood final {
    double value = 0.0;
    double gamma = 0.0;
    double theta = 0.0;
    double gammaGamma = 0.0;
    double gammaTheta = 0.0;
    double thetaTheta = 0.0;
};

/// Censored values about their middle in units of their spread: exact ones as sums, equal intervals once with their
/// weights together.
class CensoredNormal final {
public:
    /// Values valid, at least one with a finite end.
    explicit CensoredNormal(const std::vector<CensoredValue>& values);
    [[nodiscard]] CensoredLikelihood at(double gamma, double theta) const;
    [[nodiscard]] double centre() const noexcept { return m_centre; }
    [[nodiscard]] double scale() const noexcept { return m_scale; }
    [[nodiscard]] double exactWeight() const noexcept { return m_weight; }

private:
    void chooseScale(const std::vector<CensoredValue>& values);

    double m_centre = 0.0;
    double m_scale = 1.0;
    double m_weight = 0.0; ///< of exact values; with their sums of x and x²
    double m_sum = 0.0;
    double m_squares = 0.0;
    std::vector<CensoredValue> m_intervals;
};

} // namespace holdfast::analytics::statistics
