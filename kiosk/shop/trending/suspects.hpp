#pragma once

#include "analytics/statistics/counts/shared_failures.hpp"
#include "analytics/statistics/counts/trial_size.hpp"
#include "kiosk/shop/trending/lot_outcomes.hpp"
#include "kiosk/shop/trending/since_when.hpp"

namespace holdfast::kiosk::shop::trending {

/// How much a suspect's figures carry. Sharing is not causing.
enum class Strength {
    strong,   ///< q ≤ 1 %, and at least 4 failures with it from at least 3 episodes
    weak,     ///< q ≤ 10 %, and at least 2 failures with it
    byChance, ///< no more than chance would share
};

/// q is the share of false names among all named, over everything looked at (Benjamini–Hochberg): of a hundred suspects
/// called strong about one is called so wrongly, of a hundred called weak about ten. The counts keep one unlucky day,
/// and one failed test, from being called a cause.
inline constexpr double kStrongQ = 0.01;
inline constexpr double kWeakQ = 0.10;
inline constexpr std::int64_t kStrongFailures = 4;
inline constexpr int kStrongEpisodes = 3;
inline constexpr std::int64_t kWeakFailures = 2;

struct Suspect final {
    FactorLevel level{};
    std::int64_t failedWith = 0; ///< lots; of a position, instrument or load: lots as far as it read or washed them
    std::int64_t with = 0;
    std::int64_t failedWithout = 0;
    std::int64_t without = 0;
    int episodes = 0; ///< with it
    double p = 1.0;   ///< by moving whole episodes
    double q = 1.0;
    bool exact = false;
    std::optional<double> odds{}; ///< of failing, with against without; absent: no contrast
    double oddsLow = 0.0;         ///< 95 %; infinity is possible above
    double oddsHigh = 0.0;
    Strength strength = Strength::byChance;
    std::vector<FactorLevel> sameAs{}; ///< cannot be told apart from these
    /// Pieces each way that would tell it from its twins, or show it, with 80 % power; absent: none would.
    std::optional<analytics::statistics::TrialSize> trial{};
};

struct SuspectQuestion final {
    TrendFilter filter{};
    bool shift = false; ///< within dryer; on the owner's request only
    std::uint64_t seed = 1;
    std::size_t most = 12; ///< so many are given, the strongest first
};

struct Suspects final {
    std::vector<Suspect> ranked{}; ///< strongest first; those by chance too
    std::int64_t failed = 0;       ///< lots
    std::int64_t lots = 0;
    std::size_t episodes = 0;
    std::size_t looked = 0; ///< levels looked at
    [[nodiscard]] bool names() const noexcept {
        return !ranked.empty() && ranked.front().strength != Strength::byChance;
    }
};

/// What failed lots share: dryer, bucket and every bucket mixed into it, family, cloth, cloth lot, finish; of readings
/// the position and the instrument; of washes the load. Refusals: noLots, nothingFailed, everythingFailed, oneEpisode.
[[nodiscard]] Figure<Suspects> suspects(const TrendFacts& facts, const SuspectQuestion& question);

/// Levels that a lot carries, those of its readings and washes too.
[[nodiscard]] std::vector<FactorLevel> levelsOfLot(const TrendFacts& facts, FactIndex lot);
/// Lots that carry a level, by time.
[[nodiscard]] std::vector<FactIndex> lotsWith(const TrendFacts& facts, const FactorLevel& level);

/// Since when lots that carry it fail more: change of the share of failed lots, by day with one.
[[nodiscard]] Figure<SinceWhen> sinceWhen(const TrendFacts& facts, const TrendFilter& filter, const FactorLevel& level,
                                          std::uint64_t seed = 1);

} // namespace holdfast::kiosk::shop::trending
