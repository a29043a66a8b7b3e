#pragma once

#include "analytics/statistics/charts/baseline.hpp"
#include "analytics/statistics/charts/rules.hpp"
#include "analytics/statistics/models/trend.hpp"
#include "kiosk/shop/trending/episodes.hpp"
#include "kiosk/shop/trending/since_when.hpp"

namespace holdfast::kiosk::shop::trending {

/// Limits by episode: centre ± 3·MR̄/d2 of the baseline.
struct MarginLimits final {
    analytics::TemperatureDifference lower{};
    analytics::TemperatureDifference centre{};
    analytics::TemperatureDifference upper{};
    analytics::TemperatureDifference sd{};
    std::string baseline{};   ///< name of the frozen one; empty: the first episodes
    std::size_t episodes = 0; ///< it was made from
    std::vector<analytics::statistics::ChartCaveat> caveats{};
};

/// One episode on the chart. Without a mean it is drawn as the interval of its strips and no rule reads it.
struct MarginPoint final {
    std::size_t episode = 0; ///< place in MarginTrend::episodes
    std::optional<analytics::TemperatureDifference> ewma{};
    bool ewmaOutside = false;
    std::uint16_t marks = 0; ///< bit (rule − 1), + 8 below: which rules speak of it
};

struct MarginSignal final {
    analytics::statistics::NelsonRule rule{};
    analytics::statistics::SignalSide side{};
    std::vector<std::size_t> episodes{}; ///< places in MarginTrend::episodes that it speaks of
    std::size_t metAt = 0;               ///< episode at which it was first met
};

/// Theil–Sen over episodes, with the 95 % limits of Kendall.
struct MarginDrift final {
    analytics::TemperatureDifference aWeek{}; ///< below 0: the margin sinks
    analytics::TemperatureDifference leastAWeek{};
    analytics::TemperatureDifference mostAWeek{};
    analytics::TemperatureDifference now{}; ///< of the line at the last episode
    analytics::statistics::DriftStanding standing{};
    double weeksEarliest = 0.0; ///< from the last episode until the line meets the cure line: only if `Crosses`
    double weeksLatest = 0.0;
    std::size_t episodes = 0;
};

/// How many pieces in a hundred lie below the limit of what was asked, by the one-way random-effects model.
struct BelowLimit final {
    double perHundred = 0.0;                    ///< most likely
    double atMostPerHundred = 0.0;              ///< with 95 % confidence; 50: not known to be less
    analytics::TemperatureDifference bound95{}; ///< 95 of 100 pieces lie above it, with 95 % confidence
    std::size_t episodes = 0;
    std::size_t readings = 0;
    bool oneAnEpisode = false; ///< worked as independent values
};

/// Of a steady dryer the usual rules signal less often than once in so many episodes, limits from its first sixty: once
/// in 80 over two hundred invented histories of eighteen months.
inline constexpr double kEpisodesAFalseSignal = 75.0;

struct MarginQuestion final {
    TrendFilter filter{};
    EpisodeSplit split{};
    std::optional<analytics::statistics::Baseline> baseline{}; ///< a frozen one
    std::size_t baselineEpisodes = 60; ///< first so many, at least kUsualPoints, when none is frozen
    analytics::statistics::RuleSet rules = usualRules();
    std::uint64_t seed = 1;

    /// One beyond the limits, nine in a row on one side, six rising or falling, two of three near a limit: Nelson's
    /// rules 1, 2, 3 and 5. The others are switched on by whoever asks.
    [[nodiscard]] static constexpr analytics::statistics::RuleSet usualRules() noexcept {
        using analytics::statistics::NelsonRule;
        return analytics::statistics::RuleSet::none()
            .with(NelsonRule::BeyondThreeSigma)
            .with(NelsonRule::OneSide)
            .with(NelsonRule::Trend)
            .with(NelsonRule::TwoOfThree);
    }
};

struct MarginTrend final {
    std::vector<Episode> episodes{};
    std::vector<MarginPoint> points{}; ///< one for each episode
    Figure<MarginLimits> limits{tl::unexpected(Refusal{})};
    std::vector<MarginSignal> alarms{};
    Figure<MarginDrift> drift{tl::unexpected(Refusal{})};
    Figure<SinceWhen> since{tl::unexpected(Refusal{})};
    Figure<BelowLimit> below{tl::unexpected(Refusal{})};
    int readings = 0; ///< drawn
    int strips = 0;
    int missed = 0;
    FactIndex leadsTo = kNoFact; ///< run of the latest signal's last episode, else of the last episode
};

/// Never fails: every part says by itself why it gives no figure.
[[nodiscard]] MarginTrend marginTrend(const TrendFacts& facts, const MarginQuestion& question);

/// The baseline of an answer, to be kept under a name.
[[nodiscard]] Figure<analytics::statistics::Baseline> frozenBaseline(const MarginTrend& trend, const std::string& name,
                                                                     std::size_t firstEpisode, std::size_t count);

} // namespace holdfast::kiosk::shop::trending
