#include "analytics/statistics/models/small_matrix.hpp"

#include <cmath>

namespace holdfast::analytics::statistics {

SmallSymmetric SmallSymmetric::without(std::size_t index) const noexcept {
    SmallSymmetric rest{m_size - 1};
    for (std::size_t row = 0; row < rest.m_size; ++row) {
        for (std::size_t column = 0; column <= row; ++column) {
            rest.at(row, column) = at(row + (row >= index), column + (column >= index));
        }
    }
    return rest;
}

std::optional<Cholesky> Cholesky::of(const SmallSymmetric& matrix, double tolerance) noexcept {
    Cholesky result{matrix.size()};
    auto& factor = result.m_factor;
    for (std::size_t row = 0; row < matrix.size(); ++row) {
        for (std::size_t column = 0; column < row; ++column) {
            double sum = matrix.at(row, column);
            for (std::size_t k = 0; k < column; ++k) {
                sum -= factor.at(row, k) * factor.at(column, k);
            }
            factor.at(row, column) = sum * result.m_inverseDiagonal[column];
        }
        double pivot = matrix.at(row, row);
        for (std::size_t k = 0; k < row; ++k) {
            pivot -= factor.at(row, k) * factor.at(row, k);
        }
        if (!(pivot > tolerance * matrix.at(row, row)) || !std::isfinite(pivot)) {
            return std::nullopt;
        }
        factor.at(row, row) = std::sqrt(pivot);
        result.m_inverseDiagonal[row] = 1.0 / factor.at(row, row);
    }
    return result;
}

double Cholesky::logDeterminant() const noexcept {
    double sum = 0.0;
    for (std::size_t row = 0; row < m_factor.size(); ++row) {
        sum += 2.0 * std::log(m_factor.at(row, row));
    }
    return sum;
}

SmallVector Cholesky::solve(SmallVector b) const noexcept {
    const std::size_t n = m_factor.size();
    for (std::size_t row = 0; row < n; ++row) {
        for (std::size_t k = 0; k < row; ++k) {
            b[row] -= m_factor.at(row, k) * b[k];
        }
        b[row] *= m_inverseDiagonal[row];
    }
    for (std::size_t row = n; row-- > 0;) {
        for (std::size_t k = row + 1; k < n; ++k) {
            b[row] -= m_factor.at(k, row) * b[k];
        }
        b[row] *= m_inverseDiagonal[row];
    }
    return b;
}

SmallSymmetric Cholesky::inverse() const noexcept {
    SmallSymmetric result{m_factor.size()};
    for (std::size_t column = 0; column < m_factor.size(); ++column) {
        SmallVector unit{};
        unit[column] = 1.0;
        const auto solved = solve(unit);
        for (std::size_t row = column; row < m_factor.size(); ++row) {
            result.at(row, column) = solved[row];
        }
    }
    return result;
}

} // namespace holdfast::analytics::statistics
