#pragma once

#include <cstddef>
#include <cstdint>
#include <random>
#include <utility>
#include <vector>

namespace holdfast::analytics::statistics {

/// The k-th smallest of the slopes between all pairs of points with different x, without making them all: slopes up to
/// s are the inversions of y − s·x in the order of x (Cole, Salowe, Steiger, Szemerédi, SIAM J. Comput. 18:792, 1989),
/// a random sample of pairs brackets the wanted one (Dillencourt, Mount, Netanyahu, Int. J. Comput. Geom. Appl. 2:1,
/// 1992), and the few left in the bracket are listed. About n·log n time, n memory. The sample only sets the speed.
class SlopeSelection final {
public:
    /// Points finite, at least two different x; x about the middle of its range (aboutMiddle), so that points that
    /// differ in x still differ after any further rounding; twice the steepest slope is finite.
    SlopeSelection(const std::vector<double>& x, const std::vector<double>& y);
    [[nodiscard]] std::int64_t slopes() const noexcept { return m_slopes; }
    /// 1 ≤ rank ≤ slopes().
    [[nodiscard]] double ranked(std::int64_t rank);

private:
    /// Slopes in (low, high] hold the wanted rank; the counts are of slopes up to each end.
    struct Bracket final {
        double low = 0.0;
        double high = 0.0;
        std::int64_t upToLow = 0;
        std::int64_t upToHigh = 0;
        void narrow(double slope, std::int64_t count, std::int64_t rank) noexcept;
        [[nodiscard]] std::int64_t inside() const noexcept { return upToHigh - upToLow; }
        [[nodiscard]] double at(double rank) const noexcept;
    };

    void takeSample();
    [[nodiscard]] double slopeOf(std::size_t i, std::size_t j) const noexcept;
    [[nodiscard]] std::int64_t countUpTo(double slope);
    [[nodiscard]] Bracket bracketFromSample(std::int64_t rank);
    void shrink(Bracket& bracket, std::int64_t rank);
    [[nodiscard]] std::vector<std::size_t> orderAt(double slope) const;
    [[nodiscard]] std::vector<double> slopesInside(const Bracket& bracket) const;

    std::vector<std::pair<double, double>> m_points; ///< sorted by x, then y
    std::vector<double> m_x;                         ///< about the middle, so that y − s·x keeps its digits
    std::vector<double> m_y;
    std::int64_t m_slopes = 0;
    std::int64_t m_identical = 0; ///< pairs of points equal in x and y
    std::int64_t m_listed = 0;    ///< so many slopes are listed rather than narrowed further
    double m_smallest = 0.0;      ///< differences of slopes below this are rounding
    double m_steepest = 0.0;      ///< no slope reaches it
    std::vector<double> m_sample; ///< sorted
    std::vector<double> m_values;
    std::vector<double> m_scratch;
};

} // namespace holdfast::analytics::statistics
