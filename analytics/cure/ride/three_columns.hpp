#pragma once

#include <array>
#include <optional>
#include <vector>

namespace holdfast::analytics {

/// The curve's slopes against its parameters at every point, made orthogonal (modified Gram–Schmidt; Golub & Van Loan,
/// Matrix Computations, 5.2.8). Plain numbers in °C and s: private to this folder. Columns: start (only if it is
/// fitted), step = air − start, log τ.
class ThreeColumns final {
public:
    ThreeColumns(const std::vector<double>& times, double tau, double step, bool startFitted);

    struct Errors final {
        double start = 0.0;
        double air = 0.0;
        double logTau = 0.0;
        double rate = 0.0; ///< of step/τ
    };
    /// Standard errors for residuals of this spread; infinite where a parameter is not determined.
    [[nodiscard]] Errors errors(double sigma) const noexcept;

    /// By how much Gauss–Newton would move log τ; absent if it is not determined.
    [[nodiscard]] std::optional<double> logTauStep(const std::vector<double>& residuals) const noexcept;

private:
    static constexpr std::size_t kMost = 3;
    /// √(wᵀ·Cov·w) for a sum of parameters with these weights, in units of σ.
    [[nodiscard]] double errorOf(const std::array<double, kMost>& weights) const noexcept;

    std::size_t m_first = 0; ///< of the columns used
    double m_step = 0.0;
    double m_tau = 1.0;
    std::array<std::vector<double>, kMost> m_orthogonal;
    std::array<std::array<double, kMost>, kMost> m_triangle{}; ///< upper
};

} // namespace holdfast::analytics
