#include "analytics/cure/names.hpp"

namespace holdfast::analytics {

std::string_view nameOf(ReasonCode value) noexcept {
    switch (value) {
    case ReasonCode::reachedCure:
        return "reached-cure";
    case ReasonCode::reachedHold:
        return "reached-hold";
    case ReasonCode::reachedDose:
        return "reached-dose";
    case ReasonCode::belowCure:
        return "below-cure";
    case ReasonCode::holdTooShort:
        return "hold-too-short";
    case ReasonCode::doseTooSmall:
        return "dose-too-small";
    case ReasonCode::mixPartTooCool:
        return "mix-part-too-cool";
    case ReasonCode::overCureWithinGuard:
        return "over-cure-within-guard";
    case ReasonCode::underCureWithinGuard:
        return "under-cure-within-guard";
    case ReasonCode::holdWithinGuard:
        return "hold-within-guard";
    case ReasonCode::holdShortByOneInterval:
        return "hold-short-by-one-interval";
    case ReasonCode::doseWithinGuard:
        return "dose-within-guard";
    case ReasonCode::mixBetweenPartAndWhole:
        return "mix-between-part-and-whole";
    case ReasonCode::aboveHardCeiling:
        return "above-hard-ceiling";
    case ReasonCode::aboveBleedCeiling:
        return "above-bleed-ceiling";
    case ReasonCode::hardCeilingNotRuledOut:
        return "hard-ceiling-not-ruled-out";
    case ReasonCode::bleedNotRuledOut:
        return "bleed-not-ruled-out";
    case ReasonCode::bleedsAnyway:
        return "bleeds-anyway";
    case ReasonCode::notFallenBeforeEnd:
        return "not-fallen-before-end";
    case ReasonCode::tooFewSamplesPerSecond:
        return "too-few-samples-per-second";
    case ReasonCode::startsHot:
        return "starts-hot";
    case ReasonCode::unitInDoubt:
        return "unit-in-doubt";
    case ReasonCode::unitSwitched:
        return "unit-switched";
    case ReasonCode::jump:
        return "jump";
    case ReasonCode::clockFault:
        return "clock-fault";
    case ReasonCode::gapHidesTop:
        return "gap-hides-top";
    case ReasonCode::noPassSeen:
        return "no-pass-seen";
    case ReasonCode::cutOff:
        return "cut-off";
    case ReasonCode::stoppedByHand:
        return "stopped-by-hand";
    case ReasonCode::secondPass:
        return "second-pass";
    case ReasonCode::samplesDropped:
        return "samples-dropped";
    case ReasonCode::noCertificateOrCheckInDate:
        return "no-certificate-or-check-in-date";
    case ReasonCode::correctionBeyondClass:
        return "correction-beyond-class";
    case ReasonCode::noToleranceKnown:
        return "no-tolerance-known";
    case ReasonCode::guardTooWide:
        return "guard-too-wide";
    case ReasonCode::holdNeedsTrace:
        return "hold-needs-trace";
    case ReasonCode::doseNeedsTrace:
        return "dose-needs-trace";
    case ReasonCode::surfaceOnly:
        return "surface-only";
    case ReasonCode::stripExpired:
        return "strip-expired";
    case ReasonCode::stripUsedBefore:
        return "strip-used-before";
    case ReasonCode::stripNotAllLightBefore:
        return "strip-not-all-light-before";
    case ReasonCode::stripStepsOutOfOrder:
        return "strip-steps-out-of-order";
    case ReasonCode::stripUnknownStep:
        return "strip-unknown-step";
    case ReasonCode::stripInterval:
        return "strip-interval";
    case ReasonCode::spotNotResetBelowGel:
        return "spot-not-reset-below-gel";
    case ReasonCode::impossibleTemperature:
        return "impossible-temperature";
    case ReasonCode::outfeedShotProvesNothing:
        return "outfeed-shot-proves-nothing";
    case ReasonCode::surfaceHot:
        return "surface-hot";
    case ReasonCode::surfaceCold:
        return "surface-cold";
    case ReasonCode::bucketPastPotLife:
        return "bucket-past-pot-life";
    case ReasonCode::bucketExpired:
        return "bucket-expired";
    case ReasonCode::bucketAdditiveOutsideBand:
        return "bucket-additive-outside-band";
    case ReasonCode::probeLifted:
        return "probe-lifted";
    case ReasonCode::wetCloth:
        return "wet-cloth";
    case ReasonCode::emptyBelt:
        return "empty-belt";
    case ReasonCode::readingsDisagree:
        return "readings-disagree";
    case ReasonCode::retakePassed:
        return "retake-passed";
    case ReasonCode::retakeUsedUp:
        return "retake-used-up";
    case ReasonCode::windowClosed:
        return "window-closed";
    case ReasonCode::emptyLayerList:
        return "empty-layer-list";
    case ReasonCode::gelled:
        return "gelled";
    case ReasonCode::notGelled:
        return "not-gelled";
    case ReasonCode::overFlashed:
        return "over-flashed";
    case ReasonCode::instrumentRangeTooShort:
        return "instrument-range-too-short";
    case ReasonCode::stripStepsDoNotFit:
        return "strip-steps-do-not-fit";
    }
    return "unknown";
}

std::string_view nameOf(Remedy value) noexcept {
    switch (value) {
    case Remedy::sendProbeAgain:
        return "send-probe-again";
    case Remedy::sendProbeHotter:
        return "send-probe-hotter";
    case Remedy::sendProbeCooler:
        return "send-probe-cooler";
    case Remedy::useProbeTrace:
        return "use-probe-trace";
    case Remedy::useInstrumentWithSmallerGuard:
        return "use-instrument-with-smaller-guard";
    case Remedy::checkInstrument:
        return "check-instrument";
    case Remedy::renewCertificate:
        return "renew-certificate";
    case Remedy::answerUnit:
        return "answer-unit";
    case Remedy::leadClearOfBelt:
        return "lead-clear-of-belt";
    case Remedy::sampleFaster:
        return "sample-faster";
    case Remedy::waitForCoolDown:
        return "wait-for-cool-down";
    case Remedy::freshStrip:
        return "fresh-strip";
    case Remedy::freshBucket:
        return "fresh-bucket";
    case Remedy::takeWayOut:
        return "take-way-out";
    case Remedy::watchForBleed:
        return "watch-for-bleed";
    case Remedy::readStripAgain:
        return "read-strip-again";
    case Remedy::dryClothFirst:
        return "dry-cloth-first";
    case Remedy::loadBelt:
        return "load-belt";
    }
    return "unknown";
}

std::string_view nameOf(Word value) noexcept {
    switch (value) {
    case Word::cured:
        return "cured";
    case Word::underCured:
        return "under-cured";
    case Word::overheated:
        return "overheated";
    case Word::notProven:
        return "not proven";
    case Word::refused:
        return "refused";
    }
    return "unknown";
}

std::string_view nameOf(FlashWord value) noexcept {
    switch (value) {
    case FlashWord::gelled:
        return "gelled";
    case FlashWord::notGelled:
        return "not-gelled";
    case FlashWord::overFlashed:
        return "over-flashed";
    case FlashWord::notProven:
        return "not-proven";
    case FlashWord::doesNotApply:
        return "does-not-apply";
    }
    return "unknown";
}

std::string_view nameOf(WindowState value) noexcept {
    switch (value) {
    case WindowState::open:
        return "open";
    case WindowState::notProvable:
        return "not provable";
    case WindowState::closed:
        return "closed";
    }
    return "unknown";
}

std::string_view nameOf(WindowFault value) noexcept {
    switch (value) {
    case WindowFault::emptyLayerList:
        return "empty-layer-list";
    case WindowFault::familyFaulty:
        return "family-faulty";
    case WindowFault::fabricFaulty:
        return "fabric-faulty";
    }
    return "unknown";
}

std::string_view nameOf(CulpritKind value) noexcept {
    switch (value) {
    case CulpritKind::layer:
        return "layer";
    case CulpritKind::fabric:
        return "fabric";
    }
    return "unknown";
}

std::string_view nameOf(Advice value) noexcept {
    switch (value) {
    case Advice::printWithBleedWatch:
        return "print-with-bleed-watch";
    case Advice::anotherCloth:
        return "another-cloth";
    }
    return "unknown";
}

std::string_view nameOf(FamilyFault value) noexcept {
    switch (value) {
    case FamilyFault::nameEmpty:
        return "name-empty";
    case FamilyFault::gelReversed:
        return "gel-reversed";
    case FamilyFault::cureBelowGel:
        return "cure-below-gel";
    case FamilyFault::cureAboveCeiling:
        return "cure-above-ceiling";
    case FamilyFault::holdNegative:
        return "hold-negative";
    case FamilyFault::pairsNotHotterShorter:
        return "pairs-not-hotter-shorter";
    case FamilyFault::pairsNotAboveGel:
        return "pairs-not-above-gel";
    case FamilyFault::bandReversed:
        return "band-reversed";
    case FamilyFault::notFinite:
        return "not-finite";
    }
    return "unknown";
}

std::string_view nameOf(FabricFault value) noexcept {
    switch (value) {
    case FabricFault::nameEmpty:
        return "name-empty";
    case FabricFault::bleedAboveHard:
        return "bleed-above-hard";
    case FabricFault::notFinite:
        return "not-finite";
    }
    return "unknown";
}

std::string_view nameOf(MixFault value) noexcept {
    switch (value) {
    case MixFault::noParts:
        return "no-parts";
    case MixFault::massNegativeOrNotFinite:
        return "mass-negative-or-not-finite";
    case MixFault::chemistriesDiffer:
        return "chemistries-differ";
    }
    return "unknown";
}

std::string_view nameOf(Join value) noexcept {
    switch (value) {
    case Join::line:
        return "line";
    case Join::gap:
        return "gap";
    case Join::clockFault:
        return "clock-fault";
    case Join::jump:
        return "jump";
    case Join::unitSwitch:
        return "unit-switch";
    }
    return "unknown";
}

std::string_view nameOf(DropWhy value) noexcept {
    switch (value) {
    case DropWhy::flagged:
        return "flagged";
    case DropWhy::notFinite:
        return "not-finite";
    case DropWhy::outOfRange:
        return "out-of-range";
    case DropWhy::duplicate:
        return "duplicate";
    case DropWhy::spike:
        return "spike";
    case DropWhy::shortRun:
        return "short-run";
    case DropWhy::tail:
        return "tail";
    case DropWhy::afterUnitSwitch:
        return "after-unit-switch";
    }
    return "unknown";
}

} // namespace holdfast::analytics
