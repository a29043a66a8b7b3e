#pragma once

#include "analytics/cure/window.hpp"
#include "drivers/link/link_state.hpp"
#include "kiosk/ledger/digest.hpp"
#include "kiosk/ledger/failure.hpp"
#include "kiosk/records/floor_queries.hpp"
#include "kiosk/records/kinds.hpp"
#include "kiosk/shop/proving/action_card.hpp"
#include "kiosk/shop/proving/floor_state.hpp"
#include "kiosk/shop/proving/hand_state.hpp"
#include "kiosk/shop/proving/proving_events.hpp"
#include "kiosk/shop/proving/recording.hpp"
#include "kiosk/shop/proving/watch_state.hpp"

#include <cstdint>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <variant>
#include <vector>

/// Proving that the film got there: scan, ride or strip, verdict. Pure: no clock, no disk, no chance.
namespace holdfast::kiosk::shop {

/// A reading that stands in the book. Only these are shown as verdicts.
struct KeptReading final {
    std::string id;             ///< of the entry; on its way and not empty: of the one it corrects
    std::int64_t sequence = 0;  ///< of the newest entry about it
    std::int64_t recording = 0; ///< its number; a strip has one too
    int pass = 1;
    bool refused = false;
    bool corrected = false;                  ///< more heat came, or the unit was answered
    bool fromSpool = false;                  ///< found after a power cut
    std::shared_ptr<const AnnouncedRun> run; ///< null: whose was this?
    records::ReadingTaken reading;           ///< a refused one too, with its verdict `refused`
    std::string instrumentName;
    std::vector<DrawnSample> drawn; ///< empty for a strip
    MonotonicTime keptAt{0};
    MonotonicTime takenAt{0};                ///< when the ride, strip or typed value was taken
    bool loaded = true;                      ///< the belt was, for two dwells
    std::shared_ptr<const RideFacts> ride{}; ///< of a trace with a run
};

enum class KeepStatus { writing, failed };

/// A hold on its way into the book, beside its cause.
struct PlacedHold final {
    std::optional<std::size_t> reading{}; ///< index in PendingKeep::readings; absent: the belt stopped
    records::HoldPlaced placed{};
};

/// Readings, or what was done at the dryer, on their way into the book. A verdict may not be shown before. One at a
/// time is sent, oldest first.
struct PendingKeep final {
    std::int64_t key = 0;
    KeepStatus status = KeepStatus::writing;
    bool overdue = false; ///< writing for more than 300 ms: "Writing…"
    MonotonicTime since{0};
    std::optional<ledger::Failure> failure; ///< set when failed; the reading is here and in its spool
    std::vector<KeptReading> readings;      ///< what will be shown once it is kept; empty for an action
    /// What was done: one entry for each bad reading it answers, at least one; empty for readings.
    std::vector<records::ActionTaken> actions{};
    std::optional<records::FlashNoted> flash{};   ///< a note of a flash; neither readings nor actions then
    std::vector<records::ReadingMissed> missed{}; ///< due readings that were not taken
    std::vector<PlacedHold> holds{};              ///< what the readings or the action put on hold
    std::vector<records::HoldChanged> brackets{}; ///< brackets whose ends are known now

