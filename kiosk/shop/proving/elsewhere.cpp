#include "kiosk/shop/proving/machine.hpp"

#include <algorithm>

/// What places write while runs are on the belt: the machine must not close a lot twice, nor open one for a run that is
/// finished.
namespace holdfast::kiosk::shop {
namespace {

bool isOf(const std::shared_ptr<const AnnouncedRun>& run, const std::string& id) {
    return run && run->onFile.plan.run == id;
}

/// A ride that is on keeps its run only if the lot it belongs to stands in the book; else it is nobody's for now.
void letGo(ProvingState& state, Recording& recording, const std::string& run) {
    if (!recording.isRide) {
        recording.run = state.run;
        recording.others = othersOnBelt(state);
        return;
    }
    const auto lost = [&](const auto& one) { return isOf(one, run) && !isIn(state.openedLots, one->lotId); };
    std::erase_if(recording.others, lost);
    if (lost(recording.run)) {
        recording.run.reset();
        if (!recording.others.empty()) {
            recording.run = recording.others.front();
            recording.others.erase(recording.others.begin());
        }
    }
}

void finish(Machine& m, const std::string& run) {
    auto& state = m.state;
    if (state.belt.size() > 1) {
        leaveBelt(m, run);
    } else if (isOnBelt(state, run)) {
        state.run.reset();
        state.belt.clear();
        closePages(state);
        refreshWindow(m);
    }
    for (auto& probe : state.probes) {
        if (probe.recording) {
            letGo(state, *probe.recording, run);
        }
    }
}

/// The plan on the belt is an old one: the book is asked for the new.
void replan(Machine& m, const records::RunReplanned& replanned) {
    auto& state = m.state;
    if (!isOnBelt(state, replanned.plan.run)) {
        return;
    }
    state.lookingUpJoins = state.belt.size() > 1;
    leaveBelt(m, replanned.plan.run);
    const auto number = static_cast<std::uint64_t>(replanned.plan.number);
    state.lookingUp = number;
    state.lookingUpCard = replanned.plan.kind == records::PlanKind::windowCard;
    m.effects.emplace_back(LookUpRun{number, state.lookingUpCard});
}

} // namespace

void onKeptElsewhere(Machine& m, const KeptElsewhere& event) {
    auto& state = m.state;
    noteLots(state, event.records);
    std::vector<std::string> ended;
    for (const auto& record : event.records) {
        if (const auto* closed = std::get_if<records::LotClosed>(&record)) {
            ended.push_back(closed->lot);
            if (!isIn(state.endedLots, closed->lot)) {
                state.endedLots.push_back(closed->lot);
            }
        }
    }
    renewLots(m, ended);
    for (const auto& record : event.records) {
        if (const auto* finished = std::get_if<records::RunFinished>(&record)) {
            finish(m, finished->run);
            endWatch(m, *finished);
        } else if (const auto* replanned = std::get_if<records::RunReplanned>(&record)) {
            replan(m, *replanned);
        } else if (const auto* decided = std::get_if<records::DecisionSigned>(&record)) {
            noteDecided(state, decided->holds);
        } else if (const auto* hold = std::get_if<records::HoldPlaced>(&record)) {
            noteBinTaken(state, hold->bin);
        }
    }
}

} // namespace holdfast::kiosk::shop
