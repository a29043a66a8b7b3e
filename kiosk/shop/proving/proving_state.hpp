#pragma once

#include "analytics/cure/window.hpp"
#include "drivers/link/link_state.hpp"
#include "kiosk/ledger/digest.hpp"
#include "kiosk/ledger/failure.hpp"
#include "kiosk/records/kinds.hpp"
#include "kiosk/shop/proving/recording.hpp"

#include <cstdint>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <variant>
#include <vector>

/// Proving that the film got there: scan, ride or strip, verdict. Pure: no clock, no disk, no chance.
namespace holdfast::kiosk::shop {

struct Commit;

/// A reading that stands in the book. Only these are shown as verdicts.
struct KeptReading final {
    std::string id;             ///< of the entry
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
};

enum class KeepStatus { writing, failed };

/// A reading on its way into the book. Its verdict may not be shown. One at a time is sent, oldest first.
struct PendingKeep final {
    std::int64_t key = 0;
    KeepStatus status = KeepStatus::writing;
    bool overdue = false; ///< writing for more than 300 ms: "Writing…"
    MonotonicTime since{0};
    std::optional<ledger::Failure> failure; ///< set when failed; the reading is here and in its spool
    std::vector<KeptReading> readings;      ///< what will be shown once it is kept

    // inside of the machine
    bool sent = false;
    ledger::Bytes trace;
    std::vector<std::int64_t> spools;
    std::string spoolFile;
    std::optional<std::string> corrects;  ///< id of an entry of an earlier start of the program
    std::shared_ptr<const Commit> commit; ///< as sent, to be sent again
};

/// The strip page. A preview is never a verdict.
struct StripEntry final {
    KnownInstrument strip;
    /// Index of the last dark step; −1: all light; absent: nothing chosen yet.
    std::optional<int> lastDark;
    bool nextUnsure = false; ///< the step after it is half dark or unsure: belongs to neither
    bool usedBefore = false;
    bool allLightBefore = true;
    records::BeltPosition position = records::BeltPosition::centre;
    std::optional<analytics::Verdict> preview;
};

enum class Stage {
    idle,      ///< nothing announced, nothing recorded
    lookingUp, ///< a ticket was scanned; the book is asked
    window,    ///< the run's window is shown; waiting for a ride or a strip
    strip,     ///< the strip page
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

    std::shared_ptr<const AnnouncedRun> run;    ///< what the next ride is for
    std::optional<analytics::RunWindow> window; ///< of `run` and `windowInstrument`
    std::string windowInstrument;               ///< name; empty: no probe yet, guards are 0
    std::optional<std::uint64_t> lookingUp;     ///< number asked for
    bool lookingUpCard = false;

    std::optional<StripEntry> strip;
    std::vector<PendingKeep> pending;          ///< oldest first
    std::vector<KeptReading> kept;             ///< of the run on the screen and of this ride, oldest first
    std::optional<analytics::Verdict> verdict; ///< joined from `shownReadings`; set only by Committed
    std::vector<std::string> shownReadings;    ///< ids in `kept` that `verdict` speaks of
    std::optional<std::string> unclaimed;      ///< id of the newest reading that nobody announced
    bool retakePlanned = false;                ///< the next ride is the retake
    bool unitAsked = false;                    ///< the last ride started hot: °C or °F?
    records::ReadingReason nextReason = records::ReadingReason::drawn;
    std::optional<Refusal> refusal; ///< until the next scan or press
    std::vector<std::string>
        unreadableSpools; ///< file names found at start that could not be read; left where they are

    // inside of the machine
    std::int64_t lastNumber = 0;                    ///< of recordings, spools and commits
    std::vector<std::int64_t> together;             ///< recordings whose rides overlap: their verdicts are joined
    std::vector<std::string> openedLots;            ///< ids of lots that stand in the book
    std::shared_ptr<const KeptReading> retakeFirst; ///< whose retake is planned
    std::vector<std::string> retaken;               ///< ids of readings whose one retake is used up
};

[[nodiscard]] Stage stageOf(const ProvingState& state);
/// The probe whose ride or value the page shows: one recording, else the first ready, else the first.
[[nodiscard]] const Probe* shownProbe(const ProvingState& state);
/// The reading the verdict speaks of first: the worst.
[[nodiscard]] const KeptReading* shownReading(const ProvingState& state);
/// Only a not-proven reading of the run announced, that could have been proven, once.
[[nodiscard]] bool mayRetake(const ProvingState& state);

// ---- events

/// A scan or typed code, as it came.
struct ScannedText final {
    std::string text;
};
/// From the book, at start and whenever they changed.
struct InstrumentsLoaded final {
    std::vector<KnownInstrument> instruments;
    std::vector<analytics::InkFamily> families;
    analytics::GuardSetting guard;
};
struct LinkChanged final {
    std::string probe;
    drivers::LinkStatus status;
    drivers::CountScale scale;
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
};
struct SpoolUnreadable final {
    std::string fileName;
};

using ProvingEvent =
    std::variant<ScannedText, InstrumentsLoaded, LinkChanged, SamplesArrived, Tick, RunLoaded, RunNotFound,
                 LookUpFailed, StripOpened, StripStepTouched, StripUnsureTouched, StripUsedTouched, PositionTouched,
                 StripKept, StripLeft, StopPressed, RetakePressed, RetryPressed, NextPressed, RefusalClosed,
                 UnitAnswered, ReasonChosen, Committed, CommitFailed, SpoolFailed, SpoolFound, SpoolUnreadable>;

// ---- effects

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
    ledger::Bytes trace;                  ///< encoded; its hash stands in the records; empty for a strip
    std::vector<std::int64_t> spools;     ///< become redundant
    std::string spoolFile;                ///< one found at start; empty: none
};
/// For lamp and sound; the state carries the same.
struct ShowRefusal final {
    Refusal refusal;
};
struct ShowVerdict final {
    analytics::Word word = analytics::Word::notProven;
};

using ProvingEffect =
    std::variant<LookUpRun, OpenSpool, AppendSpool, SyncSpool, DiscardSpool, Commit, ShowRefusal, ShowVerdict>;

struct Step final {
    ProvingState state;
    std::vector<ProvingEffect> effects;
};

/// Total and deterministic: every event in every state gives a state.
[[nodiscard]] Step step(ProvingState state, const ProvingEvent& event);

} // namespace holdfast::kiosk::shop
