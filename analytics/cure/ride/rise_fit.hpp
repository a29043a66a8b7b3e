#pragma once

#include "analytics/cure/ride/first_order.hpp"
#include "analytics/cure/trace_facts.hpp"

#include <tl/expected.hpp>

#include <optional>

namespace holdfast::analytics {

/// When a rise is good enough to read a dryer from; starter settings (MEM), kept as data.
struct RiseRules final {
    int leastSamples = 12;
    TemperatureDifference leastRise = TemperatureDifference::fromCelsius(40.0);
    Duration leastTime{3.0};
    double skippedShare = 0.10; ///< of the rise: the film enters the heat gradually
    TemperatureDifference skippedLeast = TemperatureDifference::fromCelsius(5.0);
    double mostUnseenShare = 0.20;  ///< of the rise's time, in gaps
    double noisySpreadShare = 0.08; ///< spread against rise
    double mostTauFactor = 2.0;     ///< each limit of τ against τ
    double mostAirShare = 0.35;     ///< each limit of the air against air − start
    Duration flutterLag{1.0};       ///< flutter is what changes within this time
    TemperatureDifference stillOnCurve = TemperatureDifference::fromCelsius(1.0);
    TemperatureDifference offCurve = TemperatureDifference::fromCelsius(3.0);
    Probability confidence = Probability::fromPercent(95.0);
};

/// Why a rise tells nothing about the dryer.
enum class RiseFault {
    noPass,       ///< never above 80 °C, or no samples
    unitNotSure,  ///< starts hot, or the unit is in doubt
    tooCoarse,    ///< median interval above 5 s
    notFallen,    ///< never 20 °C below its peak: nobody saw the exposure end
    tooShort,     ///< too few samples, too little time, or too small a rise
    broken,       ///< a clock fault, jump or change of unit on the way up
    gaps,         ///< too much of the way up was not seen
    tooNoisy,     ///< the samples scatter too far about the best curve
    notToldApart, ///< hot air seen briefly and mild air seen long would look the same
    notFirstOrder ///< falls, or the best curve would fall: no such curve
};

/// A dryer's heat as one ride shows it: T = air − (air − start)·e^(−t/τ) from `from` to `peakAt` (decisions 4, Is this
/// a ride?). All temperatures are corrected ones. The limits are likelihood limits, widened for residuals that are
/// alike in succession by (1 + ρ)/(1 − ρ), ρ their lag-1 correlation (first-order autoregression; Bayley & Hammersley,
/// J. R. Stat. Soc. Suppl. 8, 1946); standard errors are widened alike.
struct RiseFit final {
    FirstOrderCurve curve;          ///< t = 0 at `from`
    FirstOrderCurve shortest;       ///< the best curve at the lower limit of τ
    FirstOrderCurve longest;        ///< and at the upper
    Duration tauError{0};           ///< standard error
    TemperatureDifference airError; ///< standard error
    Temperature airLow = Temperature::fromCelsius(0);
    Temperature airHigh = Temperature::fromCelsius(0);
    HeatingRate rate = HeatingRate::fromCelsiusPerSecond(0); ///< (air − entry)/τ: as the film comes under the heat
    HeatingRate rateError = HeatingRate::fromCelsiusPerSecond(0);
    TemperatureDifference spread;  ///< of the samples about the curve, standard deviation
    TemperatureDifference flutter; ///< the part of it that changes within about a second
    double serialCorrelation = 0.0;
    int samples = 0;
    Temperature entry = Temperature::fromCelsius(0); ///< the level before the rise
    Duration from{0};                                ///< since the start of the recording, as all times here
    Duration peakAt{0};
    Duration entered{0};  ///< where the curve, continued backwards, has the level before the rise
    Duration left{0};     ///< last sample from the peak on that still follows the curve
    Duration inTunnel{0}; ///< left − entered
    Temperature raw = Temperature::fromCelsius(0);       ///< raw peak
    Temperature sustained = Temperature::fromCelsius(0); ///< sustained peak; the raw one where there is none
    std::optional<Duration> cooling; ///< time constant of the fall towards `entry`, from its first quarter
    Duration medianInterval{0};
};

/// Fits the rise of a cleaned pass: from the last sample before the peak that is at most 10 % of the way up (at least
/// 5 °C) to the raw peak. Exposure ends when the probe leaves the tunnel, at the peak or, on a level top, where the
/// samples leave the curve. Never throws; n = 0, 1: noPass or tooShort.
[[nodiscard]] tl::expected<RiseFit, RiseFault> fitRise(const Pass& pass, const RiseRules& rules = {});

/// Root mean square of (r(t + lag) − r(t))/√2 over pairs of residuals, each with the first one at least `lag` later:
/// the spread of white noise, and hardly anything of a slow misfit (after von Neumann, Ann. Math. Stat. 12, 1941).
/// Without such a pair 0.
[[nodiscard]] TemperatureDifference flutterOf(const std::vector<CurvePoint>& residuals, Duration lag) noexcept;

} // namespace holdfast::analytics
