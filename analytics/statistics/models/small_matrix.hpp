#pragma once

#include <array>
#include <cstddef>
#include <optional>

namespace holdfast::analytics::statistics {

/// Most coefficients a model of this room may have, the constant among them.
inline constexpr std::size_t kMostCoefficients = 12;

using SmallVector = std::array<double, kMostCoefficients>;

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

/// Cholesky's factor L of A = L·Lᵀ (Golub and Van Loan, Matrix Computations, 4th ed., 4.2.5).
class Cholesky final {
public:
    /// None where A is not positive definite: a pivot below `tolerance` times its own diagonal element.
    [[nodiscard]] static std::optional<Cholesky> of(const SmallSymmetric& matrix, double tolerance) noexcept;
    [[nodiscard]] double logDeterminant() const noexcept;
    /// x of A·x = b.
    [[nodiscard]] SmallVector solve(SmallVector b) const noexcept;
    /// xᵀ·A⁻¹·x, by one forward substitution.
    [[nodiscard]] double quadratic(const double* x) const noexcept;
    [[nodiscard]] SmallSymmetric inverse() const noexcept;

private:
    explicit Cholesky(std::size_t size) noexcept : m_factor{size} {}
    SmallSymmetric m_factor;
    SmallVector m_inverseDiagonal{};
};

} // namespace holdfast::analytics::statistics
