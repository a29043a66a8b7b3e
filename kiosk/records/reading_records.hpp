#pragma once

#include "analytics/cure/verdict.hpp"
#include "analytics/cure/window.hpp"
#include "analytics/metrology/calibration.hpp"
#include "kiosk/records/run_records.hpp"

#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace holdfast::kiosk::records {

enum class ReadingReason { drawn, afterChange, setUp, retake, worry, map, study };
enum class BeltPosition { left, centre, right };

/// The recorded trace. Peaks are corrected, of this pass.
struct TraceSeen final {
    std::string sha256;                 ///< of the blob, 64 hexadecimal digits
    analytics::AuthoredDifference step; ///< what one count stands for
    int pass = 1;                       ///< which pass of the recording this reading is
    bool stoppedByHand = false;
    bool cutOff = false;
    bool unitConfirmed = false;
    std::optional<analytics::Temperature> sustainedPeak;
    std::optional<analytics::Temperature> rawPeak;
};

struct StripSeen final {
    std::optional<analytics::AuthoredTemperature> lastDark;   ///< absent: none dark
    std::optional<analytics::AuthoredTemperature> firstLight; ///< absent: all dark
    bool allLightBefore = true;
    bool usedBefore = false;
    std::optional<std::int64_t> number{}; ///< of the single strip's own label; each is used once
};

struct SpotSeen final {
    analytics::AuthoredTemperature held;
    std::optional<analytics::AuthoredTemperature> beforeUse;
};

struct GunSeen final {
    analytics::AuthoredTemperature surface;
    analytics::ShotPlace place = analytics::ShotPlace::outfeed;
};

using Evidence = std::variant<TraceSeen, StripSeen, SpotSeen, GunSeen>;

/// The fixed lines that were used.
struct GuardsUsed final {
    std::vector<analytics::GuardedLimit> layers; ///< bottom first
    std::optional<analytics::GuardedLimit> hard;
    std::optional<analytics::GuardedLimit> bleed;
};

/// How the instrument stood on that day.
struct CalibrationUsed final {
    std::optional<analytics::Date> certificate; ///< date of the certificate in date
    bool checkedInDate = false;
    analytics::TemperatureDifference correction; ///< at the window's lower limit
    analytics::TemperatureDifference common;     ///< c there
    analytics::TemperatureDifference random;     ///< r there
    analytics::Probability risk = analytics::Probability::fromPercent(5.0);
};

/// reading.taken. Without a run ("whose was this?") it has neither lot, window, guards, revisions nor a
/// verdict, unless it corrects one to `refused`.
struct ReadingTaken final {
    std::optional<std::string> run; ///< id
    std::optional<std::string> lot; ///< id
    std::string dryer;              ///< id; may be empty before a dryer is described
    std::string instrument;         ///< id
    BeltPosition position = BeltPosition::centre;
    analytics::Placement placement = analytics::Placement::wetInk;
    ReadingReason reason = ReadingReason::drawn;
    std::optional<int> piece;
    std::optional<std::string> retakeOf; ///< id of the entry; verdict and margin are then those of both together
    Evidence evidence;
    std::optional<analytics::RunWindow> window;
    GuardsUsed guards;
    std::optional<RevisionsUsed> revisions;
    std::optional<CalibrationUsed> calibration; ///< absent if the instrument was not described
    std::optional<analytics::Verdict> verdict;
};

/// reading.refused: was no reading (no pass seen, a used strip), but is kept.
struct ReadingRefused final {
    std::optional<std::string> run;
    std::optional<std::string> lot;
    std::string dryer;
    std::string instrument;
    BeltPosition position = BeltPosition::centre;
    Evidence evidence;
    std::vector<analytics::Reason> reasons;
};

/// correction.made: the same reading judged again, because more heat came or the unit was answered.
struct CorrectionMade final {
    std::string corrects; ///< id of the entry
    ReadingTaken reading;
    std::string check{}; ///< id of the check.done that found the instrument wrong: judged again with the error found
};

} // namespace holdfast::kiosk::records
