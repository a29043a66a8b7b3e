#pragma once

#include "analytics/statistics/counts/rate_ratio.hpp"
#include "kiosk/shop/trending/failure_trend.hpp"
#include "kiosk/shop/trending/instruments_compared.hpp"
#include "kiosk/shop/trending/margin_trend.hpp"

namespace holdfast::kiosk::shop::trending {

/// How this week stands to the thirteen before it.
enum class Standing { usual, better, worse, notEnough };

template <class T>
struct AgainstBefore final {
    T week{};
    T before{}; ///< a week's mean of the thirteen, or their share
    Standing standing = Standing::notEnough;
};

struct DryerWeek final {
    FactIndex dryer = kNoFact;
    int readings = 0;
    int episodes = 0;
    std::optional<analytics::TemperatureDifference> margin{}; ///< mean of the week's episodes
    std::optional<analytics::TemperatureDifference> before{};
    std::int64_t lots = 0;
    std::int64_t failed = 0;
    int missed = 0;
    Standing standing = Standing::notEnough;
};

struct Briefing final {
    std::int64_t from = 0; ///< begin of the week
    std::int64_t to = 0;
    AgainstBefore<double> readings{}; ///< drawn
    AgainstBefore<double> missed{};
    AgainstBefore<double> lots{};
    AgainstBefore<double> failedLots{};
    std::optional<AgainstBefore<analytics::TemperatureDifference>> margin{};
    double failedShare = 0.0;
    double failedShareBefore = 0.0;
    double failedP = 1.0; ///< Fisher's two-sided, this week's lots against those before
    std::vector<FactIndex> failedLotsOfWeek{};
    std::vector<DryerWeek> dryers{}; ///< worst first: those that got worse, then by failed lots, then by margin
    std::vector<FactIndex> onHold{}; ///< lots, oldest first
    std::vector<FactIndex> openComplaints{};
    std::vector<FactIndex> changed{};                     ///< events of the week; pails are left out
    int weeksBefore = 0;                                  ///< with a lot, of thirteen
    Figure<Suspects> suspects{tl::unexpected(Refusal{})}; ///< of the fourteen weeks
    Figure<std::vector<InstrumentOffset>> instruments{tl::unexpected(Refusal{})};
    std::vector<std::pair<FactIndex, Figure<MarginDrift>>> drifts{}; ///< of each dryer, over the fourteen weeks
};

inline constexpr int kWeeksBefore = 13;
/// A week is called better or worse only below this p.
inline constexpr double kWeekRisk = 0.01;

/// The seven days that end at `now`, against the thirteen weeks before them. What is due is asked from the book.
[[nodiscard]] Briefing briefingOf(const TrendFacts& facts, std::int64_t now, std::uint64_t seed = 1);

} // namespace holdfast::kiosk::shop::trending
