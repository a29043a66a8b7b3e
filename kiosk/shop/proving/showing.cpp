#include "kiosk/shop/proving/machine.hpp"

#include <algorithm>

/// Readings that stand in the book become what the screen shows.
namespace holdfast::kiosk::shop {
namespace {

using analytics::Verdict;
using analytics::Word;

constexpr std::size_t kMostKept = 60;

bool asksForUnit(const KeptReading& kept) {
    const auto& verdict = kept.reading.verdict;
    return verdict && std::any_of(verdict->reasons.begin(), verdict->reasons.end(), [](const auto& reason) {
               return reason.code == analytics::ReasonCode::startsHot ||
                      reason.code == analytics::ReasonCode::unitInDoubt;
           });
}

/// A retake without a margin does not use the retake up; one with a margin does.
void settleRetake(ProvingState& state, const KeptReading& kept) {
    if (kept.reading.retakeOf) {
        state.retaken.push_back(*kept.reading.retakeOf);
        std::erase_if(state.retakeFirsts, [&](const auto& first) { return first->id == *kept.reading.retakeOf; });
        state.retakePlanned = state.retakePlanned && !state.retakeFirsts.empty();
    } else if (kept.reading.reason == records::ReadingReason::retake) {
        state.retakePlanned =
            std::any_of(state.retakeFirsts.begin(), state.retakeFirsts.end(),
                        [&](const auto& first) {
                            return kept.run && first->run->onFile.plan.run == kept.run->onFile.plan.run;
                        }) ||
            state.retakePlanned;
    }
}

/// A ride of the group still goes on, or one of its readings is still on its way.
bool groupIsOpen(const ProvingState& state) {
    const bool riding = std::any_of(state.probes.begin(), state.probes.end(), [&](const Probe& probe) {
        return probe.recording && probe.recording->stage != RideStage::watching &&
               isIn(state.together, probe.recording->number);
    });
    const bool writing = std::any_of(state.pending.begin(), state.pending.end(), [&](const PendingKeep& pending) {
        return !pending.readings.empty() && isIn(state.together, pending.readings.front().recording);
    });
    return riding || writing;
}

/// Readings of one run are joined as readings of one piece; of several runs on the belt the worst is shown.
Verdict worstOf(const std::vector<std::vector<Verdict>>& byRun) {
    std::vector<Verdict> joined;
    for (const auto& verdicts : byRun) {
        joined.push_back(verdicts.size() == 1 ? verdicts.front() : analytics::joinReadings(verdicts));
    }
    return *std::min_element(joined.begin(), joined.end(), [](const Verdict& one, const Verdict& other) {
        return rankOf(one.word) < rankOf(other.word);
    });
}

} // namespace

int rankOf(Word word) {
    switch (word) {
    case Word::underCured:
        return 0;
    case Word::overheated:
        return 1;
    case Word::notProven:
        return 2;
    case Word::refused:
        return 3;
    case Word::cured:
        return 4;
    }
    return 4;
}

const KeptReading* keptOf(const ProvingState& state, const KeptReading& reading) {
    const auto found = std::find_if(state.kept.begin(), state.kept.end(), [&](const KeptReading& one) {
        if (one.recording != reading.recording || one.pass != reading.pass) {
            return false;
        }
        const bool named = !reading.id.empty();
        const bool sameRun = !one.run || !reading.run || one.run->onFile.plan.run == reading.run->onFile.plan.run;
        return named ? one.id == reading.id : sameRun;
    });
    return found == state.kept.end() ? nullptr : &*found;
}

void store(Machine& m, KeptReading kept) {
    auto& state = m.state;
    if (isIn(state.together, kept.recording)) {
        state.unitAsked = asksForUnit(kept);
        settleRetake(state, kept);
    }
    if (!kept.run && !kept.refused && !kept.fromSpool) {
        state.unclaimed = kept.id;
    }
    noteReading(m, kept);
    noteGoodRide(state, kept);
    noteWatched(state, kept);
    const auto before =
        std::find_if(state.kept.begin(), state.kept.end(), [&](const KeptReading& one) { return one.id == kept.id; });
    if (before != state.kept.end()) {
        kept.corrected = true;
        *before = std::move(kept);
    } else {
        state.kept.push_back(std::move(kept));
    }
    if (state.kept.size() > kMostKept) {
        state.kept.erase(state.kept.begin());
    }
}

void showTogether(Machine& m) {
    auto& state = m.state;
    if (groupIsOpen(state)) {
        return;
    }
    std::vector<std::vector<Verdict>> byRun;
    std::vector<const AnnouncedRun*> runs;
    state.shownReadings.clear();
    for (const auto& kept : state.kept) {
        if (!isIn(state.together, kept.recording)) {
            continue;
        }
        state.shownReadings.push_back(kept.id);
        if (kept.reading.verdict) {
            const auto at = std::find_if(runs.begin(), runs.end(), [&](const AnnouncedRun* one) {
                return one == kept.run.get() ||
                       (one != nullptr && kept.run && one->onFile.plan.run == kept.run->onFile.plan.run);
            });
            if (at == runs.end()) {
                runs.push_back(kept.run.get());
                byRun.push_back({*kept.reading.verdict});
            } else {
                byRun[static_cast<std::size_t>(at - runs.begin())].push_back(*kept.reading.verdict);
            }
        }
    }
    state.verdict.reset();
    state.turn.reset();
    if (!byRun.empty()) {
        state.verdict = worstOf(byRun);
        proposeTurn(state);
        m.effects.emplace_back(ShowVerdict{state.verdict->word});
    }
}

void onRetake(Machine& m) {
    auto& state = m.state;
    const auto firsts = retakeable(state);
    if (!firsts.empty()) {
        state.retakePlanned = true;
        state.retakeFirsts.clear();
        for (const auto* first : firsts) {
            state.retakeFirsts.push_back(std::make_shared<const KeptReading>(*first));
        }
        return;
    }
    const auto* reading = shownReading(state);
    const bool used = reading != nullptr && (reading->reading.retakeOf || isIn(state.retaken, reading->id));
    m.refuse(used ? RefusalCause::retakeUsedUp : RefusalCause::nothingToRetake);
}

} // namespace holdfast::kiosk::shop
