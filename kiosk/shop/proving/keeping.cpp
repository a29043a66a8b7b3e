#include "kiosk/shop/proving/machine.hpp"

#include <algorithm>
#include <cassert>

/// The way of a reading into the book. Nothing is shown as true before it stands there.
namespace holdfast::kiosk::shop {
namespace {

using analytics::Word;

constexpr std::size_t kMostKept = 60;

KeptReading* keptOf(ProvingState& state, const KeptReading& reading) {
    const auto found = std::find_if(state.kept.begin(), state.kept.end(), [&](const KeptReading& one) {
        return one.recording == reading.recording && one.pass == reading.pass;
    });
    return found == state.kept.end() ? nullptr : &*found;
}

std::optional<records::LotOpened> lotToOpen(const ProvingState& state, const PendingKeep& pending) {
    const auto& first = pending.readings.front();
    if (!first.run || !first.reading.lot) {
        return std::nullopt;
    }
    const auto& opened = state.openedLots;
    if (std::find(opened.begin(), opened.end(), *first.reading.lot) != opened.end()) {
        return std::nullopt;
    }
    records::LotOpened lot;
    lot.lot = *first.reading.lot;
    lot.run = first.run->onFile.plan.run;
    lot.number = first.run->lotNumber;
    lot.dryer = first.run->dryer;
    lot.revisions = first.run->onFile.revisions;
    return lot;
}

records::Record recordOf(ProvingState& state, const PendingKeep& pending, const KeptReading& kept) {
    const auto* before = keptOf(state, kept);
    if (before != nullptr) {
        return records::CorrectionMade{before->id, kept.reading};
    }
    if (pending.corrects && kept.pass == 1) {
        return records::CorrectionMade{*pending.corrects, kept.reading};
    }
    if (!kept.refused) {
        return kept.reading;
    }
    records::ReadingRefused refused;
    refused.run = kept.reading.run;
    refused.lot = kept.reading.lot;
    refused.dryer = kept.reading.dryer;
    refused.instrument = kept.reading.instrument;
    refused.position = kept.reading.position;
    refused.evidence = kept.reading.evidence;
    refused.reasons = kept.reading.verdict ? kept.reading.verdict->reasons : std::vector<analytics::Reason>{};
    return refused;
}

/// A reading without a run has no verdict in the book; only its refusal has reasons.
void sendNext(Machine& m) {
    if (m.state.pending.empty() || m.state.pending.front().sent) {
        return;
    }
    auto& pending = m.state.pending.front();
    auto commit = std::make_shared<Commit>();
    commit->key = pending.key;
    if (const auto lot = lotToOpen(m.state, pending)) {
        commit->records.emplace_back(*lot);
    }
    for (const auto& kept : pending.readings) {
        commit->records.push_back(recordOf(m.state, pending, kept));
    }
    commit->trace = pending.trace;
    commit->spools = pending.spools;
    commit->spoolFile = pending.spoolFile;
    pending.sent = true;
    m.effects.emplace_back(*commit);
    pending.commit = std::move(commit);
}

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
        state.retakeFirst.reset();
        state.retakePlanned = false;
    } else if (kept.reading.reason == records::ReadingReason::retake && state.retakeFirst) {
        state.retakePlanned = true;
    }
}

void store(Machine& m, KeptReading kept) {
    auto& state = m.state;
    const bool shown = std::find(state.together.begin(), state.together.end(), kept.recording) != state.together.end();
    if (shown) {
        state.unitAsked = asksForUnit(kept);
        settleRetake(state, kept);
    }
    if (!kept.run) {
        state.unclaimed = kept.id;
    }
    if (auto* before = keptOf(state, kept)) {
        kept.corrected = true;
        *before = std::move(kept);
    } else {
        state.kept.push_back(std::move(kept));
    }
    if (state.kept.size() > kMostKept) {
        state.kept.erase(state.kept.begin());
    }
}

