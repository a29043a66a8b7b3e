#pragma once

#include "analytics/statistics/models/logistic.hpp"
#include "analytics/statistics/models/small_matrix.hpp"

namespace holdfast::analytics::statistics {

/// The rows of a logistic regression as the fit wants them: grouped, each covariate about a centre in units of its
/// spread, a leading 1.
class LogisticDesign final {
public:
    [[nodiscard]] static tl::expected<LogisticDesign, StatisticsFault> of(const LogisticData& data);

    [[nodiscard]] std::size_t coefficients() const noexcept { return m_centre.size(); }
    [[nodiscard]] std::size_t rows() const noexcept { return m_rows; }
    [[nodiscard]] double at(std::size_t row, std::size_t coefficient) const noexcept {
        return m_x[(row / kLanes * coefficients() + coefficient) * kLanes + row % kLanes];
    }
    [[nodiscard]] double events(std::size_t row) const noexcept { return m_events[row]; }
    [[nodiscard]] double trials(std::size_t row) const noexcept { return m_trials[row]; }
    /// kLanes rows each; what the last lacks has no trials.
    [[nodiscard]] std::size_t pairs() const noexcept { return m_events.size() / kLanes; }
    /// Coefficient after coefficient, kLanes rows of each.
    [[nodiscard]] const double* pair(std::size_t index) const noexcept { return &m_x[index * coefficients() * kLanes]; }
    [[nodiscard]] Lanes pairEvents(std::size_t index) const noexcept { return loadLanes(&m_events[index * kLanes]); }
    [[nodiscard]] Lanes pairTrials(std::size_t index) const noexcept { return loadLanes(&m_trials[index * kLanes]); }
    [[nodiscard]] double centre(std::size_t coefficient) const noexcept { return m_centre[coefficient]; }
    [[nodiscard]] double scale(std::size_t coefficient) const noexcept { return m_scale[coefficient]; }
    /// Moves the centre of one covariate (coefficient ≥ 1): the constant is then the log odds at the new centre.
    void recentre(std::size_t coefficient, double centre) noexcept;
    /// Every so many pairs of rows, in the same units; its sums are not made.
    [[nodiscard]] LogisticDesign thinned(std::size_t every) const;
    /// Log likelihood if every row of the input had its own chance, and if all had the same.
    [[nodiscard]] double saturated() const noexcept { return m_saturated; }
    [[nodiscard]] double constantOnly() const noexcept { return m_constantOnly; }
    [[nodiscard]] double startLogOdds() const noexcept { return m_startLogOdds; }

private:
    void fillRows(const LogisticData& data);
    void standardize(const LogisticData& data);
    void sumUp(const LogisticData& data);
    [[nodiscard]] bool isCollinear() const;

    std::size_t m_rows = 0;
    std::vector<double> m_x; ///< by pairs of rows
    std::vector<double> m_events;
    std::vector<double> m_trials;
    std::vector<double> m_centre; ///< the constant's: 0 and 1
    std::vector<double> m_scale;
    double m_saturated = 0.0;
    double m_constantOnly = 0.0;
    double m_startLogOdds = 0.0;
};

} // namespace holdfast::analytics::statistics
