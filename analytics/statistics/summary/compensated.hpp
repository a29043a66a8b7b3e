#pragma once

#include <cmath>

namespace holdfast::analytics::statistics {

/// A sum that carries the digits lost by each addition: A. Neumaier, "Rundungsfehleranalyse einiger Verfahren zur
/// Summation endlicher Summen", ZAMM 54 (1974), method IV. The error does not grow with the number of terms.
class CompensatedSum final {
public:
    constexpr void add(double term) noexcept {
        const double sum = m_sum + term;
        const bool sumIsLarger = (m_sum < 0.0 ? -m_sum : m_sum) >= (term < 0.0 ? -term : term);
        m_lost += sumIsLarger ? (m_sum - sum) + term : (term - sum) + m_sum;
        m_sum = sum;
    }
    [[nodiscard]] constexpr double value() const noexcept { return m_sum + m_lost; }

private:
    double m_sum = 0.0;
    double m_lost = 0.0;
};

} // namespace holdfast::analytics::statistics
