#include "kiosk/shop/proving/machine.hpp"

#include <algorithm>
#include <utility>

namespace holdfast::kiosk::shop {
namespace {

/// The probe that the window is drawn for: the one shown before if it is still there, else the first described one.
std::optional<KnownInstrument> windowProbe(const ProvingState& state) {
    const Probe* first = nullptr;
    for (const auto& probe : state.probes) {
        if (probe.known && probe.known->calibration && probe.link.state != drivers::LinkState::absent) {
            if (probe.name == state.windowInstrument) {
                return placedAs(*probe.known, probe.placement);
            }
            first = first == nullptr ? &probe : first;
        }
    }
    return first != nullptr ? std::optional{placedAs(*first->known, first->placement)} : std::nullopt;
}

analytics::Choices choicesOf(const ProvingState& state) {
    analytics::Choices choices;
    choices.families = state.families;
    for (const auto& instrument : state.instruments) {
        if (instrument.calibration) {
            choices.instruments.push_back(*instrument.calibration);
        }
    }
    return choices;
}

/// Readings of other runs leave the screen, but for a verdict that stays.
void forgetOthers(ProvingState& state) {
    const bool stays = verdictStays(state);
    std::erase_if(state.kept, [&](const KeptReading& one) {
        const bool shown = stays && isIn(state.shownReadings, one.id);
        return !one.fromSpool && !shown && one.run && !isOnBelt(state, one.run->onFile.plan.run) &&
               one.run->onFile.plan.kind == records::PlanKind::run;
    });
}

void announce(Machine& m, const std::shared_ptr<const AnnouncedRun>& run) {
    auto& state = m.state;
    const bool another = state.run && !isOnBelt(state, run->onFile.plan.run);
    const auto earlier = earlierToName(state, *run);
    if (verdictStays(state)) {
        state.retakePlanned = false;
        state.unitAsked = false;
    } else {
        clearVerdict(m);
    }
    closePages(state);
    replaceBelt(m, withKnownLot(m, run));
    if (another) {
        state.lastFlash.reset();
        state.floor.setUp = false;
        state.nextReason = records::ReadingReason::drawn;
    }
    refreshReason(state);
    forgetOthers(state);
    claimRides(m);
    refreshWindow(m);
    nameEarlier(m, earlier);
}

} // namespace

void lookUp(Machine& m, std::uint64_t number, bool card) {
    m.state.lookingUp = number;
    m.state.lookingUpCard = card;
    m.state.lookingUpJoins = std::exchange(m.state.alsoOnBelt, false) && !m.state.belt.empty();
    m.effects.emplace_back(LookUpRun{number, card});
}

void clearVerdict(Machine& m) {
    m.state.verdict.reset();
    m.state.turn.reset();
    m.state.shownReadings.clear();
    m.state.unitAsked = false;
    m.state.retakePlanned = false;
}

void refreshWindow(Machine& m) {
    auto& state = m.state;
    const auto instrument = windowProbe(state);
    state.windowInstrument = instrument ? instrument->name : std::string{};
    state.window.reset();
    state.beltWindow.reset();
    if (!state.run) {
        return;
    }
    const auto* calibration = instrument ? instrument->calibration.get() : nullptr;
    auto window = analytics::windowWithWaysOut(state.run->onFile.layers, calibration, choicesOf(state), state.guard);
    if (window) {
        state.window = std::move(*window);
    }
    std::vector<analytics::RunWindow> all;
    for (const auto& run : state.belt) {
        if (auto own = analytics::windowOf(run->onFile.layers, calibration, state.guard)) {
            all.push_back(std::move(*own));
        }
    }
    if (state.belt.size() > 1 && all.size() == state.belt.size()) {
        state.beltWindow = analytics::intersectionOf(all);
    }
}

void onRunLoaded(Machine& m, const RunLoaded& event) {
    auto& state = m.state;
    if (state.lookingUp != event.number) {
        return; // another ticket was scanned since
    }
    state.lookingUp.reset();
    if (event.run && event.run->onFile.finished && !event.run->onFile.lot) {
        m.refuse(RefusalCause::runFinished, {}, event.number); // it takes no lot any more, and none goes through again
        return;
    }
    const bool usable =
        event.run && event.run->onFile.usable && analytics::windowOf(event.run->onFile.layers).has_value();
    if (!usable) {
        m.refuse(RefusalCause::runUnusable, {}, event.number);
        return;
    }
    if (state.lookingUpJoins) {
        joinBelt(m, event.run);
    } else {
        announce(m, event.run);
    }
    watchRuns(m);
}

} // namespace holdfast::kiosk::shop