    // inside of the machine
    bool sent = false;
    ledger::Bytes trace;
    std::vector<std::int64_t> spools;
    std::string spoolFile;
    std::optional<records::DryerNow> dryer{}; ///< as it was, for a lot that opens
    std::vector<std::string> endsLots{};      ///< ids of the lots that the action ends
    std::vector<std::string> entryIds{}; ///< of the readings, where a hold names them; short or empty: made outside
    std::vector<std::shared_ptr<const AnnouncedRun>> opensFor{}; ///< whose lots must stand for `missed`, `holds`
    std::shared_ptr<const Commit> commit;                        ///< as sent, to be sent again
};

/// The strip page. A preview is never a verdict.
struct StripEntry final {
    KnownInstrument strip;
    /// Index of the last dark step; −1: all light; absent: nothing chosen yet.
    std::optional<int> lastDark;
    bool nextUnsure = false; ///< the step after it is half dark or unsure: belongs to neither
    bool usedBefore = false;
    bool allLightBefore = true;
    std::optional<std::int64_t> number{}; ///< of the single strip, if its own label was scanned; used once
    records::BeltPosition position = records::BeltPosition::centre;
    std::optional<analytics::Placement> placement{}; ///< absent: as the strip is described
    std::optional<analytics::Verdict> preview;
};

enum class Stage {
    idle,      ///< nothing announced, nothing recorded
    lookingUp, ///< a ticket was scanned; the book is asked
    window,    ///< the run's window is shown; waiting for a ride or a strip
    strip,     ///< the strip page
    hand,      ///< the page of a spot or gun
    flash,     ///< the page of a flash's note
    recording, ///< a ride is on
    probeLost, ///< a ride is on and its probe is silent; what came is kept
    writing,   ///< judged and on its way into the book; no verdict yet
    notKept,   ///< could not be written; kept here and in the spool, one press tries again
    verdict,   ///< kept: the verdict stands
};

struct ProvingState final {
    MonotonicTime now{0}; ///< of the last event that said so
    std::vector<Probe> probes;
    std::vector<KnownInstrument> instruments;   ///< all of the shop's, as of today
    std::vector<analytics::InkFamily> families; ///< newest revisions, for ways out
    analytics::GuardSetting guard;

    std::shared_ptr<const AnnouncedRun> run;    ///< the one scanned last; what the next strip is for
    std::optional<analytics::RunWindow> window; ///< of `run` and `windowInstrument`
    /// All runs on the belt in the order they were scanned, `run` among them: the next ride is judged for each.
    std::vector<std::shared_ptr<const AnnouncedRun>> belt;
    /// What all of them together ask; absent with fewer than two. Its layers are numbered on through `belt`
    /// (layerOnBelt says whose), it has no ways out.
    std::optional<analytics::RunWindow> beltWindow;
    bool alsoOnBelt = false;                ///< the next ticket joins the belt, or leaves it, instead of replacing
    std::string windowInstrument;           ///< name; empty: no probe yet, guards are 0
    std::optional<std::uint64_t> lookingUp; ///< number asked for
    bool lookingUpCard = false;
    bool lookingUpJoins = false; ///< it joins the belt

    std::optional<StripEntry> strip;
    std::optional<HandEntry> hand; ///< at most one of the three pages is open
    std::optional<FlashEntry> flash;
    std::optional<std::int64_t> lookingUpStrip; ///< number of the single strip asked for
    std::optional<LastFlash> lastFlash;         ///< until another run is announced
    std::vector<PendingKeep> pending;           ///< oldest first
    std::vector<KeptReading> kept;              ///< of the run on the screen and of this ride, oldest first
    std::optional<analytics::Verdict> verdict;  ///< joined from `shownReadings`; set only by Committed
    std::vector<std::string> shownReadings;     ///< ids in `kept` that `verdict` speaks of
    /// Beside a verdict that is not cured, of one ride: what to turn, or why nothing. Absent where the ride tells
    /// nothing of the dryer.
    std::optional<tl::expected<analytics::TurnProposal, analytics::NoTurn>> turn;
    std::vector<GoodRide> goodRides; ///< of this dryer, oldest first: what its usual is made of
    /// Id of the newest reading that nobody announced, until Next, a ride or a claim: while it is younger than ten
    /// minutes and no ride is on, a scanned ticket claims it.
    std::optional<std::string> unclaimed;
    std::optional<std::string> claiming; ///< id of the reading that the next ticket names the run of (ClaimPressed)
    bool retakePlanned = false;          ///< the next ride is the retake
    bool unitAsked = false;              ///< the last ride started hot: °C or °F?
    records::ReadingReason nextReason = records::ReadingReason::drawn;
    std::optional<Refusal> refusal; ///< until the next scan or press
    std::vector<std::string>
        unreadableSpools; ///< file names found at start that could not be read; left where they are

