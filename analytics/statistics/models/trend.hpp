#pragma once

#include "analytics/statistics/models/kendall.hpp"

#include <optional>

namespace holdfast::analytics::statistics {

/// A straight line through points, robust against outliers, with limits for its slope.
struct TheilSen final {
    double slope = 0.0;          ///< median of the slopes between all pairs with different x
    double intercept = 0.0;      ///< median of y − slope·x
    std::optional<double> lower; ///< of the slope; none where so few points allow no limit at this level
    std::optional<double> upper;
    double level = 0.95;
    Kendall kendall;
    /// The limits exclude no slope.
    [[nodiscard]] bool isShown() const noexcept { return lower && upper && (*lower > 0.0 || *upper < 0.0); }
};

/// Theil–Sen line with Kendall's limits (Sen, JASA 63:1379, 1968, eq. 2.6; Hollander and Wolfe, Nonparametric
/// Statistical Methods, 2nd ed., 9.2 and 9.3): the ranked slopes number (N − C)/2 and (N + C)/2 + 1. C from the exact
/// law of Kendall's S up to 50 untied points, else z times the deviation with the ties of x and y taken out as in Sen,
/// rounded. x in any order, repeats allowed; 0 < level < 1. About n·log n. Faults: two points at least, finite
/// (differences and slopes too), some spread in x and in y. Successive values that depend on each other make the limits
/// too narrow: give it episodes, not readings.
[[nodiscard]] tl::expected<TheilSen, StatisticsFault> theilSen(const std::vector<double>& x,
                                                               const std::vector<double>& y, double level = 0.95);

enum class DriftSide {
    Lower, ///< values should stay above
    Upper  ///< values should stay below
};

struct DriftLimit final {
    double value = 0.0;
    DriftSide side = DriftSide::Lower;
};

/// What may be said of when a drifting value meets a limit.
enum class DriftStanding {
    TooFewPoints, ///< under kDriftPoints: no statement
    NotShown,     ///< the limits of the slope do not exclude zero
    MovesAway,    ///< drifts, but from the limit
    AlreadyPast,  ///< the line is beyond the limit at the last time
    Crosses       ///< earliest and latest hold
};

inline constexpr std::size_t kDriftPoints = 20;

struct Drift final {
    TheilSen line;
    DriftStanding standing = DriftStanding::TooFewPoints;
    double last = 0.0;     ///< latest time given
    double levelNow = 0.0; ///< of the line at `last`
    double earliest = 0.0; ///< of the crossing, in the unit of the times; never before `last`
    double latest = 0.0;
};

/// Drift of values over time and the range of times in which it meets `limit` (decisions 6: a date only as a range, and
/// only if the limits exclude zero over at least 20 points). The ends of the range are where the lines with the limits
/// of the slope, each laid through the median of its residuals, meet the limit. Times in any unit and order, repeats
/// allowed. Faults as theilSen, and OutOfDomain for a limit that is no number.
[[nodiscard]] tl::expected<Drift, StatisticsFault>
drift(const std::vector<double>& times, const std::vector<double>& values, DriftLimit limit, double level = 0.95);

} // namespace holdfast::analytics::statistics
