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
    return seen;
}

} // namespace

void openStrip(Machine& m, const std::string& name) {
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
        strip->strip = *known;
    }
    strip->preview.reset();
    if (strip->lastDark && m.state.run) {
        strip->preview = analytics::judgeStrip(m.state.run->onFile.layers, readingOf(*strip), *strip->strip.calibration,
                                               m.state.guard);
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
    kept.reading.reason = takeReason(m.state);
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
