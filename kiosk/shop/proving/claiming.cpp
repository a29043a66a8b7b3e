#include "kiosk/ledger/trace_codec.hpp"
#include "kiosk/shop/proving/machine.hpp"
#include "kiosk/shop/proving/ride_rules.hpp"

#include <algorithm>

/// "Whose was this?": an earlier ride gets its run by one scan, and is judged for it.
namespace holdfast::kiosk::shop {
namespace {

constexpr MonotonicTime kNamedWithin{600'000'000}; // a scan names the ride before it without being asked (MEM)

bool hasTrace(const KeptReading& kept) {
    return std::holds_alternative<records::TraceSeen>(kept.reading.evidence);
}

bool isCard(const std::shared_ptr<const AnnouncedRun>& run) {
    return run && run->onFile.plan.kind == records::PlanKind::windowCard;
}

/// Readings of the last ride that the ticket may name: unannounced ones, or the card's on the screen.
std::vector<std::string> lastRide(const ProvingState& state, const AnnouncedRun& run) {
    const bool runTicket = run.onFile.plan.kind == records::PlanKind::run;
    std::vector<std::string> ids;
    for (const auto& kept : state.kept) {
        const bool young = state.now - kept.keptAt < kNamedWithin;
        const bool nobodys =
            !kept.run && state.unclaimed && (kept.id == *state.unclaimed || isIn(state.together, kept.recording));
        const bool cards = isCard(kept.run) && runTicket && state.verdict && isIn(state.shownReadings, kept.id);
        if (young && !kept.refused && !kept.fromSpool && hasTrace(kept) && (nobodys || cards)) {
            ids.push_back(kept.id);
        }
    }
    return ids;
}

/// The recording as it was, for the run that is now known.
Recording claimedRecording(Machine& m, const TraceLoaded& event, const records::TraceSeen& seen) {
    const auto* kept = keptById(m.state, event.reading);
    Recording recording;
    recording.number = kept != nullptr ? kept->recording : m.nextNumber();
    recording.instrument = event.instrument.name;
    recording.run = m.state.claim->run;
    recording.samples = event.samples;
    recording.position = event.taken.position;
    recording.placement = event.taken.placement;
    recording.reason = event.taken.reason;
    recording.stoppedByHand = seen.stoppedByHand;
    recording.cutOff = seen.cutOff;
    if (seen.unitConfirmed) {
        recording.answeredUnit = seen.step.unit;
    }
    return recording;
}

/// The one reading of the pass that is named, in the words of the trace's first entry but for the peaks.
std::optional<PendingKeep> judgedAgain(Machine& m, const TraceLoaded& event, const records::TraceSeen& seen) {
    auto recording = claimedRecording(m, event, seen);
    Probe probe;
    probe.name = event.instrument.name;
    probe.known = event.instrument;
    probe.scale = {seen.step.value, seen.step.unit == analytics::TemperatureUnit::celsius
                                        ? drivers::ReadingUnit::celsius
                                        : drivers::ReadingUnit::fahrenheit};
    probe.gapLimit = gapLimitOf(recording.samples);
    redraw(probe, recording);
    auto pending = pendingOf(m, probe.known, probe.scale, recording);
    std::erase_if(pending.readings, [&](const KeptReading& one) { return one.pass != seen.pass; });
    if (pending.readings.empty()) {
        return std::nullopt;
    }
    pending.trace.clear(); // it stands in the book already
    auto& reading = pending.readings.front();
    reading.id = event.reading;
    reading.reading.piece = event.taken.piece;
    std::get<records::TraceSeen>(reading.reading.evidence).sha256 = seen.sha256;
    return pending;
}

void doneWith(ProvingState& state, const std::string& reading) {
    std::erase(state.claim->readings, reading);
    if (state.claim->readings.empty()) {
        state.claim.reset();
    }
}

} // namespace

void onClaimPressed(Machine& m, const ClaimPressed& event) {
    auto& state = m.state;
    const bool listed = std::any_of(state.floor.unclaimed.begin(), state.floor.unclaimed.end(),
                                    [&](const auto& row) { return row.id == event.reading && !row.refused; });
    const auto* kept = keptById(state, event.reading);
    if (!listed && (kept == nullptr || kept->run || kept->refused)) {
        m.refuse(RefusalCause::rideNotFound);
        return;
    }
    state.claiming = event.reading;
}

std::vector<std::string> earlierToName(const ProvingState& state, const AnnouncedRun& run) {
    if (state.claim) {
        return {}; // one after the other
    }
    if (state.claiming) {
        return {*state.claiming};
    }
    return rideIsOn(state) ? std::vector<std::string>{} : lastRide(state, run);
}

void nameEarlier(Machine& m, std::vector<std::string> readings) {
    auto& state = m.state;
    if (readings.empty()) {
        return;
    }
    state.claiming.reset();
    state.unclaimed.reset();
    if (!rideIsOn(state)) {
        state.together.clear();
    }
    for (const auto& id : readings) {
        m.effects.emplace_back(LoadTrace{id});
    }
    state.claim = Claim{std::move(readings), state.run};
}

void onTraceLoaded(Machine& m, const TraceLoaded& event) {
    auto& state = m.state;
    const auto* seen = std::get_if<records::TraceSeen>(&event.taken.evidence);
    if (!state.claim || !isIn(state.claim->readings, event.reading)) {
        return;
    }
    auto pending = seen != nullptr && !event.samples.empty() ? judgedAgain(m, event, *seen) : std::nullopt;
    doneWith(state, event.reading);
    if (!pending) {
        m.refuse(RefusalCause::traceUnreadable);
        return;
    }
    const auto number = pending->readings.front().recording;
    if (!rideIsOn(state) && !isIn(state.together, number)) {
        state.together.push_back(number);
    }
    keep(m, std::move(*pending));
}

void onTraceNotLoaded(Machine& m, const TraceNotLoaded& event) {
    if (m.state.claim && isIn(m.state.claim->readings, event.reading)) {
        doneWith(m.state, event.reading);
        m.refuse(event.cause);
    }
}

} // namespace holdfast::kiosk::shop
