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

/// The run as it was announced before, if a reading of it is on its way or on the screen.
std::shared_ptr<const AnnouncedRun> announcedBefore(const ProvingState& state, const std::string& run) {
    std::vector<std::shared_ptr<const AnnouncedRun>> all{state.run};
    for (const auto& probe : state.probes) {
        all.push_back(probe.recording ? probe.recording->run : nullptr);
        all.push_back(probe.ended ? probe.ended->run : nullptr);
    }
    for (const auto& pending : state.pending) {
        all.push_back(pending.readings.front().run);
    }
    for (const auto& kept : state.kept) {
        all.push_back(kept.run);
    }
    const auto found =
        std::find_if(all.begin(), all.end(), [&](const auto& one) { return one && one->onFile.plan.run == run; });
    return found == all.end() ? nullptr : *found;
}

} // namespace

std::shared_ptr<const AnnouncedRun> withKnownLot(const ProvingState& state, std::shared_ptr<const AnnouncedRun> run) {
    const auto before = run ? announcedBefore(state, run->onFile.plan.run) : nullptr;
    if (!before || run->onFile.lot) {
        return run;
    }
    auto same = std::make_shared<AnnouncedRun>(*run);
    same->lotId = before->lotId;
    same->lotNumber = before->lotNumber;
    return same;
}

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
    state.run = withKnownLot(state, event.run);
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
