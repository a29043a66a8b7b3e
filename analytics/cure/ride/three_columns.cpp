#include "analytics/cure/ride/three_columns.hpp"

#include <cmath>
#include <limits>
#include <numeric>

namespace holdfast::analytics {
namespace {

constexpr std::size_t kStart = 0;
constexpr std::size_t kStep = 1;
constexpr std::size_t kLogTau = 2;

double dot(const std::vector<double>& a, const std::vector<double>& b) noexcept {
    return std::inner_product(a.begin(), a.end(), b.begin(), 0.0);
}

} // namespace

ThreeColumns::ThreeColumns(const std::vector<double>& times, double tau, double step, bool startFitted)
    : m_first{startFitted ? kStart : kStep}, m_step{step}, m_tau{tau} {
    for (const double t : times) {
        m_orthogonal[kStart].push_back(1.0);
        m_orthogonal[kStep].push_back(-std::expm1(-t / tau));
        m_orthogonal[kLogTau].push_back(-step * (t / tau) * std::exp(-t / tau));
    }
    for (std::size_t i = m_first; i < kMost; ++i) {
        auto& column = m_orthogonal[i];
        for (std::size_t j = m_first; j < i; ++j) {
            // Twice is enough (Golub & Van Loan, 5.2.9).
            for (int pass = 0; pass < 2; ++pass) {
                const double along = dot(m_orthogonal[j], column);
                m_triangle[j][i] += along;
                for (std::size_t k = 0; k < column.size(); ++k) {
                    column[k] -= along * m_orthogonal[j][k];
                }
            }
        }
        m_triangle[i][i] = std::sqrt(dot(column, column));
        for (double& value : column) {
            value = m_triangle[i][i] > 0.0 ? value / m_triangle[i][i] : 0.0;
        }
    }
}

double ThreeColumns::errorOf(const std::array<double, kMost>& weights) const noexcept {
    // Cov = (RᵀR)⁻¹, so wᵀ·Cov·w = |R⁻ᵀw|²: forward substitution with the transposed triangle.
    std::array<double, kMost> solved{};
    double squares = 0.0;
    for (std::size_t i = m_first; i < kMost; ++i) {
        double rest = weights[i];
        for (std::size_t j = m_first; j < i; ++j) {
            rest -= m_triangle[j][i] * solved[j];
        }
        if (!(m_triangle[i][i] > 0.0)) {
            return std::numeric_limits<double>::infinity();
        }
        solved[i] = rest / m_triangle[i][i];
        squares += solved[i] * solved[i];
    }
    return std::sqrt(squares);
}

ThreeColumns::Errors ThreeColumns::errors(double sigma) const noexcept {
    Errors errors;
    errors.start = m_first == kStart ? sigma * errorOf({1.0, 0.0, 0.0}) : 0.0;
    errors.air = sigma * errorOf({m_first == kStart ? 1.0 : 0.0, 1.0, 0.0});
    errors.logTau = sigma * errorOf({0.0, 0.0, 1.0});
    errors.rate = sigma * errorOf({0.0, 1.0 / m_tau, -m_step / m_tau});
    return errors;
}

std::optional<double> ThreeColumns::logTauStep(const std::vector<double>& residuals) const noexcept {
    const double pivot = m_triangle[kLogTau][kLogTau];
    if (!(pivot > 0.0)) {
        return std::nullopt;
    }
    return dot(m_orthogonal[kLogTau], residuals) / pivot;
}

} // namespace holdfast::analytics
