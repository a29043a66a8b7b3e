#include "analytics/statistics/charts/run_length.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <random>
#include <vector>

namespace holdfast::analytics::statistics {
namespace {

constexpr double kMostDrawn = 2e8;
constexpr std::size_t kFirstStretch = 64;

bool anyRule(RuleSet rules) {
    bool any = false;
    for (unsigned rule = 1; rule <= 8; ++rule) {
        any = any || rules.has(static_cast<NelsonRule>(rule));
    }
    return any;
}

/// Points of one chart, drawn and read in stretches that double until something is found.
class DrawnChart final {
public:
    DrawnChart(RuleSet rules, double shift, std::uint64_t seed) : m_rules{rules}, m_shift{shift}, m_random{seed} {}

    /// None where more than `most` points have none.
    std::optional<double> firstSignal(double most) {
        m_z.clear();
        while (static_cast<double>(m_z.size()) < most) {
            const std::size_t size = std::max(kFirstStretch, 2 * m_z.size());
            while (m_z.size() < size) {
                m_z.push_back(m_normal(m_random) + m_shift);
            }
            const auto found = findSignals(m_z, m_rules);
            if (!found) {
                return std::nullopt;
            }
            if (!found->alarms.empty()) {
                return static_cast<double>(found->alarms.front().at) + 1.0;
            }
        }
        return std::nullopt;
    }

private:
    RuleSet m_rules;
    double m_shift;
    std::mt19937_64 m_random;
    std::normal_distribution<double> m_normal;
    std::vector<double> m_z;
};

} // namespace

tl::expected<DrawnRunLength, StatisticsFault> drawnRunLength(RuleSet rules, double shift, int charts,
                                                             std::uint64_t seed) {
    if (!anyRule(rules) || charts < 2 || !std::isfinite(shift)) {
        return tl::unexpected{StatisticsFault::OutOfDomain};
    }
    DrawnChart chart{rules, shift, seed};
    DrawnRunLength drawn;
    double squares = 0.0;
    double points = 0.0;
    for (; drawn.charts < charts; ++drawn.charts) {
        const auto length = chart.firstSignal(kMostDrawn - points);
        if (!length) {
            return tl::unexpected{StatisticsFault::NoConvergence};
        }
        points += *length;
        const double step = *length - drawn.mean;
        drawn.mean += step / (drawn.charts + 1.0);
        squares += step * (*length - drawn.mean);
    }
    drawn.standardError = std::sqrt(squares / (charts - 1.0) / charts);
    return drawn;
}

} // namespace holdfast::analytics::statistics
