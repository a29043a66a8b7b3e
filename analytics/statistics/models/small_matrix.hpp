#pragma once

#include "analytics/statistics/models/lanes.hpp"

#include <array>
#include <cstddef>
#include <optional>

namespace holdfast::analytics::statistics {

/// Most coefficients a model of this room may have, the constant among them.
inline constexpr std::size_t kMostCoefficients = 12;

using SmallVector = std::array<double, kMostCoefficients>;

[[nodiscard]] inline double dot(const SmallVector& a, const SmallVector& b) noexcept {
    double sum = 0.0;
    for (std::size_t j = 0; j < a.size(); ++j) {
        sum += a[j] * b[j];
    }
    return sum;
}

/// A symmetric matrix of up to kMostCoefficients rows; only the lower triangle is kept.
class SmallSymmetric final {
public:
    explicit SmallSymmetric(std::size_t size) noexcept : m_size{size} {}
    [[nodiscard]] std::size_t size() const noexcept { return m_size; }
    [[nodiscard]] double& at(std::size_t row, std::size_t column) noexcept {
        return row >= column ? m_cells[row * kMostCoefficients + column] : m_cells[column * kMostCoefficients + row];
    }
    [[nodiscard]] double at(std::size_t row, std::size_t column) const noexcept {
        return row >= column ? m_cells[row * kMostCoefficients + column] : m_cells[column * kMostCoefficients + row];
    }
    /// The matrix without one row and column, for a model in which that coefficient is held. size() > 1.
    [[nodiscard]] SmallSymmetric without(std::size_t index) const noexcept;

private:
    std::size_t m_size;
    std::array<double, kMostCoefficients * kMostCoefficients> m_cells{};
};

/// Σ weight·x·xᵀ over pairs of rows.
class LaneProducts final {
public:
    explicit LaneProducts(std::size_t coefficients) noexcept : m_coefficients{coefficients} {}
    /// x: coefficient after coefficient, kLanes rows of each.
    void add(const Lanes& weight, const double* x) noexcept {
        Lanes* sum = m_sums;
        for (std::size_t a = 0; a < m_coefficients; ++a) {
            const Lanes part = weight * loadLanes(x + a * kLanes);
            for (std::size_t b = 0; b <= a; ++b) {
                *sum++ += part * loadLanes(x + b * kLanes);
            }
        }
    }
    [[nodiscard]] SmallSymmetric total() const noexcept {
        SmallSymmetric result{m_coefficients};
        const Lanes* sum = m_sums;
        for (std::size_t a = 0; a < m_coefficients; ++a) {
            for (std::size_t b = 0; b <= a; ++b) {
                result.at(a, b) = sumOfLanes(*sum++);
            }
        }
        return result;
    }

private:
    std::size_t m_coefficients;
    Lanes m_sums[kMostCoefficients * (kMostCoefficients + 1) / 2]{};
};

/// Cholesky's factor L of A = L·Lᵀ (Golub and Van Loan, Matrix Computations, 4th ed., 4.2.5).
class Cholesky final {
public:
    /// None where A is not positive definite: a pivot below `tolerance` times its own diagonal element.
    [[nodiscard]] static std::optional<Cholesky> of(const SmallSymmetric& matrix, double tolerance) noexcept;
    [[nodiscard]] double logDeterminant() const noexcept;
    /// x of A·x = b.
    [[nodiscard]] SmallVector solve(SmallVector b) const noexcept;
    /// xᵀ·A⁻¹·x of kLanes rows, by forward substitution; x as in LaneProducts.
    [[nodiscard]] Lanes quadratic(const double* x) const noexcept;
    [[nodiscard]] SmallSymmetric inverse() const noexcept;

private:
    explicit Cholesky(std::size_t size) noexcept : m_factor{size} {}
    SmallSymmetric m_factor;
    SmallVector m_inverseDiagonal{};
};

inline Lanes Cholesky::quadratic(const double* x) const noexcept {
    Lanes z[kMostCoefficients];
    Lanes sum{};
    for (std::size_t row = 0; row < m_factor.size(); ++row) {
        Lanes value = loadLanes(x + row * kLanes);
        for (std::size_t k = 0; k < row; ++k) {
            value -= m_factor.at(row, k) * z[k];
        }
        z[row] = value * m_inverseDiagonal[row];
        sum += z[row] * z[row];
    }
    return sum;
}

} // namespace holdfast::analytics::statistics
