#include "kiosk/shop/proving/machine.hpp"

#include <algorithm>

namespace holdfast::kiosk::shop {
namespace {

constexpr MonotonicTime kSaidOnceFor{2'000'000}; // a scanner held on a card, a glove that taps twice (MEM)

} // namespace

void Machine::refuse(RefusalCause cause, std::string text, std::optional<std::uint64_t> number) {
    state.refusal = Refusal{cause, std::move(text), number};
    effects.emplace_back(ShowRefusal{*state.refusal});
}

Probe* Machine::probeNamed(const std::string& name) {
    const auto found =
        std::find_if(state.probes.begin(), state.probes.end(), [&](const Probe& one) { return one.name == name; });
    return found == state.probes.end() ? nullptr : &*found;
}

const KnownInstrument* Machine::instrumentNamed(const std::string& name) const {
    const auto found = std::find_if(state.instruments.begin(), state.instruments.end(),
                                    [&](const KnownInstrument& one) { return one.name == name; });
    return found == state.instruments.end() ? nullptr : &*found;
}

bool saidAgain(Machine& m, const std::string& what) {
    auto& last = m.state.lastScan;
    const bool again = last && last->text == what && m.state.now - last->at < kSaidOnceFor;
    last = LastScan{what, m.state.now};
    return again;
}

void onNext(Machine& m) {
    auto& state = m.state;
    settlePieces(m);
    if (verdictStays(state)) {
        const auto run = shownRun(state);
        m.refuse(RefusalCause::badVerdictUnanswered, {},
                 run ? std::optional{static_cast<std::uint64_t>(run->onFile.plan.number)} : std::nullopt);
        return;
    }
    const bool shown = state.verdict || state.strip || state.hand || state.flash || state.unclaimed;
    clearVerdict(m);
    closePages(state);
    state.retakeFirsts.clear();
    state.together.clear();
    state.unclaimed.reset();
    state.claiming.reset();
    state.alsoOnBelt = false;
    state.nextReason = records::ReadingReason::drawn;
    refreshReason(state);
    if (!shown && state.belt.size() > 1) {
        replaceBelt(m, state.run); // the others are through
        refreshWindow(m);
    }
}

void onPosition(Machine& m, records::BeltPosition position) {
    if (m.state.strip) {
        m.state.strip->position = position;
        return;
    }
    if (m.state.hand) {
        m.state.hand->position = position;
        return;
    }
    for (auto& probe : m.state.probes) {
        probe.position = position;
        probe.positionChosen = !(probe.recording && probe.recording->isRide);
        if (probe.recording && !probe.recording->judged) {
            probe.recording->position = position;
        }
    }
}

void onPlacement(Machine& m, analytics::Placement placement) {
    if (m.state.strip) {
        m.state.strip->placement = placement;
        previewStrip(m);
        return;
    }
    if (m.state.hand) {
        m.state.hand->placement = placement;
        previewHand(m);
        return;
    }
    for (auto& probe : m.state.probes) {
        probe.placement = placement;
        if (probe.recording && !probe.recording->judged) {
            probe.recording->placement = placement;
        }
    }
    refreshWindow(m);
}

namespace {

/// One overload an event.
struct Dispatch final {
    Machine& m;

