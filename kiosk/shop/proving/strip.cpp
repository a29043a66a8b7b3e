#include "kiosk/shop/proving/machine.hpp"

#include <algorithm>

namespace holdfast::kiosk::shop {
namespace {

using analytics::InstrumentKind;

const KnownInstrument* stripNamed(const ProvingState& state, const std::string& name) {
    const auto found =
        std::find_if(state.instruments.begin(), state.instruments.end(), [&](const KnownInstrument& one) {
            return one.kind == InstrumentKind::strip && one.calibration && (name.empty() || one.name == name);
        });
    return found == state.instruments.end() ? nullptr : &*found;
}

int stepsOf(const StripEntry& entry) {
    const auto& strip = entry.strip.calibration->instrument().strip;
    return strip ? static_cast<int>(strip->steps.size()) : 0;
}

/// Index of the first untouched step; absent when the top one is dark, or is the unsure one.
std::optional<int> firstLightOf(const StripEntry& entry) {
    const int light = *entry.lastDark + (entry.nextUnsure ? 2 : 1);
    return light < stepsOf(entry) ? std::optional{light} : std::nullopt;
}

analytics::StripReading readingOf(const StripEntry& entry) {
    analytics::StripReading reading;
    if (*entry.lastDark >= 0) {
        reading.lastDark = static_cast<std::size_t>(*entry.lastDark);
    }
    if (const auto light = firstLightOf(entry)) {
        reading.firstLight = static_cast<std::size_t>(*light);
    }
    reading.usedBefore = entry.usedBefore;
    reading.allLightBefore = entry.allLightBefore;
    return reading;
}

analytics::AuthoredTemperature stepOf(const StripEntry& entry, int index) {
    const auto at = static_cast<std::size_t>(index);
    if (at < entry.strip.stripSteps.size()) {
        return entry.strip.stripSteps[at];
    }
    return {entry.strip.calibration->instrument().strip->steps[at].celsius(), analytics::TemperatureUnit::celsius};
}

records::StripSeen seenOf(const StripEntry& entry) {
    records::StripSeen seen;
    if (*entry.lastDark >= 0) {
        seen.lastDark = stepOf(entry, *entry.lastDark);
    }
    if (const auto light = firstLightOf(entry)) {
        seen.firstLight = stepOf(entry, *light);
    }
    seen.allLightBefore = entry.allLightBefore;
    seen.usedBefore = entry.usedBefore;
    seen.number = entry.number;
    return seen;
}

bool isOf(const KeptReading& kept, std::int64_t number) {
    const auto* seen = std::get_if<records::StripSeen>(&kept.reading.evidence);
    return seen != nullptr && seen->number == number;
}

/// On its way into the book, which does not yet know it.
bool isBeingKept(const ProvingState& state, std::int64_t number) {
    return std::any_of(state.pending.begin(), state.pending.end(), [&](const PendingKeep& pending) {
        return std::any_of(pending.readings.begin(), pending.readings.end(),
                           [&](const KeptReading& kept) { return isOf(kept, number); });
    });
}

const KnownInstrument* packWith(const ProvingState& state, std::int64_t number) {
    const auto found =
        std::find_if(state.instruments.begin(), state.instruments.end(), [&](const KnownInstrument& one) {
            return one.pack && number >= one.pack->firstNumber && number - one.pack->firstNumber < one.pack->count;
        });
    return found == state.instruments.end() ? nullptr : &*found;
}

} // namespace

bool onStripLabel(Machine& m, std::uint64_t number) {
    auto& state = m.state;
    const auto single = static_cast<std::int64_t>(number);
    if (single < 0 || packWith(state, single) == nullptr) {
        return false;
    }
    if (!state.run) {
        m.refuse(RefusalCause::noRunAnnounced);
    } else if (isBeingKept(state, single)) {
        m.refuse(RefusalCause::stripUsedBefore, {}, number);
    } else {
        state.lookingUpStrip = single;
        m.effects.emplace_back(LookUpStrip{single});
    }
    return true;
}

void onStripLookedUp(Machine& m, const StripLookedUp& event) {
    auto& state = m.state;
    if (state.lookingUpStrip != event.number) {
        return; // something else was opened since
    }
    state.lookingUpStrip.reset();
    const auto number = static_cast<std::uint64_t>(event.number);
    if (event.unreadable) {
        m.refuse(RefusalCause::bookUnreadable, {}, number);
    } else if (event.used || isBeingKept(state, event.number)) {
        m.refuse(RefusalCause::stripUsedBefore, {}, number);
    } else if (const auto* pack = packWith(state, event.number)) {
        openStrip(m, pack->name, event.number);
    }
}

void openStrip(Machine& m, const std::string& name, std::optional<std::int64_t> number) {
    if (!m.state.run) {
        m.refuse(RefusalCause::noRunAnnounced);
        return;
    }
    const auto* strip = stripNamed(m.state, name);
    if (strip == nullptr) {
        m.refuse(RefusalCause::stripOnly, name);
        return;
    }
    StripEntry entry;
    entry.strip = *strip;
    entry.number = number;
    entry.position = positionDue(m.state, entry.position, false);
    closePages(m.state);
    m.state.strip = std::move(entry);
}

void touchStrip(Machine& m, int lastDark) {
    if (!m.state.strip || lastDark < -1 || lastDark >= stepsOf(*m.state.strip)) {
        m.refuse(RefusalCause::stripNotChosen);
        return;
    }
    m.state.strip->lastDark = lastDark;
    m.state.strip->nextUnsure = false;
    previewStrip(m);
}

void previewStrip(Machine& m) {
    auto& strip = m.state.strip;
    if (!strip) {
        return;
    }
    if (const auto* known = m.instrumentNamed(strip->strip.name); known != nullptr && known->calibration) {
        strip->strip = placedAs(*known, strip->placement);
    }
    strip->preview.reset();
    if (strip->lastDark && m.state.run) {
        strip->preview = analytics::judgeStrip(m.state.run->onFile.layers, readingOf(*strip), *strip->strip.calibration,
                                               m.state.guard, dwellNow(m.state));
    }
}

void keepStrip(Machine& m) {
    auto& strip = m.state.strip;
    if (!strip || !strip->lastDark || !m.state.run || !strip->preview) {
        m.refuse(RefusalCause::stripNotChosen);
        return;
    }
    KeptReading kept;
    kept.recording = m.nextNumber();
    kept.run = m.state.run;
    kept.instrumentName = strip->strip.name;
    describeReading(kept.reading, m.state.run.get(), &strip->strip, strip->strip.name, *strip->strip.calibration,
                    m.state.guard);
    kept.reading.position = strip->position;
    kept.takenAt = m.state.now;
    notePiece(kept, takePieces(m.state, {kept.run}));
    kept.reading.reason = reasonNow(m.state);
    kept.reading.evidence = seenOf(*strip);
    kept.reading.verdict = strip->preview;
    kept.refused = strip->preview->word == analytics::Word::refused;
    strip.reset();
    clearVerdict(m);
    m.state.together = {kept.recording};
    PendingKeep pending;
    pending.readings.push_back(std::move(kept));
    keep(m, std::move(pending));
}

} // namespace holdfast::kiosk::shop
