#include "analytics/statistics/counts/interval_survival.hpp"

#include "analytics/statistics/counts/count_domain.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

namespace holdfast::analytics::statistics {
namespace {

constexpr double kEnd = kUnbounded;
constexpr double kSettled = 1e-12;
constexpr double kNoShare = 1e-7;
constexpr int kMostRounds = 100'000;
constexpr std::size_t kMostStretches = 2'000;

using Interval = std::pair<double, double>; ///< (after, by]

tl::expected<std::map<Interval, double>, StatisticsFault> gathered(std::span<const InspectedOutcome> outcomes) {
    std::map<Interval, double> counts;
    for (const auto& outcome : outcomes) {
        if (!std::isfinite(outcome.held) || (outcome.failedBy && !std::isfinite(*outcome.failedBy)))
            return tl::unexpected(StatisticsFault::NotFinite);
        if (outcome.held < 0.0 || outcome.failedBy.value_or(kEnd) <= outcome.held || !isCount(outcome.pieces))
            return tl::unexpected(StatisticsFault::OutOfDomain);
        if (outcome.pieces > 0)
            counts[{outcome.held, outcome.failedBy.value_or(kEnd)}] += static_cast<double>(outcome.pieces);
    }
    if (counts.empty())
        return tl::unexpected(StatisticsFault::NoValues);
    return counts;
}

/// Turnbull's stretches: from a left end to the next right end without another left end between.
std::vector<Interval> stretchesOf(const std::map<Interval, double>& counts) {
    std::vector<std::pair<double, int>> ends; // right ends (0) before left ends (1) at the same cycles
    for (const auto& [interval, pieces] : counts) {
        ends.emplace_back(interval.first, 1);
        ends.emplace_back(interval.second, 0);
    }
    std::sort(ends.begin(), ends.end());
    std::vector<Interval> stretches;
    for (std::size_t i = 0; i + 1 < ends.size(); ++i)
        if (ends[i].second == 1 && ends[i + 1].second == 0)
            stretches.emplace_back(ends[i].first, ends[i + 1].first);
    return stretches;
}

struct Member {
    std::size_t from; ///< first stretch within the interval
    std::size_t to;   ///< one past the last
    double pieces;
};

std::vector<Member> membersOf(const std::map<Interval, double>& counts, const std::vector<Interval>& stretches) {
    std::vector<Member> members;
    for (const auto& [interval, pieces] : counts) {
        std::size_t from = 0;
        while (stretches[from].first < interval.first)
            ++from;
        std::size_t to = from;
        while (to < stretches.size() && stretches[to].second <= interval.second)
            ++to;
        members.push_back({from, to, pieces});
    }
    return members;
}

bool settle(std::vector<double>& shares, const std::vector<Member>& members, double pieces) {
    std::vector<double> next(shares.size());
    for (int round = 0; round < kMostRounds; ++round) {
        std::fill(next.begin(), next.end(), 0.0);
        for (const auto& member : members) {
            double sum = 0.0;
            for (std::size_t i = member.from; i < member.to; ++i)
                sum += shares[i];
            for (std::size_t i = member.from; i < member.to; ++i)
                next[i] += member.pieces * shares[i] / sum;
        }
        double moved = 0.0;
        for (std::size_t i = 0; i < shares.size(); ++i) {
            next[i] /= pieces;
            moved = std::max(moved, std::abs(next[i] - shares[i]));
        }
        shares.swap(next);
        if (moved < kSettled)
            return true;
    }
    return false;
}

} // namespace

tl::expected<std::vector<IntervalStep>, StatisticsFault> intervalSurvival(std::span<const InspectedOutcome> outcomes) {
    const auto counts = gathered(outcomes);
    if (!counts)
        return tl::unexpected(counts.error());
    const auto stretches = stretchesOf(*counts);
    if (stretches.size() > kMostStretches)
        return tl::unexpected(StatisticsFault::OutOfDomain);
    double pieces = 0.0;
    for (const auto& [interval, count] : *counts)
        pieces += count;
    std::vector<double> shares(stretches.size(), 1.0 / static_cast<double>(stretches.size()));
    if (!settle(shares, membersOf(*counts, stretches), pieces))
        return tl::unexpected(StatisticsFault::NoConvergence);
    std::vector<IntervalStep> steps;
    double survival = 1.0;
    for (std::size_t i = 0; i < stretches.size(); ++i) {
        survival = i + 1 < stretches.size() ? std::max(0.0, survival - shares[i]) : 0.0;
        if (shares[i] <= kNoShare)
            continue;
        const auto by = std::isfinite(stretches[i].second) ? std::optional{stretches[i].second} : std::nullopt;
        steps.push_back({stretches[i].first, by, shares[i], survival});
    }
    return steps;
}

} // namespace holdfast::analytics::statistics
