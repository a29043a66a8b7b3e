#include "kiosk/shop/proving/machine.hpp"

#include <algorithm>

namespace holdfast::kiosk::shop {
namespace {

using drivers::LinkFault;
using drivers::LinkState;
using drivers::SampleFlag;

ProbeTrouble troubleOfFault(LinkFault fault, ProbeTrouble otherwise) {
    switch (fault) {
    case LinkFault::none:
        return otherwise;
    case LinkFault::portMissing:
        return ProbeTrouble::absent;
    case LinkFault::portBusy:
        return ProbeTrouble::portBusy;
    case LinkFault::permission:
        return ProbeTrouble::permission;
    case LinkFault::unplugged:
        return ProbeTrouble::unplugged;
    case LinkFault::wrongDevice:
        return ProbeTrouble::wrongDevice;
    case LinkFault::silent:
        return ProbeTrouble::silent;
    case LinkFault::garbled:
        return ProbeTrouble::garbled;
    case LinkFault::wrongBaud:
        return ProbeTrouble::wrongBaud;
    case LinkFault::wrongUnit:
        return ProbeTrouble::wrongUnit;
    }
    return otherwise;
}

ProbeTrouble troubleOfReady(const Probe& probe) {
    if (has(probe.flags, SampleFlag::openCircuit)) {
        return ProbeTrouble::openCircuit;
    }
    if (has(probe.flags, SampleFlag::outOfRange)) {
        return ProbeTrouble::outOfRange;
    }
    if (has(probe.flags, SampleFlag::instrumentFault)) {
        return ProbeTrouble::instrumentFault;
    }
    if (has(probe.flags, SampleFlag::unreadable)) {
        return ProbeTrouble::unreadable;
    }
    if (probe.impossible) {
        return ProbeTrouble::impossibleTemperature;
    }
    if (probe.lost) {
        return ProbeTrouble::silent;
    }
    return probe.known && probe.known->calibration ? ProbeTrouble::none : ProbeTrouble::notDescribed;
}

ProbeTrouble troubleOf(const Probe& probe) {
    switch (probe.link.state) {
    case LinkState::absent:
        return troubleOfFault(probe.link.cause, ProbeTrouble::absent);
    case LinkState::opening:
        return troubleOfFault(probe.link.cause, ProbeTrouble::opening);
    case LinkState::identifying:
        return troubleOfFault(probe.link.cause, ProbeTrouble::identifying);
    case LinkState::lost:
        return troubleOfFault(probe.link.cause, ProbeTrouble::silent);
    case LinkState::ready:
        return troubleOfReady(probe);
    }
    return ProbeTrouble::absent;
}

} // namespace

analytics::Temperature indicated(const drivers::Sample& sample, const drivers::CountScale& scale) {
    const double value = static_cast<double>(sample.counts) * scale.step;
    return scale.unit == drivers::ReadingUnit::celsius ? analytics::Temperature::fromCelsius(value)
                                                       : analytics::Temperature::fromFahrenheit(value);
}

KnownInstrument placedAs(KnownInstrument known, const std::optional<analytics::Placement>& placement) {
    if (known.calibration && placement && known.calibration->instrument().placement != *placement) {
        auto instrument = known.calibration->instrument();
        instrument.placement = *placement;
        instrument.ownPlacement.reset();
        known.calibration =
            std::make_shared<const analytics::Calibration>(std::move(instrument), known.calibration->today());
    }
    return known;
}

void refreshProbe(Machine& m, Probe& probe) {
    const auto* known = m.instrumentNamed(probe.name);
    probe.known = known != nullptr ? std::optional{*known} : std::nullopt;
    probe.trouble = troubleOf(probe);
}

void onLink(Machine& m, const LinkChanged& event) {
    Probe* probe = m.probeNamed(event.probe);
    if (probe == nullptr) {
        m.state.probes.emplace_back();
        probe = &m.state.probes.back();
        probe->name = event.probe;
    }
    probe->link = event.status;
    probe->scale = event.scale;
    if (event.status.state == LinkState::absent || event.status.state == LinkState::opening) {
        probe->answeredUnit.reset(); // another instrument, or the same set otherwise, may come back
        probe->flags = SampleFlag::none;
    }
    refreshProbe(m, *probe);
    refreshWindow(m);
}

void onInstruments(Machine& m, const InstrumentsLoaded& event) {
    m.state.instruments = event.instruments;
    m.state.families = event.families;
    m.state.guard = event.guard;
    m.state.watch.today = event.today;
    for (auto& probe : m.state.probes) {
        refreshProbe(m, probe);
    }
    refreshWindow(m);
    previewStrip(m);
    previewHand(m);
    previewFlash(m);
}

} // namespace holdfast::kiosk::shop
