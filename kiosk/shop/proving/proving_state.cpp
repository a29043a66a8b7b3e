#include "kiosk/shop/proving/proving_state.hpp"

#include <algorithm>

namespace holdfast::kiosk::shop {
namespace {

bool isRiding(const Probe& probe) {
    return probe.recording && probe.recording->stage != RideStage::watching;
}

} // namespace

const KeptReading* keptById(const ProvingState& state, const std::string& id) {
    const auto found =
        std::find_if(state.kept.begin(), state.kept.end(), [&](const KeptReading& one) { return one.id == id; });
    return found == state.kept.end() ? nullptr : &*found;
}

bool isBeingAnswered(const ProvingState& state, const std::string& reading) {
    return std::any_of(state.pending.begin(), state.pending.end(), [&](const PendingKeep& pending) {
        return std::any_of(pending.actions.begin(), pending.actions.end(),
                           [&](const auto& action) { return action.answers == reading; });
    });
}

Stage stageOf(const ProvingState& state) {
    const auto* riding = shownProbe(state);
    if (riding != nullptr && isRiding(*riding) && (riding->recording->isRide || !state.verdict)) {
        return riding->recording->lost ? Stage::probeLost : Stage::recording;
    }
    const bool failed = std::any_of(state.pending.begin(), state.pending.end(),
                                    [](const PendingKeep& one) { return one.status == KeepStatus::failed; });
    if (failed) {
        return Stage::notKept;
    }
    const bool writing = std::any_of(state.pending.begin(), state.pending.end(),
                                     [](const PendingKeep& one) { return !one.readings.empty(); });
    if (writing) {
        return Stage::writing;
    }
    if (state.lookingUp) {
        return Stage::lookingUp;
    }
    if (state.strip) {
        return Stage::strip;
    }
    if (state.hand) {
        return Stage::hand;
    }
    if (state.flash) {
        return Stage::flash;
    }
    if (state.verdict) {
        return Stage::verdict;
    }
    return state.run ? Stage::window : Stage::idle;
}

const Probe* shownProbe(const ProvingState& state) {
    const auto best = [&](auto wanted) -> const Probe* {
        const auto found = std::find_if(state.probes.begin(), state.probes.end(), wanted);
        return found == state.probes.end() ? nullptr : &*found;
    };
    if (const auto* ride = best([](const Probe& p) { return isRiding(p) && p.recording->isRide; })) {
        return ride;
    }
    if (const auto* riding = best(isRiding)) {
        return riding;
    }
    if (const auto* watching = best([](const Probe& p) { return p.recording.has_value(); })) {
        return watching;
    }
    if (const auto* ready = best([](const Probe& p) { return p.link.state == drivers::LinkState::ready; })) {
        return ready;
    }
    return state.probes.empty() ? nullptr : &state.probes.front();
}

const KeptReading* shownReading(const ProvingState& state) {
    const KeptReading* best = nullptr;
    for (const auto& id : state.shownReadings) {
        const auto* one = keptById(state, id);
        if (one == nullptr) {
            continue;
        }
        const bool decides = state.verdict && one->reading.verdict && one->reading.verdict->word == state.verdict->word;
        if (best == nullptr || decides) {
            best = one;
            if (decides) {
                break;
            }
        }
    }
    return best;
}

bool verdictStays(const ProvingState& state) {
    const auto& waiting = state.floor.unanswered;
    return state.verdict && std::any_of(state.shownReadings.begin(), state.shownReadings.end(), [&](const auto& id) {
               const bool waits =
                   std::any_of(waiting.begin(), waiting.end(), [&](const auto& row) { return row.id == id; });
               return waits && !isBeingAnswered(state, id);
           });
}

std::shared_ptr<const AnnouncedRun> shownRun(const ProvingState& state) {
    const auto* reading = state.verdict ? shownReading(state) : nullptr;
    return reading != nullptr && reading->run ? reading->run : state.run;
}

BeltLayer layerOnBelt(const ProvingState& state, int position) {
    for (const auto& run : state.belt) {
        const auto layers = static_cast<int>(run->onFile.layers.layers.size());
        if (position >= 1 && position <= layers) {
            return {run, position};
        }
        position -= layers;
    }
    return {};
}

const std::optional<analytics::RunWindow>& shownWindow(const ProvingState& state) {
    return state.beltWindow ? state.beltWindow : state.window;
}

bool touchLocked(const ProvingState& state) {
    return state.floor.wipeUntil && state.now < *state.floor.wipeUntil;
}

std::vector<const KeptReading*> retakeable(const ProvingState& state) {
    std::vector<const KeptReading*> found;
    if (!state.verdict || state.verdict->word != analytics::Word::notProven) {
        return found;
    }
    for (const auto& id : state.shownReadings) {
        const auto* one = keptById(state, id);
        const bool onBelt =
            one != nullptr && one->run && std::find(state.belt.begin(), state.belt.end(), one->run) != state.belt.end();
        if (!onBelt || one->pass != 1 || one->recording != keptById(state, state.shownReadings.front())->recording) {
            return {}; // two probes, two passes, or something was changed since
        }
        const auto& taken = one->reading;
        const bool used = std::find(state.retaken.begin(), state.retaken.end(), id) != state.retaken.end();
        if (taken.verdict && taken.verdict->word == analytics::Word::notProven && taken.verdict->couldProve &&
            taken.verdict->margin && !taken.retakeOf && !used) {
            found.push_back(one);
        }
    }
    return found;
}

bool mayRetake(const ProvingState& state) {
    return !retakeable(state).empty();
}

} // namespace holdfast::kiosk::shop
