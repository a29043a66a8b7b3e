#include "analytics/statistics/counts/risk_table.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace holdfast::analytics::statistics {
namespace {

/// Failed and at risk of one group at the cycles given, read off its rows from left to right.
class Reader final {
public:
    explicit Reader(const std::vector<RiskRow>& rows) : m_rows{rows} {}

    [[nodiscard]] double next() const noexcept {
        return m_at < m_rows.size() ? m_rows[m_at].cycles : std::numeric_limits<double>::infinity();
    }
    struct Here {
        double failed;
        double atRisk;
    };
    [[nodiscard]] Here take(double cycles) noexcept {
        if (m_at >= m_rows.size())
            return {0.0, 0.0};
        const auto& row = m_rows[m_at];
        const auto atRisk = static_cast<double>(row.atRisk);
        if (row.cycles > cycles)
            return {0.0, atRisk};
        ++m_at;
        return {static_cast<double>(row.failed), atRisk};
    }

private:
    const std::vector<RiskRow>& m_rows;
    std::size_t m_at = 0;
};

} // namespace

tl::expected<LogRank, StatisticsFault> logRank(std::span<const WashOutcome> first,
                                               std::span<const WashOutcome> second) {
    const auto left = riskTable(first);
    const auto right = riskTable(second);
    if (!left || !right)
        return tl::unexpected(!left ? left.error() : right.error());
    if (left->empty() || right->empty())
        return tl::unexpected(StatisticsFault::TooFewValues);
    Reader one{*left};
    Reader two{*right};
    LogRank result;
    for (double at = std::min(one.next(), two.next()); std::isfinite(at); at = std::min(one.next(), two.next())) {
        const auto a = one.take(at);
        const auto b = two.take(at);
        const double n = a.atRisk + b.atRisk;
        const double d = a.failed + b.failed;
        result.observed += a.failed;
        result.expected += d * a.atRisk / n;
        if (n > 1.0)
            result.variance += d * (a.atRisk / n) * (b.atRisk / n) * (n - d) / (n - 1.0);
    }
    if (!(result.variance > 0.0))
        return tl::unexpected(StatisticsFault::NoSpread);
    const double distance = result.observed - result.expected;
    result.chiSquare = distance * distance / result.variance;
    result.twoSided = std::erfc(std::sqrt(result.chiSquare / 2.0));
    return result;
}

} // namespace holdfast::analytics::statistics
