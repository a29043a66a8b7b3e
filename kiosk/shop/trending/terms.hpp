#pragma once

#include "analytics/quantity/temperature.hpp"
#include "analytics/statistics/fault.hpp"
#include "kiosk/records/trend_queries.hpp"

#include <tl/expected.hpp>

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

/// The owner's hour: what the book's facts add up to (decisions 6). Pure: no book, no clock, no sentences. Times are
/// wall milliseconds.
namespace holdfast::kiosk::shop::trending {

using records::FactIndex;
using records::kNoFact;
using records::TrendFacts;

/// Why a figure is not given.
enum class NoFigure {
    noReadings,       ///< none that counts, of what was asked
    noLots,           ///< none, of what was asked
    tooFewEpisodes,   ///< `have` of `need`
    tooFewFailures,   ///< `have` of `need`
    tooFewSurvivals,  ///< `have` of `need`
    tooFewFailedLots, ///< failures from `have` lots, `need`
    tooFewHeldLots,   ///< survivals from `have` lots, `need`
    tooFewWeeks,      ///< `have` of `need` with a lot in them
    tooFewPairs,      ///< of instruments read side by side: `have` of `need`
    allEqual,         ///< no spread to go by
    onlyStrips,       ///< known as intervals only
    tooManyOpen,      ///< more than a third of the intervals are open at one end
    nothingFailed,
    everythingFailed,
    oneEpisode,       ///< all of it is of one episode: nothing to compare with
    nothingToCompare, ///< one dryer, one bucket, one instrument …
    noChange,         ///< no more than chance
    separated,        ///< a margin divides all failures from all survivals
    notFitted,        ///< the search did not settle
    notFinite,        ///< a figure in the book is no number
    nothingShared,    ///< the suspect was asked for but no other lot has it
    tooEarly,         ///< ask again later: see where it is given
};
struct Refusal final {
    NoFigure why = NoFigure::noReadings;
    std::int64_t have = 0;
    std::int64_t need = 0;
    bool operator==(const Refusal&) const = default;
};
template <class T>
using Figure = tl::expected<T, Refusal>;

[[nodiscard]] Refusal refusalOf(analytics::statistics::StatisticsFault fault, std::int64_t have = 0,
                                std::int64_t need = 0) noexcept;

/// What is asked about; everything absent: the whole shop.
struct TrendFilter final {
    std::optional<std::string> dryer{};              ///< id
    std::optional<std::string> family{};             ///< name: lots with a layer labelled so
    std::optional<std::string> fabric{};             ///< name
    std::optional<std::int64_t> bucket{};            ///< number: lots with it, or with a mix of it
    std::optional<records::BeltPosition> position{}; ///< of readings; lots are not left out for it
    std::optional<std::string> instrument{};         ///< id, of readings
    std::optional<std::int64_t> from{};
    std::optional<std::int64_t> to{}; ///< not with it
    bool operator==(const TrendFilter&) const = default;
};

/// Which lots and readings it leaves. Reads its names once.
class Filtered final {
public:
    Filtered(const TrendFacts& facts, const TrendFilter& filter);
    [[nodiscard]] bool holds(const records::TrendLot& lot) const;
    /// Of a lot that it holds; time is the reading's own.
    [[nodiscard]] bool holds(const records::TrendReading& reading) const;
    [[nodiscard]] bool holdsTime(std::int64_t at) const noexcept;
    [[nodiscard]] bool holdsDryer(FactIndex dryer) const noexcept;

private:
    const TrendFacts& m_facts;
    TrendFilter m_filter;
    std::optional<FactIndex> m_dryer;      ///< kNoFact: no such
    std::optional<FactIndex> m_instrument; ///< kNoFact: no such
    std::optional<FactIndex> m_bucket;     ///< kNoFact: no such
    std::vector<char> m_runs;              ///< by run
};

/// Whether a reading is of the plan of the lot: drawn, or after a change. Worry, retake, study, map and set-up do not
/// count: they were taken because something was thought of.
[[nodiscard]] constexpr bool isDrawn(records::ReadingReason reason) noexcept {
    return reason == records::ReadingReason::drawn || reason == records::ReadingReason::afterChange;
}

/// Some time of a series, from the earliest to the latest that it may have been; with what is known to have changed.
struct TimeSpan final {
    std::int64_t from = 0;
    std::int64_t to = 0;
    bool operator==(const TimeSpan&) const = default;
};

/// Begin of the local week (Monday) that a time falls in, wall milliseconds.
[[nodiscard]] std::int64_t weekOf(std::int64_t at, int utcOffsetMinutes) noexcept;
inline constexpr std::int64_t kDayMs = 86'400'000;
inline constexpr std::int64_t kWeekMs = 7 * kDayMs;

/// Factors that failures may share. Persons are none of them (decisions 6).
enum class FactorKind { dryer, bucket, family, fabric, clothLot, finish, position, washLoad, instrument, shift };

/// One of a kind: dryer North, bucket K118, cloth lot C 312.
struct FactorLevel final {
    FactorKind kind = FactorKind::dryer;
    std::string key{};       ///< id of a dryer or instrument; number of a bucket or load; else the name itself
    std::string name{};      ///< what people call it; of a bucket its family's or mix's name
    std::int64_t number = 0; ///< of buckets and loads
    bool isMix = false;      ///< of a bucket
    records::BeltPosition position = records::BeltPosition::centre; ///< of a position
    int shift = 0;                                                  ///< of a shift: 0 early, 1 late, 2 night
    bool operator==(const FactorLevel&) const = default;
};

} // namespace holdfast::kiosk::shop::trending