bool isTogether(const ProvingState& state, std::int64_t recording) {
    return std::find(state.together.begin(), state.together.end(), recording) != state.together.end();
}

/// A ride of the group still goes on, or one of its readings is still on its way.
bool groupIsOpen(const ProvingState& state) {
    const bool riding = std::any_of(state.probes.begin(), state.probes.end(), [&](const Probe& probe) {
        return probe.recording && probe.recording->stage != RideStage::watching &&
               isTogether(state, probe.recording->number);
    });
    const bool writing = std::any_of(state.pending.begin(), state.pending.end(), [&](const PendingKeep& pending) {
        return isTogether(state, pending.readings.front().recording);
    });
    return riding || writing;
}

} // namespace

void keep(Machine& m, PendingKeep pending) {
    assert(!pending.readings.empty());
    pending.key = m.nextNumber();
    pending.since = m.state.now;
    m.state.pending.push_back(std::move(pending));
    sendNext(m);
}

void showTogether(Machine& m) {
    auto& state = m.state;
    if (groupIsOpen(state)) {
        return;
    }
    std::vector<analytics::Verdict> verdicts;
    state.shownReadings.clear();
    for (const auto& kept : state.kept) {
        if (isTogether(state, kept.recording)) {
            state.shownReadings.push_back(kept.id);
            if (kept.reading.verdict) {
                verdicts.push_back(*kept.reading.verdict);
            }
        }
    }
    state.verdict.reset();
    if (!verdicts.empty()) {
        state.verdict = verdicts.size() == 1 ? verdicts.front() : analytics::joinReadings(verdicts);
        m.effects.emplace_back(ShowVerdict{state.verdict->word});
    }
}

void onCommitted(Machine& m, const Committed& event) {
    auto& state = m.state;
    if (state.pending.empty() || state.pending.front().key != event.key || !state.pending.front().commit) {
        return;
    }
    auto pending = std::move(state.pending.front());
    state.pending.erase(state.pending.begin());
    const auto& records = pending.commit->records;
    assert(event.ids.size() == records.size() && event.sequences.size() == records.size());
    const std::size_t first = records.size() - pending.readings.size();
    if (first > 0) {
        state.openedLots.push_back(*pending.readings.front().reading.lot);
    }
    for (std::size_t i = 0; i < pending.readings.size(); ++i) {
        auto kept = std::move(pending.readings[i]);
        const auto* correction = std::get_if<records::CorrectionMade>(&records[first + i]);
        kept.id = correction != nullptr ? correction->corrects : event.ids[first + i];
        kept.corrected = correction != nullptr;
        kept.sequence = event.sequences[first + i];
        kept.keptAt = state.now;
        store(m, std::move(kept));
    }
    showTogether(m);
    sendNext(m);
}

void onCommitFailed(Machine& m, const CommitFailed& event) {
    auto& pending = m.state.pending;
    if (!pending.empty() && pending.front().key == event.key && pending.front().sent) {
        pending.front().status = KeepStatus::failed;
        pending.front().failure = event.failure;
        pending.front().overdue = false;
    }
}

void onRetry(Machine& m) {
    auto& pending = m.state.pending;
    if (!pending.empty() && pending.front().status == KeepStatus::failed) {
        pending.front().status = KeepStatus::writing;
        pending.front().failure.reset();
        pending.front().since = m.state.now;
        m.effects.emplace_back(*pending.front().commit);
    }
}

void onRetake(Machine& m) {
    auto& state = m.state;
    if (mayRetake(state)) {
        state.retakePlanned = true;
        state.retakeFirst = std::make_shared<const KeptReading>(*shownReading(state));
        return;
    }
    const auto* reading = shownReading(state);
    const bool used = reading != nullptr &&
                      (reading->reading.retakeOf ||
                       std::find(state.retaken.begin(), state.retaken.end(), reading->id) != state.retaken.end());
    m.refuse(used ? RefusalCause::retakeUsedUp : RefusalCause::nothingToRetake);
}

} // namespace holdfast::kiosk::shop
