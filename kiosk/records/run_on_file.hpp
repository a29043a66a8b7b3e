#pragma once

#include "analytics/cure/run_plan.hpp"
#include "analytics/metrology/instrument.hpp"
#include "kiosk/records/floor_records.hpp"
#include "kiosk/records/instrument_records.hpp"
#include "kiosk/records/lot_records.hpp"
#include "kiosk/records/reading_records.hpp"
#include "kiosk/records/run_records.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

/// What the read tables answer: things as they stand, joined from many entries.
namespace holdfast::kiosk::records {

/// Derived from the lot's readings, tests, holds and decisions by analytics::standingOf.
enum class LotState {
    settingUp, ///< no reading yet that can hold a lot
    open,      ///< readings, and none of them bad, but the run goes on
    cleared,   ///< closed, at least one due reading, all proven
    unproven,  ///< a due reading was missed or stayed not proven
    onHold,    ///< a cause that nobody decided; of children's wear also a due reading missed or not proven
    released,  ///< by a signed decision
    reRun,     ///< through the dryer again, as a lot of its own
    scrapped,  ///< the whole lot; final
};

struct LotRow final {
    std::string id;
    std::string run;
    std::string dryer;
    int number = 1;
    std::optional<int> firstPiece;
    std::optional<int> lastPiece;
    bool closed = false;
    LotState state = LotState::settingUp;
    std::int64_t openedAt = 0; ///< wall milliseconds
    RevisionsUsed revisions;
    std::optional<std::string> reRunOf{}; ///< id of the lot whose pieces go through the dryer again
};

/// A reading as lists show it; a correction has already replaced what it corrects.
struct ReadingRow final {
    std::int64_t sequence = 0; ///< of the newest entry that says so
    std::string id;            ///< of the first entry
    std::string run;           ///< id; empty: whose was this?
    std::int64_t runNumber = 0;
    std::string runTitle;
    std::string lot;
    int lotNumber = 0;
    std::string instrument; ///< id
    std::string instrumentName;
    std::int64_t takenAt = 0; ///< wall milliseconds of the first entry
    int utcOffsetMinutes = 0;
    bool refused = false;
    bool corrected = false;
    BeltPosition position = BeltPosition::centre;
    ReadingReason reason = ReadingReason::drawn;
    std::optional<analytics::Word> word; ///< absent without a run
    std::optional<analytics::TemperatureDifference> marginLow;
    std::optional<analytics::TemperatureDifference> marginHigh;
    std::string trace;                   ///< SHA-256; empty for strips, spots and guns
    std::optional<StruckCause> struck{}; ///< taken out: listed, but it counts for nothing
    std::optional<int> piece{};          ///< of the run, counted from 1
};

/// What a question that depends on the hour is asked for.
struct Moment final {
    std::int64_t wallMilliseconds = 0;
    analytics::Date today{}; ///< as the shop's calendar has it then
};

/// A run ready to be proven: the newest plan with the revisions that count for its lot.
struct RunOnFile final {
    RunPlanned plan;
    bool usable =
        true; ///< false: an ink, a bucket or the cloth is not in the book or faulty; `layers` may not be judged
    analytics::RunPlan layers; ///< as the analytics judge it
    RevisionsUsed revisions;
    std::optional<LotRow> lot; ///< the open one, else absent; one that is no re-run before one that is
    int lotsSoFar = 0;
    std::vector<ReadingRow> readings;      ///< of the open lot, oldest first; struck ones too
    std::optional<RunFinished> finished{}; ///< then it takes no lot and no plan any more
    int furthestPiece = 0;                 ///< the largest that a reading, a lot's end or a bracket of it names
    int furthestOfEarlierLots = 0;         ///< of those, the largest outside the open lot
    std::vector<HoldPlaced> openHolds{};   ///< of the open lot, undecided and not lifted, oldest first
};

struct InstrumentOnFile final {
    InstrumentDescribed described;
    analytics::Instrument instrument; ///< with all its certificates and checks
};

} // namespace holdfast::kiosk::records
