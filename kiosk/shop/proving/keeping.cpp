#include "kiosk/shop/proving/machine.hpp"

#include <algorithm>
#include <cassert>

/// The way of readings and actions into the book. Nothing is shown as true before it stands there.
namespace holdfast::kiosk::shop {
namespace {

records::Record refusedOf(const KeptReading& kept) {
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
records::Record recordOf(const ProvingState& state, const KeptReading& kept) {
    const auto* before = keptOf(state, kept);
    if (before != nullptr) {
        return records::CorrectionMade{before->id, kept.reading};
    }
    if (!kept.id.empty()) {
        return records::CorrectionMade{kept.id, kept.reading};
    }
    return kept.refused ? refusedOf(kept) : records::Record{kept.reading};
}

void sendNext(Machine& m) {
    if (m.state.pending.empty() || m.state.pending.front().sent) {
        return;
    }
    auto& pending = m.state.pending.front();
    auto commit = std::make_shared<Commit>();
    commit->key = pending.key;
    commit->records = lotsToOpen(m.state, pending);
    commit->firstReading = commit->records.size();
    commit->ids.resize(commit->firstReading);
    for (const auto& kept : pending.readings) {
        commit->records.push_back(recordOf(m.state, kept));
    }
    commit->ids.insert(commit->ids.end(), pending.entryIds.begin(), pending.entryIds.end());
    for (const auto& hold : pending.holds) {
        commit->records.emplace_back(hold.placed);
    }
    commit->records.insert(commit->records.end(), pending.brackets.begin(), pending.brackets.end());
    commit->records.insert(commit->records.end(), pending.missed.begin(), pending.missed.end());
    for (const auto& action : pending.actions) {
        commit->records.emplace_back(action);
    }
    if (pending.flash) {
        commit->records.emplace_back(*pending.flash);
    }
    for (auto& closed : lotsToClose(m.state, pending)) {
        commit->records.push_back(std::move(closed));
    }
    commit->trace = pending.trace;
    commit->spools = pending.spools;
    commit->spoolFile = pending.spoolFile;
    pending.sent = true;
    m.effects.emplace_back(*commit);
    pending.commit = std::move(commit);
}

void storeReadings(Machine& m, PendingKeep& pending, const Committed& event) {
    const auto& records = pending.commit->records;
    for (std::size_t i = 0; i < pending.readings.size(); ++i) {
        const auto at = pending.commit->firstReading + i;
        auto kept = std::move(pending.readings[i]);
        const auto* correction = std::get_if<records::CorrectionMade>(&records[at]);
        kept.id = correction != nullptr ? correction->corrects : event.ids[at];
        kept.corrected = correction != nullptr;
        kept.sequence = event.sequences[at];
        kept.keptAt = m.state.now;
        store(m, std::move(kept));
    }
}

} // namespace

void keep(Machine& m, PendingKeep pending) {
    assert(!pending.readings.empty() || !pending.actions.empty() || pending.flash || !pending.missed.empty() ||
           !pending.brackets.empty());
    holdWhatIsBad(m, pending);
    pending.key = m.nextNumber();
    pending.since = m.state.now;
    pending.dryer = m.state.floor.dryer;
    m.state.pending.push_back(std::move(pending));
    sendNext(m);
}

void onCommitted(Machine& m, const Committed& event) {
    auto& state = m.state;
    if (state.pending.empty() || state.pending.front().key != event.key || !state.pending.front().commit) {
        return;
    }
    auto pending = std::move(state.pending.front());
    state.pending.erase(state.pending.begin());
    assert(event.ids.size() == pending.commit->records.size() && event.sequences.size() == event.ids.size());
    noteLots(state, pending.commit->records);
    if (pending.flash) {
        onFlashKept(state);
    } else if (!pending.actions.empty()) {
        onActionKept(m, pending);
    } else if (!pending.readings.empty()) {
        storeReadings(m, pending, event);
        showTogether(m);
    }
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
    if (pending.empty() || pending.front().status != KeepStatus::failed) {
        return;
    }
    auto& front = pending.front();
    const bool refused = front.failure && front.failure->code == ledger::FailureCode::refused;
    front.status = KeepStatus::writing;
    front.failure.reset();
    front.since = m.state.now;
    if (refused) { // nothing was stored, and what a place wrote meanwhile stood in its way: it is put together anew
        front.sent = false;
        sendNext(m);
    } else {
        m.effects.emplace_back(*front.commit);
    }
}

} // namespace holdfast::kiosk::shop
