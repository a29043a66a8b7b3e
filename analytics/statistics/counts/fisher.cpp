#include "analytics/statistics/counts/fisher.hpp"

#include "analytics/statistics/counts/hypergeometric.hpp"

#include <boost/math/tools/roots.hpp>

#include <algorithm>
#include <cmath>
#include <exception>

namespace holdfast::analytics::statistics {
namespace {

constexpr int kMostSteps = 200;

Hypergeometric lawOf(const FourfoldTable& table) noexcept {
    return {table.failedWith + table.passedWith, table.failedWithout + table.passedWithout,
            table.failedWith + table.failedWithout};
}

/// Sample log odds ratio with one half added to each cell (Haldane): finite, and near the answer.
double startOf(const FourfoldTable& table) noexcept {
    const auto cell = [](std::int64_t count) { return static_cast<double>(count) + 0.5; };
    return std::log(cell(table.failedWith)) - std::log(cell(table.passedWith)) - std::log(cell(table.failedWithout)) +
           std::log(cell(table.passedWithout));
}

std::optional<double> likeliest(const Hypergeometric& law, std::int64_t x, double start) noexcept {
    double low = -700.0;
    double high = 700.0;
    double t = start;
    for (int step = 0; step < kMostSteps; ++step) {
        const auto [mean, variance] = law.moments(std::exp(t));
        const double miss = mean - static_cast<double>(x);
        (miss > 0.0 ? high : low) = t;
        double next = variance > 0.0 ? t - miss / variance : low;
        if (!(next > low && next < high))
            next = (low + high) / 2.0;
        if (std::abs(next - t) <= 1e-13 * (1.0 + std::abs(t)))
            return std::exp(next);
        t = next;
    }
    return std::nullopt;
}

template <typename Tail>
std::optional<double> limitWhere(double start, double risk, bool rising, Tail&& tail) {
    std::uintmax_t steps = kMostSteps;
    const auto away = [&](double odds) { return std::log(tail(odds) / risk); };
    const auto found = boost::math::tools::bracket_and_solve_root(away, start, 2.0, rising,
                                                                  boost::math::tools::eps_tolerance<double>(44), steps);
    if (steps >= kMostSteps)
        return std::nullopt;
    return std::sqrt(found.first) * std::sqrt(found.second);
}

} // namespace

std::optional<StatisticsFault> faultOf(const FourfoldTable& table) noexcept {
    if (!isCount(table.failedWith) || !isCount(table.passedWith) || !isCount(table.failedWithout) ||
        !isCount(table.passedWithout))
        return StatisticsFault::OutOfDomain;
    const std::int64_t total = table.failedWith + table.passedWith + table.failedWithout + table.passedWithout;
    if (!isCount(total))
        return StatisticsFault::OutOfDomain;
    if (total == 0)
        return StatisticsFault::NoValues;
    return std::nullopt;
}

tl::expected<FisherTest, StatisticsFault> fisherExact(const FourfoldTable& table) noexcept {
    if (const auto fault = faultOf(table))
        return tl::unexpected(*fault);
    const auto tails = lawOf(table).tails(table.failedWith);
    return FisherTest{tails.atMost, tails.atLeast, tails.asRare};
}

tl::expected<OddsRatio, StatisticsFault> conditionalOddsRatio(const FourfoldTable& table, double confidence) noexcept {
    if (const auto fault = faultOf(table))
        return tl::unexpected(*fault);
    if (!isInnerProbability(confidence))
        return tl::unexpected(StatisticsFault::OutOfDomain);
    const auto law = lawOf(table);
    const std::int64_t x = table.failedWith;
    OddsRatio odds;
    if (law.lowest() == law.highest())
        return odds;
    const bool atLowest = x == law.lowest();
    const bool atHighest = x == law.highest();
    const double start = startOf(table);
    const auto ratio = atLowest ? std::optional{0.0} : atHighest ? std::optional{kUnbounded} : likeliest(law, x, start);
    const double risk = (1.0 - confidence) / 2.0;
    try {
        const auto lower =
            atLowest ? std::optional{0.0}
                     : limitWhere(std::exp(start), risk, true, [&](double w) { return law.tails(x, w).atLeast; });
        const auto upper =
            atHighest ? std::optional{kUnbounded}
                      : limitWhere(std::exp(start), risk, false, [&](double w) { return law.tails(x, w).atMost; });
        if (!ratio || !lower || !upper)
            return tl::unexpected(StatisticsFault::NoConvergence);
        return OddsRatio{ratio, *lower, *upper};
    } catch (const std::exception&) {
        return tl::unexpected(StatisticsFault::NoConvergence);
    }
}

} // namespace holdfast::analytics::statistics
