#pragma once

#include "analytics/cure/ride/usual.hpp"
#include "analytics/lots/belt_map.hpp"
#include "analytics/lots/reading_plan.hpp"
#include "drivers/link/link_state.hpp"
#include "kiosk/ledger/digest.hpp"
#include "kiosk/ledger/failure.hpp"
#include "kiosk/records/floor_queries.hpp"
#include "kiosk/records/kinds.hpp"
#include "kiosk/shop/proving/action_card.hpp"
#include "kiosk/shop/proving/floor_state.hpp"
#include "kiosk/shop/proving/recording.hpp"

#include <cstddef>
#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <variant>
#include <vector>

/// What comes to the proving machine, and what it wants done.
namespace holdfast::kiosk::shop {

// events

/// A scan or typed code, as it came.
struct ScannedText final {
    std::string text;
};
/// From the book, at start and whenever they changed.
struct InstrumentsLoaded final {
    std::vector<KnownInstrument> instruments;
    std::vector<analytics::InkFamily> families;
    analytics::GuardSetting guard;
    analytics::Date today{};
};
struct LinkChanged final {
    std::string probe;
    drivers::LinkStatus status;
    drivers::CountScale scale;
};
/// The instrument is in a bath to be checked, or out of it again: what it shows then is no ride. Left alone while one
/// is being recorded.
struct InstrumentInCheck final {
    std::string probe; ///< name
    bool inCheck = true;
};
struct SamplesArrived final {
    std::string probe;
    std::vector<drivers::Sample> samples; ///< in order
};
struct Tick final {
    MonotonicTime now{0};
};
struct RunLoaded final {
    std::uint64_t number = 0; ///< as asked
    std::shared_ptr<const AnnouncedRun> run;
};
struct RunNotFound final {
    std::uint64_t number = 0;
};
struct LookUpFailed final {
    std::uint64_t number = 0;
    ledger::Failure failure;
};
struct StripOpened final {
    std::string instrument; ///< name; empty: the shop's first strip
};
struct StripStepTouched final {
    int lastDark = -1; ///< −1: all light; the last index: all dark
};
struct StripUnsureTouched final {};
struct StripUsedTouched final {}; ///< "it was not all light before"
struct PositionTouched final {
    records::BeltPosition position = records::BeltPosition::centre;
};
struct StripKept final {};
struct StripLeft final {};
struct StopPressed final {};
struct RetakePressed final {};
struct RetryPressed final {};
struct NextPressed final {};
struct RefusalClosed final {};
struct UnitAnswered final {
    analytics::TemperatureUnit unit = analytics::TemperatureUnit::fahrenheit; ///< what the probe speaks
};
struct ReasonChosen final {
    records::ReadingReason reason = records::ReadingReason::drawn;
};
struct Committed final {
    std::int64_t key = 0;
    std::vector<std::string> ids; ///< of the entries, in the order of Commit::records
    std::vector<std::int64_t> sequences;
};
struct CommitFailed final {
    std::int64_t key = 0;
    ledger::Failure failure;
};
struct SpoolFailed final {
    std::int64_t spool = 0;
    ledger::Failure failure;
};
/// Found at start; becomes a reading "cut off", never cured.
struct SpoolFound final {
    std::string fileName;
    std::string probe;
    drivers::CountScale scale;
    std::vector<drivers::Sample> samples;
    std::shared_ptr<const AnnouncedRun> run; ///< null: none was announced, or it cannot be found
    std::optional<std::string> corrects;     ///< id of the entry, if the ride was already kept once
    records::BeltPosition position = records::BeltPosition::centre;
    std::vector<FoundOther> others{}; ///< further runs on the belt
};
struct SpoolUnreadable final {
    std::string fileName;
};
/// A press that does what the action card does. The figures are optional: as it is from now on.
struct ActionPressed final {
    ActionCard card = ActionCard::problem;
    std::optional<int> pieces{}; ///< pulled
    std::optional<double> beltMetresPerMinute{};
    std::optional<analytics::AuthoredTemperature> setPoint{};
};
/// From the book, at start and after every commit: replaces what the floor state says of it.
struct FloorLoaded final {
    std::optional<records::DryerNow> dryer{};
    std::vector<records::ReadingRow> unanswered{};
    std::vector<records::ReadingRow> unclaimed{};
    bool afterPowerLoss = false; ///< at start: rides were found that a cut had ended
    std::int64_t nextBin = 0;    ///< free for the next bracket; 0: the book could not say
    analytics::ReadingPlanSettings settings{};
    bool tightened = false; ///< 2 of the dryer's last 5 lots were held, and no 5 good ones since
};
/// What a place wrote into the book: lots that it opened or closed, runs that it finished.
struct KeptElsewhere final {
    std::vector<records::Record> records;
};
/// Once after the start: good rides of this dryer that stand in the book, oldest first.
struct EarlierRidesLoaded final {
    std::vector<analytics::UsualRide> rides;
    std::optional<analytics::BeltMap> map{}; ///< the newest of this dryer
};
/// The hand-over card is wanted; takenOver puts it away.
struct HandOverOpened final {};
/// "Whose was this?": the next ticket names the run of this reading.
struct ClaimPressed final {
    std::string reading; ///< id of the entry
};
/// Back without a claim, or without another run on the belt.
struct ClaimLeft final {};
/// A run leaves a belt of several.
struct BeltLeft final {
    std::string run; ///< id
};
/// The answer to LoadTrace.
struct TraceLoaded final {
    std::string reading;         ///< id, as asked
    records::ReadingTaken taken; ///< as last corrected
    KnownInstrument instrument;  ///< as of the day of the reading
    std::vector<drivers::Sample> samples;
};
struct TraceNotLoaded final {
    std::string reading;
    RefusalCause cause = RefusalCause::traceUnreadable;
};
/// Of whatever page is open, else of the next ride.
struct PlacementChosen final {
    analytics::Placement placement = analytics::Placement::wetInk;
};
struct HandOpened final {
    std::string instrument; ///< name of a spot or gun; empty: the shop's first
};
struct HandTyped final {
    std::optional<analytics::AuthoredTemperature> value; ///< absent: wiped out
};
struct HandBeforeTyped final {
    std::optional<analytics::AuthoredTemperature> value; ///< of a spot, after reset
};
struct ShotPlaceChosen final {
    analytics::ShotPlace place = analytics::ShotPlace::outfeed;
};
struct HandKept final {};
struct HandLeft final {};
struct FlashOpened final {
    std::string instrument; ///< name of a probe, spot or gun; empty: the shop's first spot, else gun, else probe
};
struct FlashLayerChosen final {
    int position = 1; ///< from 1 at the bottom
};
struct FlashTyped final {
    std::optional<analytics::AuthoredTemperature> peak; ///< as indicated
};
struct FlashKept final {};
struct FlashLeft final {};
/// The answer to LookUpStrip.
struct StripLookedUp final {
    std::int64_t number = 0;
    bool used = false;       ///< a reading stands in the book for it
    bool unreadable = false; ///< the book could not be asked
};
/// Ids for lots, made outside: the machine knows no chance.
struct FreshIds final {
    std::vector<std::string> ids;
    std::vector<std::uint64_t> words{}; ///< random, to draw the pieces that are read
};
/// Somebody counted the pieces of a run that have gone onto the belt.
struct PiecesTyped final {
    std::string run{}; ///< id; empty: of the run scanned last
    int pieces = 0;
};

/// A counter at the feed told of so many pieces more.
struct PiecesPulsed final {
    int pieces = 1;
};
/// Whether a counter can be heard.
struct CounterLink final {
    bool live = false;
};

using ProvingEvent =
    std::variant<ScannedText, InstrumentsLoaded, LinkChanged, SamplesArrived, Tick, RunLoaded, RunNotFound,
                 LookUpFailed, StripOpened, StripStepTouched, StripUnsureTouched, StripUsedTouched, PositionTouched,
                 StripKept, StripLeft, StopPressed, RetakePressed, RetryPressed, NextPressed, RefusalClosed,
                 UnitAnswered, ReasonChosen, Committed, CommitFailed, SpoolFailed, SpoolFound, SpoolUnreadable,
                 ActionPressed, FloorLoaded, EarlierRidesLoaded, KeptElsewhere, HandOverOpened, ClaimPressed, ClaimLeft,
                 BeltLeft, TraceLoaded, TraceNotLoaded, InstrumentInCheck, PlacementChosen, HandOpened, HandTyped,
                 HandBeforeTyped, ShotPlaceChosen, HandKept, HandLeft, FlashOpened, FlashLayerChosen, FlashTyped,
                 FlashKept, FlashLeft, StripLookedUp, FreshIds, PiecesTyped, PiecesPulsed, CounterLink>;

// effects

struct LookUpRun final {
    std::uint64_t number = 0;
    bool windowCard = false;
};
/// What a spool's header must hold to be judged after a power cut.
struct OpenSpool final {
    std::int64_t spool = 0; ///< names it in later effects
    std::string probe;
    drivers::CountScale scale;
    std::optional<std::string> run; ///< id
    std::optional<std::string> corrects;
    records::BeltPosition position = records::BeltPosition::centre;
    std::vector<drivers::Sample> samples; ///< everything so far
    std::vector<OtherOnBelt> others{};    ///< further runs it is judged for
};
struct AppendSpool final {
    std::int64_t spool = 0;
    std::vector<drivers::Sample> samples;
};
struct SyncSpool final {
    std::int64_t spool = 0;
};
/// Nobody wants it: it was no ride. A committed ride's spool is removed by the book.
struct DiscardSpool final {
    std::int64_t spool = 0;
};
struct Commit final {
    std::int64_t key = 0;
    std::vector<records::Record> records; ///< in order
    std::vector<std::string>
        ids{};           ///< of the entries, where others of this commit name them; short or empty: made outside
    ledger::Bytes trace; ///< encoded; its hash stands in the records; empty for a strip
    std::vector<std::int64_t> spools; ///< become redundant
    std::string spoolFile;            ///< one found at start; empty: none
    std::size_t firstReading = 0;     ///< index in `records` of the first of the pending readings
};
/// Whether the single strip of this number was used before.
struct LookUpStrip final {
    std::int64_t number = 0;
};
/// A reading's trace and instrument are wanted, to judge it for another run.
struct LoadTrace final {
    std::string reading; ///< id of the entry
};
/// For lamp and sound; the state carries the same.
struct ShowRefusal final {
    Refusal refusal;
};
struct ShowVerdict final {
    analytics::Word word = analytics::Word::notProven;
};

using ProvingEffect = std::variant<LookUpRun, LookUpStrip, OpenSpool, AppendSpool, SyncSpool, DiscardSpool, Commit,
                                   LoadTrace, ShowRefusal, ShowVerdict>;

} // namespace holdfast::kiosk::shop
