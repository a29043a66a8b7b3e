#pragma once

#include "analytics/cure/findings.hpp"
#include "analytics/cure/layer_verdict.hpp"

/// Verdicts of instruments that show one temperature and no time: strip, spot, gun. Private to this room.
namespace holdfast::analytics::judging {

/// What such an instrument shows of the peak. `low` stands for the sustained peak, `high` is never below it.
struct PeakShown final {
    std::optional<Temperature> low;
    std::optional<Temperature> high;
    bool guarded = false; ///< a strip's edges carry their guard; elsewhere the guard at the limit is still to be taken
    bool provesCure = true;
    bool showsTooCool = true;
    bool rulesOut = true; ///< whether `high` may show a ceiling kept
    ReasonCode tooCool = ReasonCode::belowCure;
    std::optional<ReasonCode> tooHot; ///< instead of the ceiling's own
};

/// Judges layers and ceilings by the peak (decisions 4: spot, strip, surface gun) and concludes. A hold or pairs are
/// never proven; they are failed only by a highest possible peak below the limit, or, with pairs, held for the whole
/// `dwell`, worth less than τ1.
[[nodiscard]] Verdict judgePeak(const Frame& frame, const PeakShown& peak, std::optional<Duration> dwell,
                                Findings findings);

/// Whether a film that was at `highest` for the whole dwell would still not have met the condition. Without a dwell
/// pairs are failed only below g_lo, where nothing counts.
[[nodiscard]] bool failsAtBest(const Condition& condition, Temperature highest, std::optional<Duration> dwell) noexcept;

/// A temperature such an instrument cannot have shown: not finite, below absolute zero, or outside its range.
[[nodiscard]] bool isImpossible(Temperature indicated, const Instrument& instrument) noexcept;

} // namespace holdfast::analytics::judging