    FloorState floor; ///< the dryer, what was done at it, what waits for an answer
    FloorWatch watch; ///< pieces made, readings due, brackets

    // inside of the machine
    std::int64_t lastNumber = 0;         ///< of recordings, spools and commits
    std::vector<std::int64_t> together;  ///< recordings whose rides overlap: their verdicts are joined
    std::vector<std::string> openedLots; ///< ids of lots that stand in the book
    std::vector<std::string> endedLots;  ///< ids of lots that a change at the dryer ended
    std::vector<std::string> closedLots; ///< those of them whose end stands in the book
    std::vector<std::string> freshIds;   ///< for lots that a change begins
    records::ReadingReason reasonTogether = records::ReadingReason::drawn; ///< of the rides in `together`
    std::optional<Claim> claim; ///< a trace is being loaded to be judged again
    std::optional<LastScan> lastScan;
    std::vector<std::shared_ptr<const KeptReading>> retakeFirsts; ///< whose retake is planned
    std::vector<std::string> retaken;                             ///< ids of readings whose one retake is used up
};

[[nodiscard]] Stage stageOf(const ProvingState& state);
/// The probe whose ride or value the page shows: one recording, else the first ready, else the first.
[[nodiscard]] const Probe* shownProbe(const ProvingState& state);
/// The reading the verdict speaks of first: the worst.
[[nodiscard]] const KeptReading* shownReading(const ProvingState& state);
/// Null: none of this session.
[[nodiscard]] const KeptReading* keptById(const ProvingState& state, const std::string& id);
/// Readings of the verdict shown that may be taken again: one ride's, not proven, that could have been, each once, of
/// runs on the belt whose dryer was not changed since.
[[nodiscard]] std::vector<const KeptReading*> retakeable(const ProvingState& state);
[[nodiscard]] bool mayRetake(const ProvingState& state);
/// An action on its way into the book says what was done about it.
[[nodiscard]] bool isBeingAnswered(const ProvingState& state, const std::string& reading);
/// A bad verdict stands and nobody has said yet what was done: Next is refused, a new ticket does not clear it.
[[nodiscard]] bool verdictStays(const ProvingState& state);
/// The run that the verdict on the screen speaks of, else the one announced. They differ while a bad verdict stays
/// although another ticket was scanned.
[[nodiscard]] std::shared_ptr<const AnnouncedRun> shownRun(const ProvingState& state);

/// What is watched of a run of this session; null: nothing.
[[nodiscard]] const RunWatch* watchOf(const ProvingState& state, const std::string& run);
/// The run on the belt whose next reading is due first, with that reading; null: none is due.
[[nodiscard]] const RunWatch* dueFirst(const ProvingState& state);
/// The bin of the bad reading that the verdict on the screen speaks of, as it stands now; null: none.
[[nodiscard]] const BinBracket* shownBracket(const ProvingState& state);

/// Whose layer is number `position` (from 1) of `beltWindow`.
struct BeltLayer final {
    std::shared_ptr<const AnnouncedRun> run; ///< null: there is no such layer
    int position = 1;                        ///< within that run
};
[[nodiscard]] BeltLayer layerOnBelt(const ProvingState& state, int position);
/// The window that counts on the belt: `beltWindow` with several runs, else `window`.
[[nodiscard]] const std::optional<analytics::RunWindow>& shownWindow(const ProvingState& state);
/// Wipe was scanned less than 20 s ago: touches are to be left out, scans count.
[[nodiscard]] bool touchLocked(const ProvingState& state);

struct Step final {
    ProvingState state;
    std::vector<ProvingEffect> effects;
};

/// Total and deterministic: every event in every state gives a state.
[[nodiscard]] Step step(ProvingState state, const ProvingEvent& event);

} // namespace holdfast::kiosk::shop
