#pragma once

#include "kiosk/records/floor_queries.hpp"
#include "kiosk/shop/proving/recording.hpp"

#include <cstddef>
#include <memory>
#include <optional>
#include <string>
#include <vector>

/// What a kiosk knows of the dryer it stands at, beside rides and verdicts.
namespace holdfast::kiosk::shop {

/// What was done last, shown at once; the book follows.
struct ShownAction final {
    records::ActionTaken action{};
    MonotonicTime at{0};
    bool kept = false;      ///< it stands in the book
    bool endedLots = false; ///< what comes is another lot
};

struct FloorState final {
    std::optional<records::DryerNow> dryer{};      ///< as the book says, and as turned since
    std::optional<MonotonicTime> stoppedAt{};      ///< it stands since then; absent: runs, or stood before the start
    std::vector<records::ReadingRow> unanswered{}; ///< bad readings without a word of what was done, oldest first
    std::vector<std::string> answered{};           ///< ids of readings answered in this session
    std::vector<records::ReadingRow> unclaimed{};  ///< "whose was this?", newest first
    std::optional<ShownAction> lastAction{};
    bool setUp = false;                              ///< readings are set-up: nothing can hold a lot
    bool changed = false;                            ///< the dryer was changed since the last ride
    std::optional<MonotonicTime> wipeUntil{};        ///< touches are left out until then
    std::optional<MonotonicTime> piecesAskedUntil{}; ///< `pulled` waits for its number until then, else goes without
    bool handOver = false;                           ///< the hand-over card stands until takenOver
    bool notReady = false;                           ///< after a power loss: until a ride is proven
    std::optional<int> inTunnelAtLoss{};             ///< pieces that stood in the tunnel, if the dryer's figures say so
};

/// Heated length over belt speed; absent if one of them is not known or the belt stands (speed 0).
[[nodiscard]] std::optional<analytics::Duration> dwellOf(const records::DryerNow& dryer);
/// Heated length × pieces a metre, rounded up (decisions 5); absent if one of them is not known.
[[nodiscard]] std::optional<int> piecesInTunnel(const records::DryerDescribed& dryer);

/// One more run that a ride is judged for, as its spool must know it.
struct OtherOnBelt final {
    std::string run{};                     ///< id
    std::optional<std::string> corrects{}; ///< id of the entry, if the ride was kept for it already
};
struct FoundOther final {
    std::shared_ptr<const AnnouncedRun> run{};
    std::optional<std::string> corrects{};
};

// inside of the machine

/// Readings that are to be judged for another run, while their traces are loaded.
struct Claim final {
    std::vector<std::string> readings{}; ///< ids
    std::shared_ptr<const AnnouncedRun> run{};
};

struct LastScan final {
    std::string text{};
    MonotonicTime at{0};
};

} // namespace holdfast::kiosk::shop
