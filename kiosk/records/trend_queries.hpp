#pragma once

#include "analytics/cure/verdict.hpp"
#include "analytics/metrology/instrument.hpp"
#include "analytics/quantity/duration.hpp"
#include "kiosk/ledger/failure.hpp"
#include "kiosk/records/bucket_records.hpp"
#include "kiosk/records/complaint_records.hpp"
#include "kiosk/records/floor_records.hpp"
#include "kiosk/records/load_records.hpp"
#include "kiosk/records/run_on_file.hpp"
#include "kiosk/records/test_records.hpp"

#include <SQLiteCpp/Database.h>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

/// What the shop's book holds about a stretch of time, as plain rows: what trends, suspects and complaints are worked
/// out from. No persons. Times are wall milliseconds.
namespace holdfast::kiosk::records {

/// Place of a row in one of the lists of TrendFacts.
using FactIndex = std::int32_t;
inline constexpr FactIndex kNoFact = -1;

struct TrendDryer final {
    std::string id{};
    std::string name{};
    std::optional<analytics::Duration> dwell{}; ///< heated length over belt speed, as described
};

struct TrendInstrument final {
    std::string id{};
    std::string name{};
    analytics::InstrumentKind kind = analytics::InstrumentKind::probe;
};

struct TrendBucket final {
    std::string id{};
    std::int64_t number = 0;
    std::string name{}; ///< the family's, or the mix's own
    std::string colour{};
    std::string batch{};
    bool isMix = false;
    std::int64_t openedAt = 0;
    std::optional<BucketEnd> closed{};
    std::vector<FactIndex> within{}; ///< itself, and every bucket mixed into it at any depth, each once
};

struct TrendRun final {
    std::string id{};
    std::int64_t number = 0;
    std::string title{};
    std::string customer{};
    std::string fabric{};
    std::string clothLot{};
    std::string finish{};
    std::vector<std::string> families{}; ///< of its layers, as labelled; sorted, each once
    bool childrensWear = false;
    std::optional<int> pieces{};
};

struct TrendLot final {
    std::string id{};
    FactIndex run = kNoFact;
    int number = 1;
    FactIndex dryer = kNoFact;
    std::int64_t openedAt = 0;
    bool closed = false;
    LotState state = LotState::open;
    std::vector<FactIndex> buckets{}; ///< it was printed from, with every bucket mixed into them; sorted, each once
    std::optional<int> made{};        ///< as last counted, else as the run was finished or planned
    int shipped = 0;                  ///< pieces
    bool isReRun = false;             ///< its pieces went through before: another lot's decision made it
};

/// Neither refused nor struck, of a lot; a correction has replaced what it corrects.
struct TrendReading final {
    std::string id{};
    std::int64_t at = 0;
    FactIndex dryer = kNoFact;
    FactIndex instrument = kNoFact;
    FactIndex run = kNoFact;
    FactIndex lot = kNoFact;
    BeltPosition position = BeltPosition::centre;
    ReadingReason reason = ReadingReason::drawn;
    analytics::Word word = analytics::Word::notProven;
    bool couldProve = true;
    bool isStrip = false;
    bool byCheck = false;            ///< judged again because its instrument was found wrong
    analytics::MarginRange margin{}; ///< a strip's is an interval; both ends absent: none was worked out
    std::optional<int> piece{};
    FactIndex retakeOf = kNoFact; ///< reading
};

struct TrendMissed final {
    std::int64_t at = 0;
    FactIndex lot = kNoFact;
    DueReadingKind due = DueReadingKind::pieces;
};

struct TrendHold final {
    std::string id{};
    std::int64_t at = 0;
    FactIndex lot = kNoFact;
    HoldCause cause = HoldCause::reading;
    std::string because{};                 ///< id of the reading, test, complaint or check; may be empty
    bool lifted = false;                   ///< its cause was put right or its load found void
    std::optional<DecisionWord> decided{}; ///< absent: nobody decided it
    bool belowLimit = false;               ///< released although a valid reading or test is below its limit
    std::optional<int> pieces{};           ///< absent: the whole lot, or nobody knows
};

/// What was shipped of a lot, corrections taken in.
struct TrendShipment final {
    FactIndex lot = kNoFact;
    std::int64_t at = 0; ///< the day it went out, else when it was entered
    int pieces = 0;
    std::string customer{};
    std::vector<std::string> cartons{};
};

struct TrendPrint final {
    std::string id{};
    std::int64_t number = 0;
    FactIndex run = kNoFact;
    FactIndex lot = kNoFact;
    std::optional<int> piece{};
    std::int64_t namedAt = 0;
    std::string shelf{}; ///< empty: it is not retained
    bool ended = false;
};

/// As last put right.
struct TrendTest final {
    std::string id{};
    std::int64_t at = 0;
    FactIndex print = kNoFact;
    FactIndex lot = kNoFact;
    FactIndex load = kNoFact;
    TestKind kind = TestKind::own;
    std::optional<int> cycle{};
    TestOutcome counts = TestOutcome::noted; ///< inAVoidLoad once its load was found void
};

struct TrendLoad final {
    std::string id{};
    std::int64_t number = 0;
    std::int64_t at = 0;
    std::string machine{};
    std::optional<LoadWord> word{}; ///< absent: nobody judged it
};

struct TrendComplaint final {
    std::string id{};
    std::int64_t number = 0;
    std::int64_t at = 0; ///< the day it was received, else when it was entered
    ComplaintKind what = ComplaintKind::other;
    std::optional<int> pieces{};
    FactIndex run = kNoFact;
    FactIndex lot = kNoFact; ///< as tied to one
    bool closed = false;     ///< a finding was signed
};

struct TrendFinding final {
    std::int64_t at = 0;
    FactIndex complaint = kNoFact;
    FactIndex lot = kNoFact;
    std::string cause{}; ///< as typed
    std::string action{};
    bool provenLater = false;
};

/// A turn at a dryer that begins or ends an episode.
struct TrendTurn final {
    std::int64_t at = 0;
    FactIndex dryer = kNoFact;
    FloorAction action = FloorAction::started;
    std::optional<double> beltMetresPerMinute{};
    std::optional<analytics::Temperature> setPoint{};
};

/// Things known to have changed: what may stand beside "since when".
enum class TrendEventKind {
    beltSpeed,
    setPoint,
    problem, ///< noted at a dryer: a repair, a breakdown
    newDryer,
    familyRevised,
    fabricRevised,
    bucketOpened,
    certificate,
    checkPassed,
    checkFailed,
};
struct TrendEvent final {
    std::int64_t at = 0;
    TrendEventKind kind = TrendEventKind::problem;
    FactIndex dryer = kNoFact;
    FactIndex instrument = kNoFact;
    FactIndex bucket = kNoFact;
    std::string name{}; ///< of a family or cloth
    std::optional<int> revision{};
    std::optional<double> beltMetresPerMinute{};
    std::optional<analytics::Temperature> setPoint{};
};

/// Every list in the order of time, dryers and instruments by name, buckets by number.
struct TrendFacts final {
    int utcOffsetMinutes = 0; ///< of the newest reading: where days and weeks begin
    std::int64_t firstAt = 0; ///< of the first lot in the book; 0: there is none
    std::vector<TrendDryer> dryers{};
    std::vector<TrendInstrument> instruments{};
    std::vector<TrendBucket> buckets{};
    std::vector<TrendRun> runs{};
    std::vector<TrendLot> lots{};
    std::vector<TrendReading> readings{};
    std::vector<TrendMissed> missed{};
    std::vector<TrendHold> holds{};
    std::vector<TrendShipment> shipments{};
    std::vector<TrendPrint> prints{};
    std::vector<TrendTest> tests{};
    std::vector<TrendLoad> loads{};
    std::vector<TrendComplaint> complaints{};
    std::vector<TrendFinding> findings{};
    std::vector<TrendTurn> turns{};
    std::vector<TrendEvent> events{};
};

/// Lots opened from `from` up to, but not with, `to`, and all that belongs to them; turns and events of the same time.
/// Dryers, instruments, buckets, complaints and findings always wholly.
struct TrendRange final {
    std::int64_t from = INT64_MIN;
    std::int64_t to = INT64_MAX;
};

/// One linear pass a table. Takes a reading connection; belongs to its thread.
[[nodiscard]] ledger::Result<TrendFacts> trendFacts(const SQLite::Database& database, const TrendRange& range = {});

} // namespace holdfast::kiosk::records
