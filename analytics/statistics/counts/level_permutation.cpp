#include "analytics/statistics/counts/level_permutation.hpp"

#include <algorithm>
#include <cmath>

namespace holdfast::analytics::statistics {
namespace {

constexpr double kTiedFigures = 1e-9;

/// A number below `count`, by multiplying instead of dividing (Lemire, ACM Trans. Model. Comput. Simul. 29, 2019, 3;
/// the bias left is below count/2³²).
std::size_t below(std::mt19937_64& random, std::size_t count) noexcept {
    return static_cast<std::size_t>(((random() >> 32) * static_cast<std::uint64_t>(count)) >> 32);
}

/// Where the edge `at` of a pattern over `size` lots falls on `there` lots: lot j of them takes the place ⌊(j +
/// ½)·size/ there⌋ of the pattern.
std::int32_t edge(std::int32_t at, std::int32_t size, std::int32_t there) noexcept {
    if (at == 0)
        return 0;
    if (at == size)
        return there;
    return static_cast<std::int32_t>((2 * std::int64_t{at} * there + size - 1) / (2 * std::int64_t{size}));
}

} // namespace

LevelPermutation::LevelPermutation(const LotDesign& design, const LevelPermutationSettings& settings)
    : m_design{design}, m_settings{settings} {}

void LevelPermutation::readPatterns(LevelId level) {
    m_patterns.clear();
    m_home.clear();
    m_runs.clear();
    std::int32_t episode = -1;
    for (const std::int32_t lot : m_design.columns[static_cast<std::size_t>(level)]) {
        const std::int32_t here = m_design.episodeOf[static_cast<std::size_t>(lot)];
        const std::int32_t first = m_design.start[static_cast<std::size_t>(here)];
        const std::int32_t size = m_design.start[static_cast<std::size_t>(here) + 1] - first;
        const std::int32_t place = lot - first;
        if (here != episode) {
            m_patterns.push_back(
                {m_design.stratumOf[static_cast<std::size_t>(here)], size, m_runs.size(), m_runs.size()});
            m_home.push_back(here);
            episode = here;
        }
        if (m_patterns.back().lastRun == m_patterns.back().firstRun || m_runs.back().to != place) {
            m_runs.push_back({place, place});
            ++m_patterns.back().lastRun;
        }
        m_runs.back().to = place + 1;
    }
}

double LevelPermutation::arrangements() const noexcept {
    double count = 1.0;
    std::size_t taken = 0;
    for (std::size_t i = 0; i < m_patterns.size() && count < 1e18; ++i) {
        taken = i > 0 && m_patterns[i].stratum == m_patterns[i - 1].stratum ? taken + 1 : 0;
        count *= static_cast<double>(m_design.strata[static_cast<std::size_t>(m_patterns[i].stratum)].size() - taken);
    }
    return count;
}

LevelPermutation::Sum LevelPermutation::laidOn(const Pattern& pattern, std::int32_t episode) const noexcept {
    const std::int32_t first = m_design.start[static_cast<std::size_t>(episode)];
    const std::int32_t there = m_design.start[static_cast<std::size_t>(episode) + 1] - first;
    Sum sum;
    for (std::size_t i = pattern.firstRun; i < pattern.lastRun; ++i) {
        const std::int32_t from = edge(m_runs[i].from, pattern.size, there);
        const std::int32_t to = edge(m_runs[i].to, pattern.size, there);
        sum.excess += m_design.excess[static_cast<std::size_t>(first + to)] -
                      m_design.excess[static_cast<std::size_t>(first + from)];
        sum.lots += to - from;
    }
    return sum;
}

double LevelPermutation::statistic(const Sum& sum) const noexcept {
    const double all = m_design.lots();
    const double n = sum.lots;
    return n > 0.0 && n < all ? sum.excess / std::sqrt(n * (all - n) / all) : 0.0;
}

double LevelPermutation::seen() const noexcept {
    Sum sum;
    for (std::size_t i = 0; i < m_patterns.size(); ++i) {
        const Sum here = laidOn(m_patterns[i], m_home[i]);
        sum = {sum.excess + here.excess, sum.lots + here.lots};
    }
    return statistic(sum);
}

double LevelPermutation::drawn(std::mt19937_64& random) {
    Sum sum;
    std::size_t taken = 0;
    for (std::size_t i = 0; i < m_patterns.size(); ++i) {
        taken = i > 0 && m_patterns[i].stratum == m_patterns[i - 1].stratum ? taken + 1 : 0;
        auto& pool = m_pools[static_cast<std::size_t>(m_patterns[i].stratum)];
        std::swap(pool[taken], pool[taken + below(random, pool.size() - taken)]);
        const Sum here = laidOn(m_patterns[i], pool[taken]);
        sum = {sum.excess + here.excess, sum.lots + here.lots};
    }
    return statistic(sum);
}

/// Lays pattern after pattern on every episode still free: those before `taken` in the pool are not.
void LevelPermutation::goThrough(std::size_t index, const Sum& soFar, LevelPermutationTest& tally,
                                 std::int64_t& extreme) {
    if (index == m_patterns.size()) {
        ++tally.arrangements;
        extreme += statistic(soFar) >= m_least ? 1 : 0;
        return;
    }
    const Pattern& pattern = m_patterns[index];
    std::size_t taken = 0;
    while (taken < index && m_patterns[index - taken - 1].stratum == pattern.stratum)
        ++taken;
    auto& pool = m_pools[static_cast<std::size_t>(pattern.stratum)];
    for (std::size_t i = taken; i < pool.size(); ++i) {
        std::swap(pool[taken], pool[i]);
        const Sum here = laidOn(pattern, pool[taken]);
        goThrough(index + 1, {soFar.excess + here.excess, soFar.lots + here.lots}, tally, extreme);
        std::swap(pool[taken], pool[i]);
    }
}

LevelPermutationTest LevelPermutation::test(LevelId level) {
    readPatterns(level);
    m_pools = m_design.strata;
    const double observed = seen();
    m_least = observed - kTiedFigures * (1.0 + std::abs(observed));
    LevelPermutationTest tally;
    std::int64_t extreme = 0;
    if (arrangements() <= static_cast<double>(std::max<std::int64_t>(1, m_settings.enumerateUpTo))) {
        goThrough(0, {}, tally, extreme);
        tally.exact = true;
        tally.p = static_cast<double>(extreme) / static_cast<double>(tally.arrangements);
        return tally;
    }
    std::mt19937_64 random{m_settings.seed * 0x9E3779B97F4A7C15ULL + static_cast<std::uint64_t>(level)};
    while (tally.arrangements < m_settings.permutations && extreme < m_settings.stopAfter) {
        ++tally.arrangements;
        extreme += drawn(random) >= m_least ? 1 : 0;
    }
    const auto done = static_cast<double>(tally.arrangements);
    tally.p = extreme >= m_settings.stopAfter ? static_cast<double>(extreme) / done
                                              : (1.0 + static_cast<double>(extreme)) / (1.0 + done);
    return tally;
}

} // namespace holdfast::analytics::statistics
