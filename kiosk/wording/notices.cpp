#include "kiosk/wording/notices.hpp"

namespace holdfast::kiosk::wording {

namespace {

std::string_view keyOf(shop::RefusalCause value) noexcept {
    switch (value) {
    case shop::RefusalCause::unreadableScan:
        return "unreadable-scan";
    case shop::RefusalCause::notATicket:
        return "not-a-ticket";
    case shop::RefusalCause::ticketDamaged:
        return "ticket-damaged";
    case shop::RefusalCause::ticketOfOtherKind:
        return "ticket-of-other-kind";
    case shop::RefusalCause::runNotFound:
        return "run-not-found";
    case shop::RefusalCause::windowCardNotFound:
        return "window-card-not-found";
    case shop::RefusalCause::instrumentNotFound:
        return "instrument-not-found";
    case shop::RefusalCause::runFinished:
        return "run-finished";
    case shop::RefusalCause::runUnusable:
        return "run-unusable";
    case shop::RefusalCause::bookUnreadable:
        return "book-unreadable";
    case shop::RefusalCause::noRunAnnounced:
        return "no-run-announced";
    case shop::RefusalCause::stripOnly:
        return "strip-only";
    case shop::RefusalCause::stripNotChosen:
        return "strip-not-chosen";
    case shop::RefusalCause::nothingToStop:
        return "nothing-to-stop";
    case shop::RefusalCause::nothingToRetake:
        return "nothing-to-retake";
    case shop::RefusalCause::retakeUsedUp:
        return "retake-used-up";
    case shop::RefusalCause::nothingToAnswer:
        return "nothing-to-answer";
    case shop::RefusalCause::unknownAction:
        return "unknown-action";
    case shop::RefusalCause::rideStillBeingKept:
        return "ride-still-being-kept";
    case shop::RefusalCause::badVerdictUnanswered:
        return "bad-verdict-unanswered";
    case shop::RefusalCause::numberUnusable:
        return "number-unusable";
    case shop::RefusalCause::beltFull:
        return "belt-full";
    case shop::RefusalCause::rideNotFound:
        return "ride-not-found";
    case shop::RefusalCause::traceUnreadable:
        return "trace-unreadable";
    case shop::RefusalCause::byHandOnly:
        return "by-hand-only";
    case shop::RefusalCause::nothingEntered:
        return "nothing-entered";
    case shop::RefusalCause::valueMissing:
        return "value-missing";
    case shop::RefusalCause::valueImpossible:
        return "value-impossible";
    case shop::RefusalCause::beforeUseMissing:
        return "before-use-missing";
    case shop::RefusalCause::stripUsedBefore:
        return "strip-used-before";
    case shop::RefusalCause::flashLayerMissing:
        return "flash-layer-missing";
    case shop::RefusalCause::flashDoesNotApply:
        return "flash-does-not-apply";
    case shop::RefusalCause::countRunsBackwards:
        return "count-runs-backwards";
    case shop::RefusalCause::countUnusable:
        return "count-unusable";
    case shop::RefusalCause::noRunToCount:
        return "no-run-to-count";
    }
    return "unknown";
}

std::string_view keyOf(shop::ProbeTrouble value) noexcept {
    switch (value) {
    case shop::ProbeTrouble::none:
        return "none";
    case shop::ProbeTrouble::absent:
        return "absent";
    case shop::ProbeTrouble::portBusy:
        return "port-busy";
    case shop::ProbeTrouble::permission:
        return "permission";
    case shop::ProbeTrouble::opening:
        return "opening";
    case shop::ProbeTrouble::identifying:
        return "identifying";
    case shop::ProbeTrouble::unplugged:
        return "unplugged";
    case shop::ProbeTrouble::wrongDevice:
        return "wrong-device";
    case shop::ProbeTrouble::silent:
        return "silent";
    case shop::ProbeTrouble::garbled:
        return "garbled";
    case shop::ProbeTrouble::wrongBaud:
        return "wrong-baud";
    case shop::ProbeTrouble::wrongUnit:
        return "wrong-unit";
    case shop::ProbeTrouble::openCircuit:
        return "open-circuit";
    case shop::ProbeTrouble::outOfRange:
        return "out-of-range";
    case shop::ProbeTrouble::instrumentFault:
        return "instrument-fault";
    case shop::ProbeTrouble::unreadable:
        return "unreadable";
    case shop::ProbeTrouble::impossibleTemperature:
        return "impossible-temperature";
    case shop::ProbeTrouble::notDescribed:
        return "not-described";
    }
    return "unknown";
}

} // namespace

std::string Notice::line() const {
    return happened + " " + kept + " " + toDo;
}

Notice noticeOf(const ledger::Failure& failure, Kept kept, const Speech& speech) {
    const auto key = "failure." + std::string{ledger::nameOf(failure.code)};
    return {speech.text(key + ".happened"),
            speech.text(kept == Kept::reading ? "failure.kept.reading" : "failure.kept.book"),
            speech.text(key + ".do")};
}

Notice noticeOf(const shop::Refusal& refusal, const Speech& speech) {
    const auto key = "refusal." + std::string{keyOf(refusal.cause)};
    const Arguments arguments{{"text", refusal.text},
                              {"number", refusal.number ? std::to_string(*refusal.number) : std::string{}}};
    return {speech.text(key + ".happened", arguments), speech.text("refusal.kept"),
            speech.text(key + ".do", arguments)};
}

Notice noticeOf(shop::ProbeTrouble trouble, const Speech& speech) {
    const auto key = "probe." + std::string{keyOf(trouble)};
    return {speech.text(key + ".happened"), speech.text("probe.kept"), speech.text(key + ".do")};
}

} // namespace holdfast::kiosk::wording
