#include "analytics/cure/ride/ride_names.hpp"

namespace holdfast::analytics {

std::string_view nameOf(RiseFault value) noexcept {
    switch (value) {
    case RiseFault::noPass:
        return "no-pass";
    case RiseFault::unitNotSure:
        return "unit-not-sure";
    case RiseFault::tooCoarse:
        return "too-coarse";
    case RiseFault::notFallen:
        return "not-fallen";
    case RiseFault::tooShort:
        return "too-short";
    case RiseFault::broken:
        return "broken";
    case RiseFault::gaps:
        return "gaps";
    case RiseFault::tooNoisy:
        return "too-noisy";
    case RiseFault::notToldApart:
        return "not-told-apart";
    case RiseFault::notFirstOrder:
        return "not-first-order";
    }
    return "unknown";
}

std::string_view nameOf(RideSignKind value) noexcept {
    switch (value) {
    case RideSignKind::probeLifted:
        return "probe-lifted";
    case RideSignKind::wetCloth:
        return "wet-cloth";
    case RideSignKind::emptyBelt:
        return "empty-belt";
    }
    return "unknown";
}

std::string_view nameOf(TurnKnob value) noexcept {
    switch (value) {
    case TurnKnob::beltSlower:
        return "belt-slower";
    case TurnKnob::beltFaster:
        return "belt-faster";
    case TurnKnob::setPointUp:
        return "set-point-up";
    case TurnKnob::setPointDown:
        return "set-point-down";
    }
    return "unknown";
}

std::string_view nameOf(TurnCaution value) noexcept {
    switch (value) {
    case TurnCaution::onlyPartOfTheWay:
        return "only-part-of-the-way";
    case TurnCaution::mayMiss:
        return "may-miss";
    case TurnCaution::beyondWhatWasSeen:
        return "beyond-what-was-seen";
    case TurnCaution::watchCloth:
        return "watch-cloth";
    case TurnCaution::lessTimeToDry:
        return "less-time-to-dry";
    case TurnCaution::noCeilingKnown:
        return "no-ceiling-known";
    case TurnCaution::dwellDisagrees:
        return "dwell-disagrees";
    case TurnCaution::dataSheetGoverns:
        return "data-sheet-governs";
    }
    return "unknown";
}

std::string_view nameOf(TurnAssumption value) noexcept {
    switch (value) {
    case TurnAssumption::timeFollowsBelt:
        return "time-follows-belt";
    case TurnAssumption::airStaysAsIs:
        return "air-stays-as-is";
    case TurnAssumption::airFollowsSetPoint:
        return "air-follows-set-point";
    case TurnAssumption::loadStaysAsIs:
        return "load-stays-as-is";
    }
    return "unknown";
}

std::string_view nameOf(NoTurn value) noexcept {
    switch (value) {
    case NoTurn::rideNotTrusted:
        return "ride-not-trusted";
    case NoTurn::windowClosed:
        return "window-closed";
    case NoTurn::notProvable:
        return "not-provable";
    case NoTurn::noSettingDoes:
        return "no-setting-does";
    case NoTurn::nothingToTurn:
        return "nothing-to-turn";
    case NoTurn::badInput:
        return "bad-input";
    }
    return "unknown";
}

} // namespace holdfast::analytics
