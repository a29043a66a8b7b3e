#pragma once

#include "analytics/statistics/counts/confounding.hpp"
#include "analytics/statistics/counts/fisher.hpp"
#include "analytics/statistics/counts/proportion.hpp"

namespace holdfast::analytics::statistics {

struct SharedFailureSettings {
    std::uint64_t seed = 1;             ///< the same seed gives the same ranking
    double confidence = 0.95;           ///< of the odds ratio's limits
    std::int64_t permutations = 0;      ///< at most for one level; 0: 100 × levels, at least 9,999, at most 99,999
    std::int64_t stopAfter = 20;        ///< a level is let go after so many arrangements at least as extreme
    std::int64_t enumerateUpTo = 5'000; ///< arrangements that are all gone through instead of drawn
    std::size_t dependenceAmong = 200;  ///< so many levels from the top are looked at for sums of each other
};

enum class LevelCaveat {
    None,
    NoContrast, ///< every lot carries it, or none: nothing to compare with, p and q are 1
    OneEpisode, ///< all its lots are of one episode: whatever else happened then explains it as well
};

struct LevelFinding {
    LevelId level = 0;
    FactorId factor = 0;
    CountOf with;              ///< failed of lots that carry it
    CountOf without;           ///< failed of lots that do not
    std::int32_t episodes = 0; ///< that carry it
    double fisherP = 1.0;      ///< one-sided, failing is commoner with it; as if lots were independent
    double permutationP = 1.0; ///< one-sided, by whole episodes: the p to believe
    std::int64_t arrangements = 0;
    bool exact = false; ///< every arrangement was gone through
    double q = 1.0;     ///< Benjamini–Hochberg over permutationP, levels of identical lots as one
    OddsRatio odds;
    std::optional<std::size_t> twins; ///< index into SharedFailures::classes: cannot be told apart from those
    LevelCaveat caveat = LevelCaveat::None;
};

enum class SharedFailureCaveat {
    None,
    NothingFailed,
    EverythingFailed,
    OneEpisode, ///< no stratum has two episodes: nothing can be moved, every p is 1
};

struct SharedFailures {
    std::vector<LevelFinding> ranked; ///< every level, the strongest suspect first
    std::vector<std::vector<TwinLevel>> classes;
    std::vector<LinearDependence> dependences; ///< among the first settings.dependenceAmong
    std::size_t lots = 0;
    std::int64_t failed = 0;
    std::size_t episodes = 0;
    SharedFailureCaveat caveat = SharedFailureCaveat::None;
};

/// What do the failed lots share? Every level with its counts, Fisher's exact p (fisher.hpp), the p by moving whole
/// episodes (level_permutation.hpp), q, conditional odds ratio with exact limits, and the levels it cannot be told
/// apart from; by rising permutation p, then Fisher's p, then level. A level carried by every lot or none comes last.
/// No lots: NoValues; settings outside their domain: OutOfDomain. Cost: levels × (draws until let go × episodes of the
/// level).
[[nodiscard]] tl::expected<SharedFailures, StatisticsFault>
rankSharedFailures(const LotTable& table, const SharedFailureSettings& settings = {});

} // namespace holdfast::analytics::statistics
