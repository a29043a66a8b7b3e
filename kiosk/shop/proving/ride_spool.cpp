#include "kiosk/shop/proving/machine.hpp"
#include "kiosk/shop/proving/ride_rules.hpp"

/// What is on the disk while a ride is on, against a power cut.
namespace holdfast::kiosk::shop {
namespace {

/// Id of the entry that holds the first reading of this recording for the run, if it is kept already.
std::optional<std::string> keptIdOf(const ProvingState& state, std::int64_t recording, const AnnouncedRun* run) {
    for (const auto& kept : state.kept) {
        const bool same = run == nullptr || !kept.run || kept.run->onFile.plan.run == run->onFile.plan.run;
        if (kept.recording == recording && kept.pass == 1 && same) {
            return kept.id;
        }
    }
    return std::nullopt;
}

void append(Machine& m, Recording& recording) {
    if (recording.spool != 0 && recording.spooled < recording.samples.size()) {
        const auto from = recording.samples.begin() + static_cast<std::ptrdiff_t>(recording.spooled);
        m.effects.emplace_back(AppendSpool{recording.spool, {from, recording.samples.end()}});
        recording.spooled = recording.samples.size();
    }
}

SpoolTrouble troubleOf(ledger::FailureCode code) {
    switch (code) {
    case ledger::FailureCode::diskFull:
        return SpoolTrouble::diskFull;
    case ledger::FailureCode::folderReadOnly:
    case ledger::FailureCode::readOnlyBook:
        return SpoolTrouble::readOnly;
    default:
        return SpoolTrouble::other;
    }
}

} // namespace

void openSpool(Machine& m, const Probe& probe, Recording& recording) {
    recording.spool = m.nextNumber();
    recording.spools.push_back(recording.spool);
    recording.spooled = recording.samples.size();
    recording.spoolTriedAt = m.state.now;
    OpenSpool open;
    open.spool = recording.spool;
    open.probe = probe.name;
    open.scale = scaleOf(probe.scale, recording.answeredUnit);
    open.corrects = keptIdOf(m.state, recording.number, recording.run.get());
    open.position = recording.position;
    open.samples = recording.samples;
    if (recording.run) {
        open.run = recording.run->onFile.plan.run;
    }
    for (const auto& other : recording.others) {
        open.others.push_back({other->onFile.plan.run, keptIdOf(m.state, recording.number, other.get())});
    }
    m.effects.emplace_back(std::move(open));
}

void feedSpool(Machine& m, Probe& probe) {
    if (!probe.recording) {
        return;
    }
    auto& recording = *probe.recording;
    append(m, recording);
    if (recording.spoolTrouble != SpoolTrouble::none && recording.stage != RideStage::watching &&
        m.state.now - recording.spoolTriedAt >= kSpoolRetryAfter) {
        openSpool(m, probe, recording);
        recording.spoolTrouble = SpoolTrouble::none;
    }
}

void reopenSpool(Machine& m, const SpoolFailed& event) {
    for (auto& probe : m.state.probes) {
        if (probe.recording && probe.recording->spool == event.spool && event.spool != 0) {
            probe.recording->spoolTrouble = troubleOf(event.failure.code);
            probe.recording->spool = 0;
            probe.recording->spoolTriedAt = m.state.now;
        }
    }
}

void discardRecording(Machine& m, Probe& probe) {
    for (const auto spool : probe.recording->spools) {
        m.effects.emplace_back(DiscardSpool{spool});
    }
    probe.recording.reset();
}

} // namespace holdfast::kiosk::shop
