#pragma once

#include "analytics/cure/ride/rise_fit.hpp"
#include "analytics/cure/ride/usual.hpp"
#include "analytics/cure/ride/wet_stretch.hpp"
#include "analytics/cure/verdict.hpp"

#include <vector>

namespace holdfast::analytics {

enum class RideSignKind { probeLifted, wetCloth, emptyBelt };

/// That a ride does not show what it should, with the values of its sentence:
/// probeLifted: duration τ, needed the usual τ, difference the flutter;
/// wetCloth: at, duration of the stretch, value its mean;
/// emptyBelt: value sustained peak, other what the dryer's usual gives in that time, difference between both curves.
struct RideSign final {
    RideSignKind kind = RideSignKind::probeLifted;
    Reason reason;
};

/// Starter settings (MEM), kept as data.
struct SignRules final {
    double liftedTauShare = 0.5;     ///< τ below this share of the usual …
    double liftedTauSpreads = 3.0;   ///< … and this many spreads below it
    double liftedFlutterTimes = 2.0; ///< flutter above this many times the usual …
    TemperatureDifference liftedFlutterLeast = TemperatureDifference::fromCelsius(1.0); ///< … and above this
    TemperatureDifference emptyLeast = TemperatureDifference::fromFahrenheit(10.0); ///< hotter than usual by this …
    double emptySpreads = 3.0; ///< … and by this many spreads of the usual air
    WetRules wet;
};

/// Decisions 4, Is this a ride? Without a fit only wet cloth can be seen; without a usual neither a lifted probe nor an
/// empty belt. An empty belt is asked for the peak that the usual air and τ would have given a film in the same time,
/// and never of a lifted probe: that follows the air. At most one sign of each kind, lifted first.
[[nodiscard]] std::vector<RideSign> rideSigns(const RiseFit* fit, const Pass& pass, const Usual* usual,
                                              const SignRules& rules = {});

[[nodiscard]] bool has(const std::vector<RideSign>& signs, RideSignKind kind) noexcept;

/// The verdict of one ride with its signs. A lifted probe turns cured and under-cured into not proven, takes away every
/// margin and what speaks of too little or enough heat; overheated stands; it comes to the same as judging the
/// recording with ReadingContext::probeLifted. Wet cloth and empty belt are named and change no word; what to do about
/// them comes first unless the word is cured. For a verdict that joins several readings apply it to the ride's own
/// before joining.
[[nodiscard]] Verdict withSigns(Verdict verdict, const std::vector<RideSign>& signs);

} // namespace holdfast::analytics
