#pragma once

#include "analytics/cure/reason.hpp"
#include "analytics/cure/trace_facts.hpp"
#include "analytics/cure/window.hpp"

#include <optional>
#include <string>
#include <vector>

namespace holdfast::analytics {

enum class Word { cured, underCured, overheated, notProven, refused };

/// A margin as an interval: a probe's is one point (low = high), a strip's may be open at one end.
struct MarginRange final {
    std::optional<TemperatureDifference> low;
    std::optional<TemperatureDifference> high;
};

struct LayerVerdict final {
    int position = 1;
    std::string colour;
    std::string family;
    Word word = Word::notProven;
    std::optional<MarginRange> margin;
    GuardedLimit limit;
};

/// Where the film's peak lay as far as one reading tells: a strip's interval, or P − 2u to raw peak + 2u.
struct PeakRange final {
    std::optional<Temperature> low;
    std::optional<Temperature> high;
    bool fromStrip = false;
};

/// A strip's interval and the range of another reading of the same piece that have no temperature in common. A range
/// open at an end reaches as far as anything; two strips, or none, are never asked.
[[nodiscard]] bool excludeEachOther(const PeakRange& one, const PeakRange& other) noexcept;

/// The answer to one reading. `couldProve` is false for readings of an instrument that could not have proven it: they
/// are shown but left out when readings are joined.
struct Verdict final {
    Word word = Word::notProven;
    bool bleedNotRuledOut = false;
    bool bleedWatchDue = false;
    bool couldProve = true;
    bool curedButForMargin = false;    ///< neither too cool nor too hot, and nothing but a margin stands against cured
    std::optional<MarginRange> margin; ///< the smallest of the layers'
    std::optional<TemperatureDifference> upperMargin; ///< H − raw peak, smaller upper
    TemperatureDifference guard;                      ///< at the limit of the layer with the smallest margin
    std::optional<PeakAt> sustained;
    std::optional<PeakAt> raw;
    std::optional<PeakRange> peakRange;     ///< absent where no peak was shown
    std::optional<Probability> conformance; ///< of the smallest-margin layer's limit and the hard ceiling
    std::vector<Reason> reasons;            ///< most important first
    std::vector<Remedy> remedies;           ///< empty when cured, but for watchForBleed where one is due
    std::vector<LayerVerdict> layers;       ///< bottom first
};

/// How a ride was taken, as far as the verdict needs it.
struct ReadingContext final {
    bool probeLifted = false;
    bool printKnownToHavePassed = false; ///< the operator says a print went through although no pass was seen
};

/// Judges every pass of a recording, in order (decisions 3 and 4). The plan must have a window (windowOf succeeded).
[[nodiscard]] std::vector<Verdict> judgeRecording(const RunPlan& plan, const RawTrace& trace,
                                                  const Calibration& calibration, const GuardSetting& guard = {},
                                                  const ReadingContext& context = {});

/// What a strip shows: the last fully dark step and the first untouched one, as indices into its steps.
/// lastDark absent = none dark; firstLight absent = all dark. A half-dark or unsure step lies between them.
struct StripReading final {
    std::optional<std::size_t> lastDark;
    std::optional<std::size_t> firstLight;
    bool usedBefore = false;
    bool allLightBefore = true;
};
[[nodiscard]] Verdict judgeStrip(const RunPlan& plan, const StripReading& reading, const Calibration& strip,
                                 const GuardSetting& guard = {}, std::optional<Duration> dwell = std::nullopt);

struct SpotReading final {
    Temperature held = Temperature::fromCelsius(0); ///< the held maximum, as indicated
    std::optional<Temperature> beforeUse;           ///< after reset; must lie below g_lo
    /// How far the held maximum, one sample, may stand above the sustained peak: 1.5 °C (from memory) until the shop
    /// has ten rides beside a trace.
    TemperatureDifference abovePeak = TemperatureDifference::fromCelsius(1.5);
};
[[nodiscard]] Verdict judgeSpot(const RunPlan& plan, const SpotReading& reading, const Calibration& spot,
                                const GuardSetting& guard = {}, std::optional<Duration> dwell = std::nullopt);

enum class ShotPlace { inTunnelHottest, outfeed };
struct SurfaceReading final {
    Temperature surface = Temperature::fromCelsius(0);
    ShotPlace place = ShotPlace::outfeed;
};
[[nodiscard]] Verdict judgeSurface(const RunPlan& plan, const SurfaceReading& reading, const Calibration& gun,
                                   const GuardSetting& guard = {}, std::optional<Duration> dwell = std::nullopt);

/// Between readings of one piece: under-cured, overheated, not proven (only if it could have proven), cured.
[[nodiscard]] Verdict joinReadings(const std::vector<Verdict>& readings);

/// A not-proven reading and its one retake, judged on their mean margin layer by layer (decisions 4, Retake).
[[nodiscard]] Verdict judgeRetake(const RunPlan& plan, const Verdict& first, const Verdict& second,
                                  const Calibration& calibration, const GuardSetting& guard = {});

enum class FlashWord { gelled, notGelled, overFlashed, notProven, doesNotApply };
struct FlashNote final {
    FlashWord word = FlashWord::doesNotApply;
    std::vector<Reason> reasons;
};
[[nodiscard]] FlashNote judgeFlash(const Layer& layer, Temperature peak, const Calibration& calibration,
                                   const GuardSetting& guard = {});

} // namespace holdfast::analytics
