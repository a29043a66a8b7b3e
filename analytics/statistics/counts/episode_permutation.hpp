#pragma once

#include "analytics/statistics/fault.hpp"

#include <tl/expected.hpp>

#include <cstdint>
#include <span>

namespace holdfast::analytics::statistics {

/// One episode (or day) as a whole.
struct EpisodeFigure {
    double sum = 0.0;         ///< of its figures: failed lots, or margins added up
    double weight = 1.0;      ///< how many figures that are; above 0
    bool with = false;        ///< the episode carries the level asked about
    std::int32_t stratum = 0; ///< labels are only moved within a stratum
};

struct PermutationSettings {
    std::uint64_t seed = 1;              ///< the same seed gives the same p
    std::int64_t permutations = 9'999;   ///< drawn when there are too many arrangements to go through all; ≥ 1
    std::int64_t enumerateUpTo = 20'000; ///< so many arrangements or fewer are all gone through
};

struct PermutationTest {
    double difference = 0.0; ///< weighted mean with − weighted mean without
    double greater = 1.0;    ///< chance of a difference at least as large
    double less = 1.0;
    double twoSided = 1.0;         ///< twice the smaller of both, at most 1
    std::int64_t arrangements = 0; ///< gone through or drawn
    bool exact = false;            ///< every arrangement was gone through
};

/// Permutation test by whole episodes. Exchangeable under "it makes no difference" are the episodes within a stratum:
/// which of them carry the level. An episode's figures stay together, so however alike the readings within it are, they
/// never count as several pieces of evidence. Not exchangeable, and never moved, are readings, lots within an episode,
/// or episodes of different strata. Every arrangement counted if there are at most `enumerateUpTo` (p = b/total, the
/// one seen among them; Pitman, Suppl. J. R. Stat. Soc. 4, 1937, 119–130), otherwise drawn: p = (1 + b)/(1 + m)
/// (Phipson and Smyth, Stat. Appl. Genet. Mol. Biol. 9, 2010, 39). No episode with, or none without, is NoSpread; a sum
/// or weight that is not finite NotFinite; a weight of 0 or less OutOfDomain. Cost: arrangements × episodes with the
/// level.
[[nodiscard]] tl::expected<PermutationTest, StatisticsFault> permuteEpisodes(std::span<const EpisodeFigure> episodes,
                                                                             const PermutationSettings& settings = {});

} // namespace holdfast::analytics::statistics
