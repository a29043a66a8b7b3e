#pragma once

#include "analytics/cure/trace.hpp"
#include "analytics/cure/verdict.hpp"
#include "analytics/metrology/calibration.hpp"
#include "drivers/link/link_state.hpp"
#include "drivers/link/sample.hpp"
#include "drivers/protocol/reading.hpp"
#include "kiosk/records/run_on_file.hpp"
#include "kiosk/shop/proving/proving_causes.hpp"

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace holdfast::kiosk::shop {

using drivers::MonotonicTime;

/// The run announced, with its lot and window. Shared and never changed: a ride keeps the one it started with.
struct AnnouncedRun final {
    records::RunOnFile onFile;
    std::string lotId; ///< of the open lot, or the fresh one that the first reading opens
    int lotNumber = 1;
    std::string dryer;                     ///< id of the dryer this kiosk stands at
    std::optional<std::string> staleLot{}; ///< open in the book although the dryer was changed since: closed first
};

/// A sample as drawn: corrected, seconds since the recording began.
struct DrawnSample final {
    analytics::Duration at{0};
    analytics::Temperature t = analytics::Temperature::fromCelsius(0);
    bool breakBefore = false; ///< a gap: never bridged
};

/// What the machine needs to know of an instrument, on one day.
struct KnownInstrument final {
    std::string id;
    std::string name; ///< as people say it, "P-3"
    std::optional<std::uint64_t> number;
    analytics::InstrumentKind kind = analytics::InstrumentKind::probe;
    drivers::CountScale scale;
    std::shared_ptr<const analytics::Calibration> calibration; ///< absent: not described
    std::vector<analytics::AuthoredTemperature> stripSteps;    ///< of a strip, as authored, coolest first
    std::optional<records::StripPack> pack{};                  ///< of strips bought as numbered singles
};

/// How far a ride has come.
enum class RideStage {
    riding,   ///< recording; not yet fallen
    fallen,   ///< 20 °C under its peak, for less than the five seconds
    watching, ///< judged; watched until 60 °C for more heat
};

/// The not-proven reading of a run that a ride takes again.
struct RetakeOf final {
    std::string run{};     ///< id
    std::string reading{}; ///< id of its entry
    std::shared_ptr<const analytics::Verdict> first{};
};

/// Which piece of a run a reading is of.
struct PieceTaken final {
    std::string run{}; ///< id
    std::optional<int> piece{};
    bool loaded = true; ///< the belt was, for two dwells: it counts for the dryer state
};

/// One recording of one instrument, from 60 s before the heat to 60 °C after it.
struct Recording final {
    std::int64_t number = 0;                                   ///< counts up; names it in effects and events
    std::string instrument;                                    ///< the link's name
    std::shared_ptr<const AnnouncedRun> run;                   ///< null: whose was this?
    std::vector<std::shared_ptr<const AnnouncedRun>> others{}; ///< further runs on the belt: judged for each
    RideStage stage = RideStage::riding;
    std::vector<drivers::Sample> samples;                                       ///< with pre-roll, as they came
    std::vector<DrawnSample> drawn;                                             ///< the valid ones
    std::optional<analytics::TemperatureUnit> answeredUnit;                     ///< the operator's answer
    analytics::Temperature peak = analytics::Temperature::fromCelsius(-273.15); ///< that three samples running reached
    bool lost = false;            ///< nothing usable for longer than the gap limit
    MonotonicTime lastValidAt{0}; ///< stamp of the newest usable sample
    MonotonicTime lostSince{0};
    SpoolTrouble spoolTrouble = SpoolTrouble::none;

    // inside of the machine
    std::int64_t spool = 0;           ///< names its spool in effects; 0: none is open
    std::vector<std::int64_t> spools; ///< all that were opened since it was last judged
    std::size_t spooled = 0;          ///< samples handed to `spool`
    MonotonicTime spoolTriedAt{0};
    std::optional<MonotonicTime> belowSince;      ///< continuously fallen (or back at the start)
    std::optional<analytics::Temperature> lowest; ///< while watching
    std::vector<analytics::Temperature> lastThree;
    analytics::Temperature startLevel = analytics::Temperature::fromCelsius(0);
    analytics::Temperature controlPeak = analytics::Temperature::fromCelsius(-273.15); ///< since heat came again
    bool isRide = false;                                                               ///< has passed 60 °C
    bool heatCameAgain = false; ///< after it was judged: a correction is due
    bool judged = false;
    bool stoppedByHand = false;
    bool cutOff = false;
    std::vector<RetakeOf> retakes{}; ///< at most one a run
    records::BeltPosition position = records::BeltPosition::centre;
    std::optional<analytics::Placement> placement{}; ///< absent: as the instrument is described
    records::ReadingReason reason = records::ReadingReason::drawn;
    std::vector<PieceTaken> pieces{}; ///< which piece of each run it is
    MonotonicTime rideAt{0};          ///< when it became a ride
};

/// An instrument on a line, and what it says now.
struct Probe final {
    std::string name;                     ///< of the link; the instrument's name in the book
    std::optional<KnownInstrument> known; ///< absent: not described
    drivers::LinkStatus link;
    ProbeTrouble trouble = ProbeTrouble::absent;
    std::optional<analytics::Temperature> value; ///< corrected, the newest usable one
    std::optional<MonotonicTime> valueAt;
    std::optional<MonotonicTime> sampleAt; ///< newest of any kind
    bool lost = false;                     ///< the age of the last usable sample passed the gap limit
    MonotonicTime gapLimit{2'000'000};     ///< larger of 2 s and four medians, never more than 5 s
    std::optional<Recording> recording;
    records::BeltPosition position = records::BeltPosition::centre;
    bool positionChosen = false;                     ///< by a person, for the next ride; else a due reading says where
    std::optional<analytics::Placement> placement{}; ///< of the next ride; absent: as the instrument is described

    // inside of the machine
    drivers::CountScale scale;
    drivers::SampleFlag flags = drivers::SampleFlag::none; ///< of the newest sample
    bool impossible = false;                               ///< the newest value was
    std::vector<drivers::Sample> lastMinute;
    std::optional<Recording> ended; ///< until the next ride: the unit may be answered
    std::optional<analytics::TemperatureUnit> answeredUnit;
    bool inCheck = false;      ///< in a bath: nothing starts
    bool fromBath = false;     ///< out of it, and not yet at rest at a room's temperature
    bool waitsForCool = false; ///< stopped by hand while hot: nothing starts before 60 °C
};

/// The instrument as it measures in this placement: another one than described has its own random uncertainty, and
/// not that of the shop's repeat rides.
[[nodiscard]] KnownInstrument placedAs(KnownInstrument known, const std::optional<analytics::Placement>& placement);

/// What a sample says, in the link's scale, not corrected.
[[nodiscard]] analytics::Temperature indicated(const drivers::Sample& sample, const drivers::CountScale& scale);

} // namespace holdfast::kiosk::shop
