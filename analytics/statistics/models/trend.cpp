#include "analytics/statistics/models/trend.hpp"

#include "analytics/statistics/models/slope_selection.hpp"

#include <boost/math/distributions/normal.hpp>

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

namespace holdfast::analytics::statistics {

namespace {

double median(std::vector<double> values) {
    const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
    std::nth_element(values.begin(), middle, values.end());
    if (values.size() % 2 == 1) {
        return *middle;
    }
    return *std::max_element(values.begin(), middle) / 2.0 + *middle / 2.0;
}

double interceptOf(double slope, const std::vector<double>& x, const std::vector<double>& y) {
    std::vector<double> residuals(x.size());
    for (std::size_t i = 0; i < x.size(); ++i) {
        residuals[i] = y[i] - slope * x[i];
    }
    return median(std::move(residuals));
}

/// x about the middle of its range: what the rounding of that range makes equal counts as equal.
std::vector<double> aboutMiddle(std::vector<double> x) {
    const auto [first, last] = std::minmax_element(x.begin(), x.end());
    const double middle = *first / 2.0 + *last / 2.0;
    for (double& value : x) {
        value -= middle;
    }
    return x;
}

/// The differences and slopes of these points stay within a double.
bool slopesAreFinite(const std::vector<double>& x, const std::vector<double>& y) {
    auto sorted = x;
    std::sort(sorted.begin(), sorted.end());
    double closest = std::numeric_limits<double>::infinity();
    for (std::size_t i = 1; i < sorted.size(); ++i) {
        if (sorted[i] > sorted[i - 1]) {
            closest = std::min(closest, sorted[i] - sorted[i - 1]);
        }
    }
    const auto [low, high] = std::minmax_element(y.begin(), y.end());
    const double steepest = (*high - *low) / closest;
    const double reach = std::max(1.0, sorted.back());
    return std::isfinite(sorted.back() - sorted.front()) && std::isfinite(steepest * reach * 16.0);
}

/// How many slopes from either end the limits stand; 0 where the level cannot be reached.
std::int64_t rankOfLimit(const Kendall& kendall, double level) {
    const double alpha = 1.0 - level;
    if (kendall.exact) {
        const auto chance = discordantChances(kendall.n);
        std::int64_t rank = 0;
        double tails = 2.0 * chance[0];
        while (tails <= alpha) {
            ++rank;
            tails += 2.0 * chance[static_cast<std::size_t>(rank)];
        }
        return rank;
    }
    const double z = boost::math::quantile(boost::math::complement(boost::math::normal{}, alpha / 2.0));
    const double rank = (static_cast<double>(kendall.slopes) - z * kendall.deviation) / 2.0;
    return rank < 0.5 ? 0 : static_cast<std::int64_t>(std::nearbyint(rank));
}

double medianSlope(SlopeSelection& selection) {
    const std::int64_t n = selection.slopes();
    const double upper = selection.ranked(n / 2 + 1);
    return n % 2 == 1 ? upper : selection.ranked(n / 2) / 2.0 + upper / 2.0;
}

} // namespace

tl::expected<TheilSen, StatisticsFault> theilSen(const std::vector<double>& x, const std::vector<double>& y,
                                                 double level) {
    if (!(level > 0.0 && level < 1.0)) {
        return tl::unexpected{StatisticsFault::OutOfDomain};
    }
    const bool finite = std::all_of(x.begin(), x.end(), [](double value) { return std::isfinite(value); });
    const auto places = finite && !x.empty() ? aboutMiddle(x) : x;
    const auto related = kendall(places, y);
    if (!related) {
        return tl::unexpected{related.error()};
    }
    if (!slopesAreFinite(places, y)) {
        return tl::unexpected{StatisticsFault::NotFinite};
    }
    TheilSen result;
    result.level = level;
    result.kendall = *related;
    SlopeSelection selection{places, y};
    result.slope = medianSlope(selection);
    result.intercept = interceptOf(result.slope, x, y);
    if (!std::isfinite(result.intercept)) {
        return tl::unexpected{StatisticsFault::NotFinite};
    }
    const std::int64_t rank = rankOfLimit(*related, level);
    if (rank >= 1) {
        result.lower = std::min(result.slope, selection.ranked(rank));
        result.upper = std::max(result.slope, selection.ranked(selection.slopes() - rank + 1));
    }
    return result;
}

tl::expected<Drift, StatisticsFault> drift(const std::vector<double>& times, const std::vector<double>& values,
                                           DriftLimit limit, double level) {
    if (!std::isfinite(limit.value)) {
        return tl::unexpected{StatisticsFault::OutOfDomain};
    }
    const auto line = theilSen(times, values, level);
    if (!line) {
        return tl::unexpected{line.error()};
    }
    Drift result;
    result.line = *line;
    result.last = *std::max_element(times.begin(), times.end());
    result.levelNow = line->intercept + line->slope * result.last;
    if (!std::isfinite(result.levelNow)) {
        return tl::unexpected{StatisticsFault::NotFinite};
    }
    const double sign = limit.side == DriftSide::Lower ? 1.0 : -1.0;
    if (times.size() < kDriftPoints) {
        result.standing = DriftStanding::TooFewPoints;
    } else if (!line->isShown()) {
        result.standing = DriftStanding::NotShown;
    } else if (sign * (result.levelNow - limit.value) <= 0.0) {
        result.standing = DriftStanding::AlreadyPast;
    } else if (sign * line->slope > 0.0) {
        result.standing = DriftStanding::MovesAway;
    } else {
        const auto crossing = [&](double slope) {
            return std::max(result.last, (limit.value - interceptOf(slope, times, values)) / slope);
        };
        const double one = crossing(*line->lower);
        const double other = crossing(*line->upper);
        result.earliest = std::min(one, other);
        result.latest = std::max(one, other);
        const bool finite = std::isfinite(result.earliest) && std::isfinite(result.latest);
        result.standing = finite ? DriftStanding::Crosses : DriftStanding::NotShown;
        if (!finite) {
            result.earliest = result.latest = 0.0;
        }
    }
    return result;
}

} // namespace holdfast::analytics::statistics