    void operator()(const ScannedText& event) const { onScan(m, event.text); }
    void operator()(const InstrumentsLoaded& event) const { onInstruments(m, event); }
    void operator()(const LinkChanged& event) const { onLink(m, event); }
    void operator()(const InstrumentInCheck& event) const { onInCheck(m, event); }
    void operator()(const SamplesArrived& event) const { onSamples(m, event); }
    void operator()(const Tick& event) const {
        m.state.now = std::max(m.state.now, event.now);
        watchAges(m);
        watchFloor(m);
        watchRuns(m);
    }
    void operator()(const RunLoaded& event) const { onRunLoaded(m, event); }
    void operator()(const RunNotFound& event) const {
        if (m.state.lookingUp == event.number) {
            m.state.lookingUp.reset();
            m.refuse(m.state.lookingUpCard ? RefusalCause::windowCardNotFound : RefusalCause::runNotFound, {},
                     event.number);
        }
    }
    void operator()(const LookUpFailed& event) const {
        if (m.state.lookingUp == event.number) {
            m.state.lookingUp.reset();
            m.refuse(RefusalCause::bookUnreadable, {}, event.number);
        }
    }
    void operator()(const StripOpened& event) const {
        m.state.refusal.reset();
        openStrip(m, event.instrument);
    }
    void operator()(const StripStepTouched& event) const { touchStrip(m, event.lastDark); }
    void operator()(const StripUnsureTouched&) const {
        if (m.state.strip) {
            m.state.strip->nextUnsure = !m.state.strip->nextUnsure;
            previewStrip(m);
        }
    }
    void operator()(const StripUsedTouched&) const {
        if (m.state.strip) {
            m.state.strip->allLightBefore = !m.state.strip->allLightBefore;
            previewStrip(m);
        }
    }
    void operator()(const PositionTouched& event) const { onPosition(m, event.position); }
    void operator()(const StripKept&) const { keepStrip(m); }
    void operator()(const StripLeft&) const { m.state.strip.reset(); }
    void operator()(const StopPressed&) const { onStop(m); }
    void operator()(const RetakePressed&) const { onRetake(m); }
    void operator()(const RetryPressed&) const { onRetry(m); }
    void operator()(const NextPressed&) const {
        m.state.refusal.reset();
        onNext(m);
    }
    void operator()(const RefusalClosed&) const { m.state.refusal.reset(); }
    void operator()(const UnitAnswered& event) const { onUnitAnswered(m, event); }
    void operator()(const ReasonChosen& event) const {
        m.state.floor.setUp = event.reason == records::ReadingReason::setUp;
        m.state.nextReason = event.reason;
    }
    void operator()(const Committed& event) const { onCommitted(m, event); }
    void operator()(const CommitFailed& event) const { onCommitFailed(m, event); }
    void operator()(const SpoolFailed& event) const { reopenSpool(m, event); }
    void operator()(const SpoolFound& event) const { onSpoolFound(m, event); }
    void operator()(const SpoolUnreadable& event) const { m.state.unreadableSpools.push_back(event.fileName); }
    void operator()(const ActionPressed& event) const {
        m.state.refusal.reset();
        onActionPressed(m, event);
    }
    void operator()(const FloorLoaded& event) const { onFloorLoaded(m, event); }
    void operator()(const KeptElsewhere& event) const { onKeptElsewhere(m, event); }
    void operator()(const EarlierRidesLoaded& event) const { noteEarlierRides(m.state, event); }
    void operator()(const HandOverOpened&) const { m.state.floor.handOver = true; }
    void operator()(const ClaimPressed& event) const {
        m.state.refusal.reset();
        onClaimPressed(m, event);
    }
    void operator()(const ClaimLeft&) const {
        m.state.claiming.reset();
        m.state.alsoOnBelt = false;
    }
    void operator()(const BeltLeft& event) const { leaveBelt(m, event.run); }
    void operator()(const TraceLoaded& event) const { onTraceLoaded(m, event); }
    void operator()(const TraceNotLoaded& event) const { onTraceNotLoaded(m, event); }
    void operator()(const PlacementChosen& event) const { onPlacement(m, event.placement); }
    void operator()(const HandOpened& event) const {
        m.state.refusal.reset();
        openHand(m, event.instrument);
    }
    void operator()(const HandTyped& event) const {
        if (m.state.hand) {
            m.state.hand->value = event.value;
            previewHand(m);
        }
    }
    void operator()(const HandBeforeTyped& event) const {
        if (m.state.hand) {
            m.state.hand->beforeUse = event.value;
            previewHand(m);
        }
    }
    void operator()(const ShotPlaceChosen& event) const {
        if (m.state.hand) {
            m.state.hand->place = event.place;
            previewHand(m);
        }
    }
    void operator()(const HandKept&) const { keepHand(m); }
    void operator()(const HandLeft&) const { m.state.hand.reset(); }
    void operator()(const FlashOpened& event) const {
        m.state.refusal.reset();
        openFlash(m, event.instrument);
    }
    void operator()(const FlashLayerChosen& event) const {
        if (m.state.flash) {
            m.state.flash->layer = event.position;
            previewFlash(m);
        }
    }
    void operator()(const FlashTyped& event) const {
        if (m.state.flash) {
            m.state.flash->peak = event.peak;
            previewFlash(m);
        }
    }
    void operator()(const FlashKept&) const { keepFlash(m); }
    void operator()(const FlashLeft&) const { m.state.flash.reset(); }
    void operator()(const StripLookedUp& event) const { onStripLookedUp(m, event); }
    void operator()(const FreshIds& event) const {
        m.state.freshIds.insert(m.state.freshIds.end(), event.ids.begin(), event.ids.end());
        auto& words = m.state.watch.words;
        words.insert(words.end(), event.words.begin(), event.words.end());
    }
    void operator()(const PiecesTyped& event) const {
        m.state.refusal.reset();
        onPiecesTyped(m, event);
    }
    void operator()(const PiecesPulsed& event) const { onPiecesPulsed(m.state, event.pieces); }
    void operator()(const CounterLink& event) const { onCounterLink(m.state, event.live); }
};

} // namespace

Step step(ProvingState state, const ProvingEvent& event) {
    Machine m{std::move(state), {}};
    std::visit(Dispatch{m}, event);
    return {std::move(m.state), std::move(m.effects)};
}

} // namespace holdfast::kiosk::shop
