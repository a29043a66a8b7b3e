#pragma once

#include <cstdint>

namespace holdfast::analytics::statistics {

/// How many of the `failed` of all pieces fall among the `with` that carry a level, when failing is `odds` times as
/// likely (in odds) with it as without: Fisher's noncentral hypergeometric law, weights C(m, x)·C(n, k − x)·ωˣ (Fisher,
/// J. R. Stat. Soc. 98, 1935, 39–54; Fog, Commun. Stat. Simul. Comput. 37, 2008, 241–257). ω = 1 is the central law.
///
/// Weights are walked outwards from the mode by their ratio, with the mode's weight 1: no factorials, so no cancelling
/// logarithms at large counts, and a cost of some tens of standard deviations however large the counts are.
class Hypergeometric final {
public:
    /// Counts as checked by the caller: not negative, at most kLargestCount, failed ≤ with + without.
    Hypergeometric(std::int64_t with, std::int64_t without, std::int64_t failed) noexcept;

    [[nodiscard]] std::int64_t lowest() const noexcept { return m_lowest; }
    [[nodiscard]] std::int64_t highest() const noexcept { return m_highest; }

    struct Tails {
        double atMost;  ///< P(X ≤ x)
        double atLeast; ///< P(X ≥ x)
        double asRare;  ///< Σ of every P(y) ≤ P(x), ties within a relative 10⁻⁷ counted as ties
    };
    /// Tails at x of the support for ω = `odds` > 0 and finite. None is ever 0: what is below the smallest double is
    /// it.
    [[nodiscard]] Tails tails(std::int64_t x, double odds = 1.0) const noexcept;

    struct Moments {
        double mean;
        double variance;
    };
    [[nodiscard]] Moments moments(double odds) const noexcept;

private:
    [[nodiscard]] double ratioUp(double x) const noexcept; ///< w(x + 1)/w(x) at ω = 1
    [[nodiscard]] std::int64_t mode(double odds) const noexcept;
    template <typename Visit>
    void walk(std::int64_t from, double odds, int direction, Visit&& visit) const noexcept;

    double m_with;
    double m_failed;
    double m_spare; ///< without − failed
    std::int64_t m_lowest;
    std::int64_t m_highest;
};

} // namespace holdfast::analytics::statistics
