#pragma once

#include "analytics/statistics/counts/lot_table.hpp"

namespace holdfast::analytics::statistics {

/// A level within a class of levels that cannot be told apart.
struct TwinLevel {
    LevelId level = 0;
    bool complement = false; ///< it was there exactly when the first of the class was not
};

/// Levels whose columns in the design matrix are identical, or of which one is there exactly when the other is not: no
/// analysis of these lots can tell which of them matters. Two complementary levels of one factor with nothing else
/// (two dryers, one of them at a time) are no class: they are one contrast. Levels that no lot carries are in none.
/// Levels that every lot carries are together in one. Classes and their members by rising level. Cost: levels of all
/// lots, by adding one fixed 64-bit random number a lot; every class found is confirmed lot by lot.
[[nodiscard]] std::vector<std::vector<TwinLevel>> levelsNotToldApart(const LotTable& table);
[[nodiscard]] std::vector<std::vector<TwinLevel>> levelsNotToldApart(const LotTable& table, const LotDesign& design);

/// A level whose column is a sum of others: level = constant + Σ coefficient × level of the term.
struct LinearDependence {
    struct Term {
        LevelId level = 0;
        double coefficient = 0.0;
    };
    LevelId level = 0;
    double constant = 0.0;
    std::vector<Term> terms;
};

/// Dependences beyond pairs among these levels, by the rank of their columns with a constant: each level in turn
/// against all before it that were independent (Cholesky factor of the matrix of common counts; Golub and Van Loan,
/// Matrix Computations, 4th ed., 4.2). That the levels of one factor add up to all lots is no finding and is left out.
/// Levels that do not exist or that no lot carries are passed over. Cost: (number of levels asked about)³/3 and their
/// lots: ask about some hundreds at most.
[[nodiscard]] std::vector<LinearDependence> linearDependences(const LotTable& table, std::span<const LevelId> levels);
[[nodiscard]] std::vector<LinearDependence> linearDependences(const LotTable& table, const LotDesign& design,
                                                              std::span<const LevelId> levels);

} // namespace holdfast::analytics::statistics
