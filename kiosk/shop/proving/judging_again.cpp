#include "kiosk/shop/proving/machine.hpp"
#include "kiosk/shop/proving/ride_rules.hpp"

/// Rides judged from what was kept of them: found after a power cut, or in the unit that was answered.
namespace holdfast::kiosk::shop {
namespace {

/// Id of the entry that a spool's reading corrects; empty: none.
std::string correctedBy(const SpoolFound& event, const KeptReading& reading) {
    if (reading.run == nullptr || event.run == nullptr || reading.run->onFile.plan.run == event.run->onFile.plan.run) {
        return event.corrects.value_or(std::string{});
    }
    for (const auto& other : event.others) {
        if (other.run && other.run->onFile.plan.run == reading.run->onFile.plan.run) {
            return other.corrects.value_or(std::string{});
        }
    }
    return {};
}

} // namespace

void redraw(const Probe& probe, Recording& recording) {
    recording.drawn.clear();
    const auto scale = scaleOf(probe.scale, recording.answeredUnit);
    std::optional<MonotonicTime> before;
    for (const auto& sample : recording.samples) {
        if (const auto t = usableValue(sample, scale, probe.known ? &*probe.known : nullptr)) {
            const bool afterGap = before && sample.at - *before > probe.gapLimit;
            recording.drawn.push_back({analytics::Duration{sample.at - recording.samples.front().at}, *t, afterGap});
            before = sample.at;
        }
    }
}

void onSpoolFound(Machine& m, const SpoolFound& event) {
    Recording recording;
    recording.number = m.nextNumber();
    recording.instrument = event.probe;
    recording.run = withKnownLot(m, event.run);
    for (const auto& other : event.others) {
        recording.others.push_back(withKnownLot(m, other.run));
    }
    recording.samples = event.samples;
    recording.position = event.position;
    recording.cutOff = true;
    Probe probe;
    probe.name = event.probe;
    probe.scale = event.scale;
    if (const auto* known = m.instrumentNamed(event.probe)) {
        probe.known = *known;
    }
    probe.gapLimit = gapLimitOf(recording.samples);
    redraw(probe, recording);
    auto pending = pendingOf(m, probe.known, probe.scale, recording);
    for (auto& reading : pending.readings) {
        reading.fromSpool = true;
        reading.id = reading.pass == 1 ? correctedBy(event, reading) : std::string{};
    }
    pending.spoolFile = event.fileName;
    keep(m, std::move(pending));
}

void onUnitAnswered(Machine& m, const UnitAnswered& event) {
    const auto answered = [&](Probe& probe, Recording& recording) {
        probe.answeredUnit = event.unit;
        recording.answeredUnit = event.unit;
        redraw(probe, recording);
        judge(m, probe, recording);
        m.state.unitAsked = false;
    };
    for (auto& probe : m.state.probes) {
        auto* recording = probe.recording && probe.recording->judged ? &*probe.recording
                          : probe.ended                              ? &*probe.ended
                                                                     : nullptr;
        if (m.state.unitAsked && recording != nullptr) {
            answered(probe, *recording);
            return;
        }
    }
    m.refuse(RefusalCause::nothingToAnswer);
}

} // namespace holdfast::kiosk::shop
