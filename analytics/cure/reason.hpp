#pragma once

#include "analytics/metrology/calibration.hpp"
#include "analytics/quantity/duration.hpp"
#include "analytics/quantity/temperature.hpp"

#include <optional>
#include <string>
#include <vector>

namespace holdfast::analytics {

/// Why a verdict is what it is. The values a sentence needs stand in Reason; which are set is said behind each code.
/// P = sustained peak (or what stands for it), L = cure limit, g = guard, H = ceiling.
enum class ReasonCode {
    // the lower limit
    reachedCure,            ///< layer, value P, limit L, guard
    reachedHold,            ///< layer, limit L, guard, duration, needed
    reachedDose,            ///< layer, duration (cautious dose), needed τ1
    belowCure,              ///< layer, value raw peak, limit L, guard
    holdTooShort,           ///< layer, limit, guard, duration, needed
    doseTooSmall,           ///< layer, duration (generous dose), needed τ1
    mixPartTooCool,         ///< layer, subject part's name, limit of that part
    overCureWithinGuard,    ///< layer, value P, limit L, guard: at or above L but below L + g
    underCureWithinGuard,   ///< layer, value P, limit L, guard: below L but not below L − g
    holdWithinGuard,        ///< layer, limit, guard, duration at L + g, needed
    holdShortByOneInterval, ///< layer, duration, needed, other interval
    doseWithinGuard,        ///< layer, duration cautious, other generous, needed
    mixBetweenPartAndWhole, ///< layer, value P, limit L of the whole
    // the ceilings
    aboveHardCeiling,       ///< value P, limit H, guard, subject fabric or family; layer if an ink's
    aboveBleedCeiling,      ///< value P, limit H, guard, subject fabric
    hardCeilingNotRuledOut, ///< value raw peak with sampling term, limit H, guard
    bleedNotRuledOut,       ///< value raw peak, limit H, guard
    bleedsAnyway,           ///< layer: its ink resists less than the fabric and colour need
    notFallenBeforeEnd,     ///< the trace ends less than 20 °C below its peak
    // the trace
    tooFewSamplesPerSecond, ///< duration median interval
    startsHot,              ///< value first valid sample
    unitInDoubt,            ///< value, other reading it may have been
    unitSwitched,           ///< at
    jump,                   ///< at, value before, other after
    clockFault,             ///< at
    gapHidesTop,            ///< at, duration, value hidden top
    noPassSeen,             ///< value highest sample
    cutOff,                 ///< recording ended without a fall (power cut, probe lost)
    stoppedByHand,
    secondPass,     ///< another pass in the same recording
    samplesDropped, ///< count
    // the instrument
    noCertificateOrCheckInDate, ///< subject instrument
    correctionBeyondClass,      ///< subject instrument
    noToleranceKnown,           ///< subject instrument
    guardTooWide,               ///< guard, value lower + g, limit upper − g
    holdNeedsTrace,             ///< layer, needed
    doseNeedsTrace,             ///< layer
    surfaceOnly,                ///< a gun never proves cured
    // strip, spot, gun
    stripExpired,
    stripUsedBefore,
    stripNotAllLightBefore,
    stripStepsOutOfOrder,
    stripUnknownStep,      ///< value
    stripInterval,         ///< value lo (absent if none dark), limit hi (absent if all dark)
    spotNotResetBelowGel,  ///< value reading before use, limit g_lo
    impossibleTemperature, ///< value
    outfeedShotProvesNothing,
    surfaceHot,  ///< value, limit, guard
    surfaceCold, ///< value, limit, guard
    // the print and the ride
    bucketPastPotLife,         ///< layer, subject bucket
    bucketExpired,             ///< layer, subject bucket
    bucketAdditiveOutsideBand, ///< layer, subject bucket
    probeLifted,               ///< where the trace showed it: duration τ, needed the usual τ, difference flutter
    wetCloth,                  ///< at, duration, value level of the stretch
    emptyBelt,                 ///< value P, other the usual P, difference
    readingsDisagree,          ///< value one, other the other
    retakePassed,              ///< value mean margin as difference, guard
    retakeUsedUp,
    windowClosed, ///< value lower, limit upper
    emptyLayerList,
    // flash
    gelled, ///< value peak, limit g_lo, guard
    notGelled,
    overFlashed,
    // the window
    instrumentRangeTooShort, ///< subject instrument, value lower + g, limit end of its range
    stripStepsDoNotFit       ///< subject instrument, value lower, limit hard upper (absent if none)
};

/// One reason with the values its sentence needs; a value not named by the code is absent.
struct Reason final {
    ReasonCode code{};
    std::optional<int> layer; ///< position, 1 = bottom
    std::string subject;      ///< a name: fabric, family, bucket, instrument
    std::optional<Temperature> value;
    std::optional<Temperature> limit;
    std::optional<Temperature> other;
    std::optional<TemperatureDifference> guard;
    std::optional<TemperatureDifference> difference;
    std::optional<Duration> duration;
    std::optional<Duration> needed;
    std::optional<Duration> at; ///< since the start of the recording
    std::optional<int> count;
};

/// What would prove a reading that is not proven, or mend a bad one; easiest first.
enum class Remedy {
    sendProbeAgain,
    sendProbeHotter,
    sendProbeCooler,
    useProbeTrace,
    useInstrumentWithSmallerGuard,
    checkInstrument,
    renewCertificate,
    answerUnit,
    leadClearOfBelt,
    sampleFaster,
    waitForCoolDown,
    freshStrip,
    freshBucket,
    takeWayOut,
    watchForBleed,
    readStripAgain,
    dryClothFirst,
    loadBelt
};

} // namespace holdfast::analytics
