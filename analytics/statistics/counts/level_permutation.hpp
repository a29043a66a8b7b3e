#pragma once

#include "analytics/statistics/counts/lot_table.hpp"

#include <random>

namespace holdfast::analytics::statistics {

struct LevelPermutationSettings {
    std::uint64_t seed = 1;
    std::int64_t permutations = 1'999;  ///< drawn at most for one level
    std::int64_t stopAfter = 20;        ///< arrangements at least as extreme after which a level is let go
    std::int64_t enumerateUpTo = 5'000; ///< so many arrangements of a level's episodes or fewer are all gone through
};

struct LevelPermutationTest {
    double p = 1.0; ///< one-sided: failing is commoner with the level
    std::int64_t arrangements = 0;
    bool exact = false; ///< every arrangement was gone through
};

/// Does failing go with a level? Exchangeable under "no" are the whole episodes of a stratum: what an episode carried
/// (its pattern of the level along its lots) is laid on another one, stretched or shrunk to the number of lots there;
/// an episode's outcomes and their order never leave it. A level that all lots of its episodes carry is therefore moved
/// as a label of episodes; one that changes within an episode keeps its place in it (first lots, last lots). Lots and
/// readings are never moved singly.
///
/// Statistic: Σ over lots with the level of (failed − share failed in the stratum), over √(n(N − n)/N). Few
/// arrangements are all counted (p = b/total); otherwise drawn until `stopAfter` were at least as extreme, p = h/m
/// (Besag and Clifford, Biometrika 78, 1991, 301–304), or `permutations` are done, p = (1 + b)/(1 + m). Both are valid
/// p at any number drawn. Each level has its own stream of draws from the seed. Cost of a draw: the level's episodes.
class LevelPermutation final {
public:
    LevelPermutation(const LotDesign& design, const LevelPermutationSettings& settings);

    [[nodiscard]] LevelPermutationTest test(LevelId level);

private:
    struct Run {
        std::int32_t from; ///< first lot within the episode that carries the level
        std::int32_t to;   ///< one past the last of the run
    };
    struct Pattern {
        std::int32_t stratum;
        std::int32_t size; ///< lots of its own episode
        std::size_t firstRun;
        std::size_t lastRun;
    };
    struct Sum {
        double excess = 0.0;
        std::int32_t lots = 0;
    };

    void readPatterns(LevelId level);
    [[nodiscard]] double arrangements() const noexcept;
    [[nodiscard]] Sum laidOn(const Pattern& pattern, std::int32_t episode) const noexcept;
    [[nodiscard]] double statistic(const Sum& sum) const noexcept;
    [[nodiscard]] double seen() const noexcept;
    [[nodiscard]] double drawn(std::mt19937_64& random);
    void goThrough(std::size_t pattern, const Sum& soFar, LevelPermutationTest& tally, std::int64_t& extreme);

    const LotDesign& m_design;
    LevelPermutationSettings m_settings;
    std::vector<std::vector<std::int32_t>> m_pools;
    std::vector<Pattern> m_patterns;
    std::vector<std::int32_t> m_home; ///< the episode each pattern came from
    std::vector<Run> m_runs;
    double m_least = 0.0; ///< what counts as at least as extreme
};

} // namespace holdfast::analytics::statistics
