#pragma once

#include "analytics/cure/verdict.hpp"
#include "analytics/quantity/temperature.hpp"
#include "kiosk/records/reading_records.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

/// What was done at the dryer.
namespace holdfast::kiosk::records {

enum class FloorAction {
    beltSlower,
    beltFaster,
    hotter,
    cooler,
    feedStopped, ///< the belt or the feed stands: an episode ends
    started,     ///< it runs again: another begins
    pulled,      ///< pieces taken off the belt's end
    problem,     ///< noted, nothing turned yet
    takenOver,   ///< the next crew has read the hand-over
};

/// action.taken: one scan of an action card. Those that change the dryer end its episode.
struct ActionTaken final {
    std::string dryer{}; ///< id
    FloorAction action = FloorAction::problem;
    std::optional<double> beltMetresPerMinute{};              ///< as it is from now on, if it was said
    std::optional<analytics::AuthoredTemperature> setPoint{}; ///< as it is from now on, if it was said
    std::optional<int> pieces{};                              ///< pulled, or in the tunnel
    std::optional<std::string> answers{};                     ///< id of the bad reading whose "what was done?" this is
};

/// reading.struck: taken out for a cause that the trace or a picture shows; it stays in the book.
enum class StruckCause { probeFellOut, wrongPrint, leadCaught, garbledTrace };
struct ReadingStruck final {
    std::string reading{}; ///< id
    StruckCause cause = StruckCause::probeFellOut;
};

/// flash.noted: an underbase between screens; a note, not part of the lot.
struct FlashNoted final {
    std::string run{};
    int position = 1; ///< of the layer, from 1 at the bottom
    std::string instrument{};
    analytics::AuthoredTemperature peak{}; ///< as indicated
    analytics::FlashWord word = analytics::FlashWord::notProven;
    std::vector<analytics::Reason> reasons{};
};

} // namespace holdfast::kiosk::records
