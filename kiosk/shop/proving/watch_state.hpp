#pragma once

#include "analytics/lots/belt_map.hpp"
#include "analytics/lots/bracket.hpp"
#include "analytics/lots/dryer_state.hpp"
#include "analytics/lots/piece_count.hpp"
#include "analytics/lots/reading_plan.hpp"
#include "kiosk/records/lot_records.hpp"
#include "kiosk/shop/proving/recording.hpp"

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <utility>
#include <vector>

/// What the kiosk watches by itself while runs are on the belt: how many pieces, which is to be read next, which are to
/// be pulled (decisions 5).
namespace holdfast::kiosk::shop {

/// The reading that is due next, with the piece that was drawn for it.
struct DuePiece final {
    analytics::DueReading reading;
    std::optional<int> piece{}; ///< absent: nobody counts, or the time decides and is not up
};

/// Pieces that a bad reading, or a belt that stopped, put in a bin.
struct BinBracket final {
    std::string hold;      ///< id
    std::string lot;       ///< id
    std::string reading{}; ///< id of the entry that is the cause; empty: the belt stopped
    std::int64_t bin = 0;  ///< 0: none could be given
    bool known = false;    ///< the piece is: `facts` and `pieces` say something; else the whole lot is meant
    bool open = true;      ///< until a piece after it is proven, or the run has ended
    analytics::BracketFacts facts{};
    analytics::PieceSpan pieces{}; ///< to be pulled, as things stand
    std::optional<records::CountBasis> basis{};
};

/// One run of this session.
struct RunWatch final {
    std::shared_ptr<const AnnouncedRun> run{}; ///< as last announced
    analytics::Requirement asked{};
    std::optional<int> typed{};            ///< the newest number of pieces typed, or left by a counter
    bool leftByCounter = false;            ///< `typed` is what a counter had told before it could tell no more
    std::optional<int> pulsed{};           ///< by a counter that saw every piece since the run began or was typed
    std::vector<analytics::BeltRan> ran{}; ///< since then, else since the run was announced
    bool measured = true;                  ///< false: it was under way before, or the belt ran at a speed nobody knows
    std::optional<analytics::PieceCount> made{};
    int inBook = 0; ///< the furthest piece that stood in the book as the run was announced
    int firstOfLot = 1;
    int readings = 0; ///< that count
    std::optional<int> lastRead{};
    std::optional<int> lastProven{};
    bool readAfterEnd = false;
    bool underWay = false; ///< a lot of it stands in the book
    std::optional<MonotonicTime> endedAt{};
    int missedKept = 0; ///< since the last reading taken
    std::optional<DuePiece> due{};
    std::vector<BinBracket> brackets{}; ///< undecided ones, oldest first
};

/// One dryer state, whatever runs are in it.
struct StateWatch final {
    analytics::DryerState state{};
    int readings = 0;
    int firstsMissed = 0; ///< of the first ones, already in the book as missed
    bool counted = true;
    int pieces = 0; ///< since the last reading taken
    analytics::Duration ran{0};
};

struct FloorWatch final {
    std::vector<StateWatch> states{};
    std::vector<RunWatch> runs{};
    analytics::ReadingPlanSettings settings{}; ///< as the shop set them, not tightened
    bool tightened = false;
    std::optional<analytics::BeltMap> map{};
    analytics::Date today{};
    std::int64_t nextBin = 0; ///< 0: the book has not said

    bool counterLive = false; ///< a counter at the feed can be heard

    // inside of the machine
    std::optional<MonotonicTime> at{};                    ///< until then everything is counted
    std::vector<std::uint64_t> words{};                   ///< random, to draw pieces with
    std::vector<std::pair<std::string, int>> lastOfLot{}; ///< last piece of lots that were ended
    bool drawnSaid = false;                               ///< a card said that the next reading was due
};

} // namespace holdfast::kiosk::shop
