#pragma once

#include "kiosk/shop/trending/terms.hpp"

namespace holdfast::kiosk::shop::trending {

/// From a start, a stop longer than one dwell or a setting change to the next of one dryer (decisions 5 and 6).
struct Episode final {
    FactIndex dryer = kNoFact;
    std::int64_t from = 0;
    std::int64_t to = 0;                 ///< of the last reading or lot in it, or of the next one's beginning
    std::vector<std::string> families{}; ///< of its runs, if it was asked for by family; else empty
    std::optional<records::BeltPosition> position{};        ///< if it was asked for by position
    std::optional<analytics::TemperatureDifference> mean{}; ///< of the drawn readings' margins
    Refusal whyNoMean{};                                    ///< if there is none
    analytics::MarginRange between{};                       ///< of strips alone: what all of them allow
    std::vector<FactIndex> readings{};                      ///< drawn ones that have a margin
    int strips = 0;                                         ///< of them
    int missed = 0;
    std::vector<FactIndex> lots{};          ///< with a drawn or missed reading here
    FactIndex leadsTo = kNoFact;            ///< run of its lowest reading
    std::optional<analytics::Word> worst{}; ///< of the drawn readings: under-cured, overheated, not proven, cured
};

struct EpisodeSplit final {
    bool byFamilies = false;
    bool byPosition = false;
};

/// In the order of time, those with a reading or a missed one. Readings before a dryer's first turn are of an episode
/// that begins with the day. Turns and readings are put in order first: a clock that went backwards makes no episode
/// run backwards. Linear but for the sort.
[[nodiscard]] std::vector<Episode> episodesOf(const TrendFacts& facts, const TrendFilter& filter,
                                              const EpisodeSplit& split = {});

/// Which episode of its dryer each lot began in: numbers that are the same for the lots of one episode, by lot.
[[nodiscard]] std::vector<std::int32_t> episodeOfLots(const TrendFacts& facts);

/// Where a dryer's episodes begin, ascending.
[[nodiscard]] std::vector<std::vector<std::int64_t>> episodeStarts(const TrendFacts& facts);

} // namespace holdfast::kiosk::shop::trending
