#pragma once

#include "analytics/metrology/calibration.hpp"
#include "analytics/quantity/duration.hpp"
#include "analytics/quantity/temperature.hpp"

#include <array>
#include <cstdint>
#include <optional>
#include <vector>

namespace holdfast::analytics {

/// One row as the instrument sent it. `indicated` may be not finite; `flagged` says that the instrument itself doubts
/// it.
struct TraceSample final {
    MonotonicTime at{0};
    Temperature indicated = Temperature::fromCelsius(0);
    bool flagged = false;
};

/// A recording as it came in, never changed.
struct RawTrace final {
    std::vector<TraceSample> samples;
    TemperatureUnit unit = TemperatureUnit::celsius; ///< what the instrument is said to speak
    TemperatureDifference resolution;                ///< one step of its indication
    std::optional<MeasuringRange> range;             ///< its ends are inside
    bool unitConfirmed = false;                      ///< the operator has answered about the unit
    bool stoppedByHand = false;
    bool cutOff = false; ///< power cut or probe lost
};

/// Limits of the rules of decisions 3; starter settings (MEM), kept as data.
struct TraceRules final {
    HeatingRate probeRate = HeatingRate::fromCelsiusPerSecond(50.0);
    HeatingRate filmRate = HeatingRate::fromCelsiusPerSecond(15.0);
    Duration coarsestMedian{5.0};
    Temperature passFrom = Temperature::fromCelsius(80.0);
    Temperature passEnds = Temperature::fromCelsius(60.0);
    TemperatureDifference fall = TemperatureDifference::fromCelsius(20.0);
    Temperature coldStartBelow = Temperature::fromCelsius(40.0);
    Temperature coldStartBelowOnceConfirmed = Temperature::fromCelsius(60.0);
    Temperature coldStartAbove = Temperature::fromCelsius(5.0);
};

/// How a valid sample is joined to the next one.
enum class Join : std::uint8_t { line, gap, clockFault, jump, unitSwitch };

struct CleanSample final {
    Duration at{0};                              ///< since the first row of the recording
    Temperature t = Temperature::fromCelsius(0); ///< corrected
    Temperature indicated = Temperature::fromCelsius(0);
};

/// shortRun: a run of fewer than four samples, or of at most 10 s between two jumps that cancel each other.
enum class DropWhy { flagged, notFinite, outOfRange, duplicate, spike, shortRun, tail, afterUnitSwitch };
inline constexpr int kDropWhyCount = 8;

/// One pass through the tunnel, cut out of a recording. joins[i] stands between samples[i] and samples[i + 1].
/// A later pass begins with the sample at or below 60 °C that ended the one before, so that no join is lost.
/// What follows a unit switch is not in it: the pass ends with the last sample before, and `unitSwitchedAt` is set.
struct Pass final {
    std::vector<CleanSample> samples;
    std::vector<Join> joins;
    Duration medianInterval{0};
    bool startsHot = false;
    bool unitInDoubt = false;
    bool tooCoarse = false;                   ///< median interval above 5 s: could not prove, nothing more is asked
    bool everAbove80 = false;                 ///< also when only what follows a unit switch was
    std::optional<Duration> unitSwitchedAt;   ///< last sample before the instrument changed its unit
    std::optional<CleanSample> beforeLeadGap; ///< on a later pass that begins hot behind a gap: the sample before it
    bool secondOrLater = false;               ///< not the first pass of its recording
    bool stoppedByHand = false;
    bool cutOff = false;
};

struct CleanedRecording final {
    std::vector<Pass> passes; ///< at least one; a recording that never passed 80 °C has one with everAbove80 false
    std::array<int, kDropWhyCount> dropped{}; ///< by DropWhy
};

/// Decisions 3, steps 0–8. `calibration` supplies the correction; null = none. Never throws; n = 0 gives one empty
/// pass.
[[nodiscard]] CleanedRecording cleanRecording(const RawTrace& trace, const Calibration* calibration,
                                              const TraceRules& rules = {});

struct UncutRecording final {
    Pass whole;                               ///< secondOrLater never set; tail kept
    std::optional<Duration> unitSwitchSeenAt; ///< first sample in the other unit
    std::array<int, kDropWhyCount> dropped{};
};

/// Decisions 3, steps 0–7: the whole recording as one, not cut into passes.
[[nodiscard]] UncutRecording cleanWithoutCutting(const RawTrace& trace, const Calibration* calibration,
                                                 const TraceRules& rules = {});

/// What parts two samples is a gap when it is longer: the larger of 2 s and four medians, at most 5 s.
[[nodiscard]] Duration gapLimit(Duration medianInterval) noexcept;

/// Median of the positive steps between the rows as they stand, valid or not; 0 without any.
[[nodiscard]] Duration medianInterval(const RawTrace& trace);

} // namespace holdfast::analytics
