#pragma once

#include "analytics/cure/ride/ride_signs.hpp"

#include <tl/expected.hpp>

#include <optional>
#include <vector>

namespace holdfast::analytics {

/// A dryer as it stood during the ride, and what it can do; what nobody said is absent.
struct DryerSettings final {
    std::optional<double> heatedLengthMetres;
    std::optional<double> beltMetresPerMinute;
    std::optional<double> slowestMetresPerMinute;
    std::optional<double> fastestMetresPerMinute;
    std::optional<Temperature> setPoint;
    std::optional<Temperature> highestSetPoint;
};

/// Starter settings (MEM), kept as data.
struct TurnRules final {
    double mostBeltStep = 0.25;  ///< of the belt's speed, in one change
    double mostBeltFactor = 2.0; ///< in all changes: beyond, the belt does not do
    TemperatureDifference mostSetPointStep = TemperatureDifference::fromFahrenheit(40.0); ///< in one change
    TemperatureDifference mostSetPointInAll = TemperatureDifference::fromFahrenheit(100.0);
    double leastBeltStep = 0.02; ///< less than this is not worth turning
    TemperatureDifference leastSetPointStep = TemperatureDifference::fromCelsius(1.0);
    double aimInGuards = 2.5; ///< margin aimed at with a hold or pairs, in guards
    Duration beltSettles{60.0};
    double dwellsLoaded = 2.0; ///< the belt is loaded for so many dwell times before the ride
    Duration setPointSettles{900.0};
    double dwellOff = 0.25; ///< heated length over belt speed against the trace's time in the tunnel
};

/// What is asked. `plans` are the runs on this belt, at least one; the ride is one of theirs.
struct TurnRequest final {
    RiseFit fit;
    std::vector<RideSign> signs;
    std::vector<RunPlan> plans;
    Calibration calibration;
    GuardSetting guard{};
    DryerSettings dryer{};
};

enum class TurnKnob { beltSlower, beltFaster, setPointUp, setPointDown };

/// To be said with a proposal; most important first.
enum class TurnCaution {
    onlyPartOfTheWay,  ///< the change was cut to a plausible step: ride, then turn again
    mayMiss,           ///< within the limits of the fit the peak may lie below L + g or above a ceiling − g
    beyondWhatWasSeen, ///< longer or hotter than the ride: the curve is continued
    watchCloth,        ///< more heat: look at the first pieces for scorch, shrink, dye
    lessTimeToDry,     ///< a faster belt with a water-based or discharge ink
    noCeilingKnown,    ///< neither ink nor cloth names one
    dwellDisagrees,    ///< see TurnProposal::dwell
    dataSheetGoverns   ///< always: the ink's and the dryer's own papers come first
};

enum class TurnAssumption {
    timeFollowsBelt,    ///< time under the heat goes as one over the belt's speed
    airStaysAsIs,       ///< the air does not change with the belt's speed
    airFollowsSetPoint, ///< the air changes by as much as the set-point
    loadStaysAsIs       ///< cloth, layers and pieces on the belt as in the ride
};

/// Heated length over belt speed is not the time that the trace spent in the tunnel; the trace's is used.
struct DwellDisagreement final {
    Duration fromBelt{0};
    Duration fromTrace{0};
};

/// One change, to be ridden before the next.
struct TurnProposal final {
    TurnKnob knob = TurnKnob::beltSlower;
    double beltFactor = 1.0;                                ///< new speed over old; 1 when the set-point changes
    std::optional<double> beltMetresPerMinute;              ///< the new speed, if the old one was said
    TemperatureDifference setPointChange;                   ///< 0 when the belt changes
    std::optional<Temperature> setPoint;                    ///< the new one, if the old one was said
    bool partOfTheWay = false;                              ///< cut to a plausible step
    Temperature aim = Temperature::fromCelsius(0);          ///< sustained peak that the whole way would give
    Temperature predicted = Temperature::fromCelsius(0);    ///< sustained peak that this change gives
    Temperature predictedLow = Temperature::fromCelsius(0); ///< within the limits of τ
    Temperature predictedHigh = Temperature::fromCelsius(0);
    Word word = Word::notProven; ///< of the predicted trace, judged like any other, without buckets
    Duration rideAgainAfter{0};
    std::vector<TurnCaution> cautions;
    std::vector<TurnAssumption> assumptions;
    std::optional<DwellDisagreement> dwell;
};

enum class NoTurn {
    rideNotTrusted, ///< lifted probe, wet cloth or empty belt: ride again first
    windowClosed,   ///< no peak would be right: take a way out first
    notProvable,    ///< not with this instrument
    noSettingDoes,  ///< neither belt nor set-point nor both: take a way out first
    nothingToTurn,  ///< the dryer stands at the aim
    badInput        ///< no plan, a faulty one, or figures that are not finite or not positive
};

/// Decisions 4, Turn this much. The belt first: the speed that brings the predicted sustained peak to the window's aim;
/// with holds or pairs, the least heat at which every layer's margin is 2.5 guards, or the middle between the least
/// that cures and the ceiling, whichever is less, found by judging predicted traces. A setting counts only if its
/// predicted trace is judged cured. If no belt speed within the belt's range (and twice or half of what it is) does,
/// the set-point is asked the same. If only both together do, the belt's step comes first. Never both at once, never
/// more than one plausible step.
[[nodiscard]] tl::expected<TurnProposal, NoTurn> turnThisMuch(const TurnRequest& request, const TurnRules& rules = {});

/// Absent unless length and speed are known and the two times differ by more than `rules.dwellOff`.
[[nodiscard]] std::optional<DwellDisagreement> dwellDisagreementOf(const RiseFit& fit, const DryerSettings& dryer,
                                                                   const TurnRules& rules = {}) noexcept;

} // namespace holdfast::analytics
