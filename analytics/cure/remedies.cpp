#include "analytics/cure/findings.hpp"

#include <algorithm>

namespace holdfast::analytics::judging {
namespace {

/// Easiest first; a code that no remedy answers has none.
std::vector<Remedy> remediesFor(ReasonCode code) {
    switch (code) {
    case ReasonCode::belowCure:
    case ReasonCode::holdTooShort:
    case ReasonCode::doseTooSmall:
    case ReasonCode::mixPartTooCool:
    case ReasonCode::surfaceCold:
        return {Remedy::sendProbeHotter};
    case ReasonCode::overCureWithinGuard:
    case ReasonCode::underCureWithinGuard:
    case ReasonCode::holdWithinGuard:
    case ReasonCode::doseWithinGuard:
    case ReasonCode::mixBetweenPartAndWhole:
        return {Remedy::sendProbeAgain, Remedy::sendProbeHotter, Remedy::useInstrumentWithSmallerGuard};
    case ReasonCode::holdShortByOneInterval:
        return {Remedy::sendProbeAgain, Remedy::sampleFaster};
    case ReasonCode::aboveHardCeiling:
    case ReasonCode::aboveBleedCeiling:
    case ReasonCode::surfaceHot:
        return {Remedy::sendProbeCooler};
    case ReasonCode::hardCeilingNotRuledOut:
        return {Remedy::sendProbeCooler, Remedy::useInstrumentWithSmallerGuard};
    case ReasonCode::bleedNotRuledOut:
    case ReasonCode::bleedsAnyway:
        return {Remedy::watchForBleed};
    case ReasonCode::notFallenBeforeEnd:
    case ReasonCode::cutOff:
    case ReasonCode::stoppedByHand:
        return {Remedy::waitForCoolDown, Remedy::sendProbeAgain};
    case ReasonCode::tooFewSamplesPerSecond:
        return {Remedy::sampleFaster};
    case ReasonCode::startsHot:
    case ReasonCode::unitInDoubt:
        return {Remedy::answerUnit, Remedy::sendProbeAgain};
    case ReasonCode::jump:
    case ReasonCode::gapHidesTop:
        return {Remedy::leadClearOfBelt, Remedy::sendProbeAgain};
    case ReasonCode::unitSwitched:
    case ReasonCode::clockFault:
    case ReasonCode::noPassSeen:
    case ReasonCode::spotNotResetBelowGel:
    case ReasonCode::impossibleTemperature:
    case ReasonCode::probeLifted:
        return {Remedy::sendProbeAgain};
    case ReasonCode::wetCloth:
        return {Remedy::dryClothFirst};
    case ReasonCode::emptyBelt:
        return {Remedy::loadBelt};
    case ReasonCode::noCertificateOrCheckInDate:
        return {Remedy::checkInstrument};
    case ReasonCode::readingsDisagree:
        return {Remedy::checkInstrument};
    case ReasonCode::correctionBeyondClass:
    case ReasonCode::noToleranceKnown:
        return {Remedy::renewCertificate};
    case ReasonCode::guardTooWide:
        return {Remedy::useInstrumentWithSmallerGuard, Remedy::takeWayOut};
    case ReasonCode::holdNeedsTrace:
    case ReasonCode::doseNeedsTrace:
    case ReasonCode::surfaceOnly:
    case ReasonCode::outfeedShotProvesNothing:
    case ReasonCode::stripInterval:
        return {Remedy::useProbeTrace};
    case ReasonCode::stripExpired:
    case ReasonCode::stripUsedBefore:
    case ReasonCode::stripNotAllLightBefore:
        return {Remedy::freshStrip};
    case ReasonCode::stripStepsOutOfOrder:
    case ReasonCode::stripUnknownStep:
        return {Remedy::readStripAgain};
    case ReasonCode::bucketPastPotLife:
    case ReasonCode::bucketExpired:
    case ReasonCode::bucketAdditiveOutsideBand:
        return {Remedy::freshBucket};
    case ReasonCode::windowClosed:
        return {Remedy::takeWayOut};
    default:
        return {};
    }
}

} // namespace

std::vector<Remedy> remediesFor(const std::vector<Reason>& reasons) {
    std::vector<Remedy> remedies;
    for (const auto& reason : reasons) {
        for (const auto remedy : remediesFor(reason.code)) {
            if (std::find(remedies.begin(), remedies.end(), remedy) == remedies.end()) {
                remedies.push_back(remedy);
            }
        }
    }
    return remedies;
}

} // namespace holdfast::analytics::judging
