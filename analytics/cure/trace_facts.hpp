#pragma once

#include "analytics/cure/trace.hpp"

#include <optional>
#include <vector>

namespace holdfast::analytics {

struct PeakAt final {
    Temperature t = Temperature::fromCelsius(0);
    Duration at{0};
};

/// Highest level that every sample of some gap-free stretch of ≥ 3 samples and ≥ 2 s reaches; `at` = its hottest
/// sample.
[[nodiscard]] std::optional<PeakAt> sustainedPeak(const Pass& pass);
/// Largest valid sample, first occurrence; absent when there is none.
[[nodiscard]] std::optional<PeakAt> rawPeak(const Pass& pass);
/// Added to the raw peak wherever a trace is asked not to have been hotter; 0 when sampling is fine.
[[nodiscard]] TemperatureDifference samplingTerm(const Pass& pass);

/// A gap and the hottest the film may have been inside it (decisions 3.5).
struct HiddenTop final {
    Temperature top = Temperature::fromCelsius(0);
    Duration from{0};
    Duration to{0};
};
/// The gaps that count against "not hotter" and "not longer"; a top is never below the gap's two ends.
[[nodiscard]] std::vector<HiddenTop> hiddenTops(const Pass& pass, const TraceRules& rules = {});
/// The same without the gap that only ends the trace after the fall and what follows it (decisions 3.6).
[[nodiscard]] std::vector<HiddenTop> hiddenTops(const Pass& pass, Temperature lowerMinusGuard,
                                                const TraceRules& rules = {});

/// Time at or above a level along the joined lines; gaps and breaks add nothing.
struct TimeAbove final {
    Duration total{0};
    Duration longest{0};
};
[[nodiscard]] TimeAbove timeAtOrAbove(const Pass& pass, Temperature level);

/// The same for the two faces of an unbroken hold (decisions 4): a dip of at most 2 s down to λ − g does not end the
/// spell. `dipsCount`: whether its time counts as well.
[[nodiscard]] Duration longestSpellBridgingDips(const Pass& pass, Temperature level, TemperatureDifference guard,
                                                bool dipsCount);

/// Above 80 °C at some time, and later at least 20 °C below its highest sample.
[[nodiscard]] bool hasFallen(const Pass& pass, const TraceRules& rules = {});

/// A break that spoils the trace for a limit: before the fall, or followed by a valid sample above `lowerMinusGuard`.
/// `usableSamples`: how many samples from the start may still be used: all when nothing spoils it; up to a break or gap
/// after the fall that only ends the trace (then `by` stays line); up to a clock fault; none after a jump or unit
/// switch.
struct Spoiled final {
    Join by = Join::line; ///< line = not spoiled
    Duration at{0};       ///< of the last sample before the break
    std::size_t usableSamples = 0;
};
[[nodiscard]] Spoiled spoiledFor(const Pass& pass, Temperature lowerMinusGuard, const TraceRules& rules = {});

/// The first `samples` samples of a pass with their joins.
[[nodiscard]] Pass firstSamples(const Pass& pass, std::size_t samples);

/// Does not start hot, unit not in doubt, unbroken for this limit, fallen.
[[nodiscard]] bool isComplete(const Pass& pass, Temperature lowerMinusGuard, const TraceRules& rules = {});

} // namespace holdfast::analytics
