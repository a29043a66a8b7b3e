#include "analytics/statistics/summary/running.hpp"

#include <algorithm>
#include <boost/accumulators/accumulators.hpp>
#include <boost/accumulators/statistics/count.hpp>
#include <boost/accumulators/statistics/max.hpp>
#include <boost/accumulators/statistics/mean.hpp>
#include <boost/accumulators/statistics/min.hpp>
#include <boost/accumulators/statistics/stats.hpp>
#include <boost/accumulators/statistics/variance.hpp>
#include <cmath>

namespace holdfast::analytics::statistics {

namespace accumulators = boost::accumulators;

struct RunningMoments::State final {
    using Tags =
        accumulators::stats<accumulators::tag::count, accumulators::tag::min, accumulators::tag::max,
                            accumulators::tag::immediate_mean, accumulators::tag::variance(accumulators::immediate)>;
    accumulators::accumulator_set<double, Tags> values;
};

RunningMoments::RunningMoments() : m_state{std::make_unique<State>()} {}
RunningMoments::~RunningMoments() = default;
RunningMoments::RunningMoments(RunningMoments&&) noexcept = default;
RunningMoments& RunningMoments::operator=(RunningMoments&&) noexcept = default;

tl::expected<void, StatisticsFault> RunningMoments::add(double value) {
    if (!std::isfinite(value)) {
        return tl::unexpected{StatisticsFault::NotFinite};
    }
    m_state->values(value);
    return {};
}

std::size_t RunningMoments::count() const {
    return accumulators::count(m_state->values);
}

std::optional<double> RunningMoments::mean() const {
    return count() == 0 ? std::nullopt : std::optional{accumulators::mean(m_state->values)};
}

std::optional<double> RunningMoments::sd() const {
    if (count() < 2) {
        return std::nullopt;
    }
    const auto n = static_cast<double>(count());
    return std::sqrt(std::max(0.0, accumulators::variance(m_state->values)) * (n / (n - 1.0)));
}

std::optional<double> RunningMoments::min() const {
    return count() == 0 ? std::nullopt : std::optional{accumulators::min(m_state->values)};
}

std::optional<double> RunningMoments::max() const {
    return count() == 0 ? std::nullopt : std::optional{accumulators::max(m_state->values)};
}

} // namespace holdfast::analytics::statistics
