#include "analytics/statistics/counts/confounding.hpp"

#include <algorithm>
#include <cmath>

namespace holdfast::analytics::statistics {
namespace {

using Column = std::vector<std::int32_t>;

constexpr double kNoRest = 1e-8; ///< share of a column's length that counts as nothing left
constexpr double kNoCoefficient = 1e-6;

double commonLots(const Column& left, const Column& right) noexcept {
    double count = 0.0;
    auto l = left.begin();
    auto r = right.begin();
    while (l != left.end() && r != right.end()) {
        if (*l < *r) {
            ++l;
        } else if (*r < *l) {
            ++r;
        } else {
            count += 1.0;
            ++l;
            ++r;
        }
    }
    return count;
}

/// Independent columns so far, the constant first, and the rows of the Cholesky factor of their common counts.
class Basis final {
public:
    explicit Basis(const LotDesign& design) : m_design{design}, m_rows{{std::sqrt(double(design.lots()))}} {}

    /// Takes the level if it is independent of those before; otherwise what it is a sum of (constant first).
    std::optional<std::vector<double>> take(LevelId level) {
        const Column& column = m_design.columns[static_cast<std::size_t>(level)];
        const auto length = static_cast<double>(column.size());
        std::vector<double> row(m_rows.size() + 1);
        double rest = length;
        for (std::size_t i = 0; i < m_rows.size(); ++i) {
            double value =
                i == 0 ? length : commonLots(column, m_design.columns[static_cast<std::size_t>(m_levels[i - 1])]);
            for (std::size_t j = 0; j < i; ++j)
                value -= row[j] * m_rows[i][j];
            row[i] = value / m_rows[i][i];
            rest -= row[i] * row[i];
        }
        if (rest <= kNoRest * length)
            return coefficients(std::move(row));
        row.back() = std::sqrt(rest);
        m_rows.push_back(std::move(row));
        m_levels.push_back(level);
        return std::nullopt;
    }

    [[nodiscard]] LevelId levelAt(std::size_t row) const noexcept { return m_levels[row - 1]; }

private:
    /// Solves Lᵀc = row from the last on.
    [[nodiscard]] std::vector<double> coefficients(std::vector<double> row) const {
        row.pop_back();
        for (std::size_t i = row.size(); i-- > 0;) {
            for (std::size_t j = i + 1; j < row.size(); ++j)
                row[i] -= m_rows[j][i] * row[j];
            row[i] /= m_rows[i][i];
        }
        return row;
    }

    const LotDesign& m_design;
    std::vector<std::vector<double>> m_rows;
    std::vector<LevelId> m_levels;
};

} // namespace

std::vector<LinearDependence> linearDependences(const LotTable& table, const LotDesign& design,
                                                std::span<const LevelId> levels) {
    std::vector<LinearDependence> found;
    if (design.lots() == 0)
        return found;
    Basis basis{design};
    std::vector<char> asked(table.levels(), 0);
    for (const LevelId level : levels) {
        const auto index = static_cast<std::size_t>(level);
        if (level < 0 || index >= table.levels() || design.columns[index].empty() || asked[index])
            continue;
        asked[index] = 1;
        const auto sum = basis.take(level);
        if (!sum)
            continue;
        LinearDependence dependence{level, std::abs(sum->front()) > kNoCoefficient ? sum->front() : 0.0, {}};
        for (std::size_t i = 1; i < sum->size(); ++i)
            if (std::abs((*sum)[i]) > kNoCoefficient)
                dependence.terms.push_back({basis.levelAt(i), (*sum)[i]});
        if (std::any_of(dependence.terms.begin(), dependence.terms.end(),
                        [&](const auto& term) { return table.factorOf(term.level) != table.factorOf(level); }))
            found.push_back(std::move(dependence));
    }
    return found;
}

std::vector<LinearDependence> linearDependences(const LotTable& table, std::span<const LevelId> levels) {
    return linearDependences(table, designOf(table), levels);
}

} // namespace holdfast::analytics::statistics
