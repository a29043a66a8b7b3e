#include "kiosk/shop/proving/machine.hpp"
#include "kiosk/shop/proving/ride_rules.hpp"

#include <algorithm>
#include <cstdio>

/// Readings that are typed: a spot thermometer's held maximum, a surface gun's shot.
namespace holdfast::kiosk::shop {
namespace {

using analytics::AuthoredTemperature;
using analytics::InstrumentKind;

bool isByHand(const KnownInstrument& one) {
    return (one.kind == InstrumentKind::spot || one.kind == InstrumentKind::gun) && one.calibration;
}

const KnownInstrument* handNamed(const ProvingState& state, const std::string& name) {
    const auto found =
        std::find_if(state.instruments.begin(), state.instruments.end(),
                     [&](const KnownInstrument& one) { return isByHand(one) && (name.empty() || one.name == name); });
    return found == state.instruments.end() ? nullptr : &*found;
}

bool isSpot(const HandEntry& entry) {
    return entry.instrument.kind == InstrumentKind::spot;
}

std::optional<RefusalCause> missingOf(const HandEntry& entry) {
    if (!entry.value) {
        return RefusalCause::valueMissing;
    }
    if (!isPossible(*entry.value)) {
        return RefusalCause::valueImpossible;
    }
    if (isSpot(entry) && !entry.beforeUse) {
        return RefusalCause::beforeUseMissing;
    }
    return isSpot(entry) && !isPossible(*entry.beforeUse) ? std::optional{RefusalCause::valueImpossible} : std::nullopt;
}

std::string impossibleIn(const HandEntry& entry) {
    const bool first = entry.value && !isPossible(*entry.value);
    const auto& which = first ? entry.value : entry.beforeUse;
    return which && !isPossible(*which) ? typedText(*which) : std::string{};
}

analytics::Verdict judged(const ProvingState& state, const HandEntry& entry, const AnnouncedRun& run) {
    const auto& plan = run.onFile.layers;
    const auto& calibration = *entry.instrument.calibration;
    const auto dwell = dwellNow(state);
    if (isSpot(entry)) {
        analytics::SpotReading reading;
        reading.held = entry.value->temperature();
        reading.beforeUse = entry.beforeUse->temperature();
        return analytics::judgeSpot(plan, reading, calibration, state.guard, dwell);
    }
    return analytics::judgeSurface(plan, {entry.value->temperature(), entry.place}, calibration, state.guard, dwell);
}

std::vector<std::shared_ptr<const AnnouncedRun>> runsOnBelt(const ProvingState& state) {
    std::vector<std::shared_ptr<const AnnouncedRun>> runs{state.run};
    const auto others = othersOnBelt(state);
    runs.insert(runs.end(), others.begin(), others.end());
    return runs;
}

records::Evidence seenOf(const HandEntry& entry) {
    if (isSpot(entry)) {
        return records::SpotSeen{*entry.value, entry.beforeUse};
    }
    return records::GunSeen{*entry.value, entry.place};
}

KeptReading readingOf(const ProvingState& state, const HandEntry& entry,
                      const std::shared_ptr<const AnnouncedRun>& run) {
    KeptReading kept;
    kept.run = run;
    kept.instrumentName = entry.instrument.name;
    describeReading(kept.reading, run.get(), &entry.instrument, entry.instrument.name, *entry.instrument.calibration,
                    state.guard);
    kept.reading.position = entry.position;
    kept.reading.evidence = seenOf(entry);
    kept.reading.verdict = judged(state, entry, *run);
    kept.refused = kept.reading.verdict->word == analytics::Word::refused;
    return kept;
}

} // namespace

bool isPossible(const AuthoredTemperature& typed) {
    const auto t = typed.temperature();
    return t.isFinite() && analytics::atLeast(t, kColdestPossible) && analytics::atMost(t, kHottestPossible);
}

std::string typedText(const AuthoredTemperature& typed) {
    char text[32];
    std::snprintf(text, sizeof text, "%g", typed.value);
    return std::string{text} + (typed.unit == analytics::TemperatureUnit::celsius ? " °C" : " °F");
}

std::optional<analytics::Duration> dwellNow(const ProvingState& state) {
    return state.floor.dryer ? dwellOf(*state.floor.dryer) : std::nullopt;
}

void closePages(ProvingState& state) {
    state.strip.reset();
    state.hand.reset();
    state.flash.reset();
    state.lookingUpStrip.reset();
}

void openHand(Machine& m, const std::string& name) {
    if (!m.state.run) {
        m.refuse(RefusalCause::noRunAnnounced);
        return;
    }
    const auto* instrument = handNamed(m.state, name);
    if (instrument == nullptr) {
        m.refuse(RefusalCause::byHandOnly, name);
        return;
    }
    HandEntry entry;
    entry.instrument = *instrument;
    entry.position = positionDue(m.state, entry.position, false);
    closePages(m.state);
    m.state.hand = std::move(entry);
    previewHand(m);
}

void previewHand(Machine& m) {
    auto& hand = m.state.hand;
    if (!hand) {
        return;
    }
    if (const auto* known = m.instrumentNamed(hand->instrument.name); known != nullptr && isByHand(*known)) {
        hand->instrument = placedAs(*known, hand->placement);
    }
    hand->missing = missingOf(*hand);
    hand->preview.reset();
    if (hand->missing || !m.state.run) {
        return;
    }
    for (const auto& run : runsOnBelt(m.state)) {
        auto own = judged(m.state, *hand, *run);
        if (!hand->preview || rankOf(own.word) < rankOf(hand->preview->word)) {
            hand->preview = std::move(own);
        }
    }
}

void keepHand(Machine& m) {
    auto& state = m.state;
    state.refusal.reset();
    if (!state.hand || !state.run) {
        m.refuse(RefusalCause::nothingEntered);
        return;
    }
    previewHand(m);
    if (state.hand->missing) {
        m.refuse(*state.hand->missing, impossibleIn(*state.hand));
        return;
    }
    const auto number = m.nextNumber();
    const auto pieces = takePieces(state, runsOnBelt(state));
    const auto reason = reasonNow(state);
    PendingKeep pending;
    for (const auto& run : runsOnBelt(state)) {
        auto kept = readingOf(state, *state.hand, run);
        kept.recording = number;
        kept.takenAt = state.now;
        notePiece(kept, pieces);
        kept.reading.reason = reason;
        pending.readings.push_back(std::move(kept));
    }
    state.hand.reset();
    clearVerdict(m);
    state.together = {number};
    keep(m, std::move(pending));
}

} // namespace holdfast::kiosk::shop
