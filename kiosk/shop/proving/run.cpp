#include "kiosk/shop/proving/machine.hpp"

#include <algorithm>

namespace holdfast::kiosk::shop {
namespace {

/// The probe that the window is drawn for: the one shown before if it is still there, else the first described one.
const KnownInstrument* windowProbe(const ProvingState& state) {
    const KnownInstrument* first = nullptr;
    for (const auto& probe : state.probes) {
        if (probe.known && probe.known->calibration && probe.link.state != drivers::LinkState::absent) {
            if (probe.name == state.windowInstrument) {
                return &*probe.known;
            }
            first = first == nullptr ? &*probe.known : first;
        }
    }
    return first;
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

} // namespace

void lookUp(Machine& m, std::uint64_t number, bool card) {
    m.state.lookingUp = number;
    m.state.lookingUpCard = card;
    m.effects.emplace_back(LookUpRun{number, card});
}

void clearVerdict(Machine& m) {
    m.state.verdict.reset();
    m.state.shownReadings.clear();
    m.state.unitAsked = false;
    m.state.retakePlanned = false;
}

void refreshWindow(Machine& m) {
    auto& state = m.state;
    const auto* instrument = windowProbe(state);
    state.windowInstrument = instrument != nullptr ? instrument->name : std::string{};
    state.window.reset();
    if (!state.run) {
        return;
    }
    const auto* calibration = instrument != nullptr ? instrument->calibration.get() : nullptr;
    auto window = analytics::windowWithWaysOut(state.run->onFile.layers, calibration, choicesOf(state), state.guard);
    if (window) {
        state.window = std::move(*window);
    }
}

void onRunLoaded(Machine& m, const RunLoaded& event) {
    auto& state = m.state;
    if (state.lookingUp != event.number) {
        return; // another ticket was scanned since
    }
    state.lookingUp.reset();
    const bool usable =
        event.run && event.run->onFile.usable && analytics::windowOf(event.run->onFile.layers).has_value();
    if (!usable) {
        m.refuse(RefusalCause::runUnusable, {}, event.number);
        return;
    }
    clearVerdict(m);
    state.strip.reset();
    state.run = event.run;
    state.nextReason = records::ReadingReason::drawn;
    if (event.run->onFile.lot) {
        state.openedLots.push_back(event.run->lotId);
    }
    std::erase_if(state.kept, [&](const KeptReading& one) {
        return !one.fromSpool && one.run && one.run->onFile.plan.run != event.run->onFile.plan.run;
    });
    claimRides(m);
    refreshWindow(m);
}

} // namespace holdfast::kiosk::shop
