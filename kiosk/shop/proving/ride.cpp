#include "kiosk/shop/proving/machine.hpp"
#include "kiosk/shop/proving/ride_rules.hpp"

#include <algorithm>
#include <iterator>

namespace holdfast::kiosk::shop {
namespace {

using analytics::Temperature;

void draw(const Probe& probe, Recording& recording, const drivers::Sample& sample, Temperature t) {
    const bool afterGap = !recording.drawn.empty() && sample.at - recording.lastValidAt > probe.gapLimit;
    recording.drawn.push_back({analytics::Duration{sample.at - recording.samples.front().at}, t, afterGap});
    recording.lastValidAt = sample.at;
}

void start(Machine& m, Probe& probe) {
    Recording recording;
    recording.number = m.nextNumber();
    recording.instrument = probe.name;
    recording.run = m.state.run;
    recording.others = othersOnBelt(m.state);
    recording.answeredUnit = probe.answeredUnit;
    recording.position = probe.position;
    recording.placement = probe.placement;
    recording.reason = m.state.nextReason;
    recording.startLevel = levelBefore(probe).value_or(Temperature::fromCelsius(0));
    recording.samples = preRoll(probe);
    const auto scale = scaleOf(probe.scale, probe.answeredUnit);
    for (const auto& sample : recording.samples) {
        if (const auto t = usableValue(sample, scale, probe.known ? &*probe.known : nullptr)) {
            draw(probe, recording, sample, *t);
        }
    }
    openSpool(m, probe, recording);
    probe.recording = std::move(recording);
    probe.ended.reset();
}

void planRetake(ProvingState& state, Recording& recording) {
    if (!state.retakePlanned) {
        return;
    }
    for (const auto& first : state.retakeFirsts) {
        recording.retakes.push_back({first->run->onFile.plan.run, first->id,
                                     std::make_shared<const analytics::Verdict>(*first->reading.verdict)});
        state.reasonTogether = records::ReadingReason::retake;
    }
}

/// From now on it is a ride, no longer a hand that warmed the probe.
void becomeRide(Machine& m, Probe& probe, Recording& recording) {
    auto& state = m.state;
    recording.isRide = true;
    recording.rideAt = state.now;
    const bool alone = std::none_of(state.probes.begin(), state.probes.end(), [&](const Probe& other) {
        return &other != &probe && other.recording && other.recording->isRide &&
               other.recording->stage != RideStage::watching;
    });
    if (alone) {
        state.together.clear();
        state.reasonTogether = reasonNow(state);
        planRetake(state, recording);
        clearVerdict(m);
        state.unclaimed.reset();
    }
    recording.reason = state.reasonTogether;
    state.together.push_back(recording.number);
    std::vector<std::shared_ptr<const AnnouncedRun>> runs{recording.run};
    runs.insert(runs.end(), recording.others.begin(), recording.others.end());
    recording.pieces = takePieces(state, runs);
    recording.position = positionDue(state, recording.position, probe.positionChosen);
    probe.positionChosen = false;
}

void end(Probe& probe) {
    probe.ended = std::move(probe.recording);
    probe.recording.reset();
    probe.lastMinute.clear();
}

/// Lifts the peaks by what three values running reached, so that a spike is no peak.
void followPeak(Recording& recording, Temperature t) {
    recording.lastThree.push_back(t);
    if (recording.lastThree.size() > 3) {
        recording.lastThree.erase(recording.lastThree.begin());
    }
    if (recording.lastThree.size() == 3) {
        const auto sure = *std::min_element(recording.lastThree.begin(), recording.lastThree.end());
        recording.peak = std::max(recording.peak, sure);
        recording.controlPeak = std::max(recording.controlPeak, sure);
    }
}

/// True if the condition has held for five seconds.
bool heldForFive(Recording& recording, bool holds, MonotonicTime at) {
    if (!holds) {
        recording.belowSince.reset();
        return false;
    }
    recording.belowSince = recording.belowSince.value_or(at);
    return at - *recording.belowSince >= kFallenFor;
}

void judgeAndWatch(Machine& m, Probe& probe, Temperature t) {
    judge(m, probe, *probe.recording);
    if (analytics::atMost(t, kRideFrom)) {
        end(probe);
        return;
    }
    probe.recording->stage = RideStage::watching;
    probe.recording->lowest = t;
    probe.recording->belowSince.reset();
}

/// Heat came again after the verdict: the ride goes on, and will be judged as a whole once more.
void heatAgain(Machine& m, Probe& probe, Temperature t) {
    auto& recording = *probe.recording;
    recording.stage = RideStage::riding;
    recording.heatCameAgain = true;
    recording.controlPeak = t;
    recording.belowSince.reset();
    openSpool(m, probe, recording);
}

void watch(Machine& m, Probe& probe, Temperature t) {
    auto& recording = *probe.recording;
    recording.lowest = std::min(recording.lowest.value_or(t), t);
    if (analytics::atMost(t, kRideFrom)) {
        end(probe);
        return;
    }
    const auto sure = *std::min_element(recording.lastThree.begin(), recording.lastThree.end());
    if (sure > gelLowOf(recording.run.get()) && sure >= *recording.lowest + kStartRise) {
        heatAgain(m, probe, t);
    }
}

void ride(Machine& m, Probe& probe, MonotonicTime at, Temperature t) {
    auto& recording = *probe.recording;
    if (!recording.isRide && recording.peak >= kRideFrom) {
        becomeRide(m, probe, recording);
    }
    if (!recording.isRide) {
        if (heldForFive(recording, t < recording.startLevel + kStartRise, at)) {
            discardRecording(m, probe);
        }
        return;
    }
    const bool long5 = heldForFive(recording, analytics::atMost(t, recording.controlPeak - kFall), at);
    recording.stage = recording.belowSince ? RideStage::fallen : RideStage::riding;
    const bool passed = recording.peak > kPassFrom;
    const auto calibration = calibrationFor(probe.known, probe.name);
    const bool over = !passed || holdsAreOver(recording.run.get(), *calibration, m.state.guard, t);
    if ((long5 && over) || (passed && analytics::atMost(t, kRideFrom))) {
        judgeAndWatch(m, probe, t);
    }
}

void feedRecording(Machine& m, Probe& probe, const drivers::Sample& sample, std::optional<Temperature> t) {
    auto& recording = *probe.recording;
    recording.samples.push_back(sample);
    if (!t) {
        return;
    }
    draw(probe, recording, sample, *t);
    recording.lost = false;
    followPeak(recording, *t);
    if (recording.stage == RideStage::watching) {
        watch(m, probe, *t);
    } else {
        ride(m, probe, sample.at, *t);
    }
}

void feed(Machine& m, Probe& probe, const drivers::Sample& sample) {
    const auto scale = scaleOf(probe.scale, probe.answeredUnit);
    const auto t = usableValue(sample, scale, probe.known ? &*probe.known : nullptr);
    probe.sampleAt = sample.at;
    probe.flags = sample.flags;
    const auto raw = indicated(sample, scale);
    probe.impossible = sample.flags == drivers::SampleFlag::none && (raw < kColdestPossible || raw > kHottestPossible);
    if (t) {
        probe.value = t;
        probe.valueAt = sample.at;
        probe.lost = false;
        probe.waitsForCool = probe.waitsForCool && *t > kRideFrom;
    }
    if (probe.recording) {
        feedRecording(m, probe, sample, t);
        return;
    }
    if (probe.fromBath) {
        feedFromBath(probe, sample, t);
    } else {
        probe.lastMinute.push_back(sample);
        keepLastMinute(probe.lastMinute);
    }
    probe.gapLimit = gapLimitOf(probe.lastMinute);
    if (t && mayStart(probe, *t) && rideStarts(probe)) {
        probe.fromBath = false;
        start(m, probe);
    }
}

void cutOff(Machine& m, Probe& probe) {
    auto& recording = *probe.recording;
    if (recording.stage != RideStage::watching) {
        if (!recording.isRide) {
            discardRecording(m, probe);
            return;
        }
        recording.cutOff = true;
        judge(m, probe, recording);
    }
    end(probe);
}

void watchAge(Machine& m, Probe& probe) {
    const auto now = m.state.now;
    if (probe.valueAt && now - *probe.valueAt > probe.gapLimit) {
        probe.lost = true;
    }
    if (!probe.recording) {
        return;
    }
    auto& recording = *probe.recording;
    if (probe.lost && !recording.lost) {
        recording.lost = true;
        recording.lostSince = now;
        if (recording.spool != 0) {
            m.effects.emplace_back(SyncSpool{recording.spool});
        }
    }
    const bool tooLong = recording.lost && now - recording.lostSince >= kLostTooLong;
    if (tooLong || now - recording.samples.front().at >= kLongestRide) {
        cutOff(m, probe);
    }
}

} // namespace

void onSamples(Machine& m, const SamplesArrived& event) {
    Probe* probe = m.probeNamed(event.probe);
    if (probe == nullptr) {
        m.state.probes.emplace_back();
        probe = &m.state.probes.back();
        probe->name = event.probe;
    }
    for (const auto& sample : event.samples) {
        m.state.now = std::max(m.state.now, sample.at);
        feed(m, *probe, sample);
    }
    feedSpool(m, *probe);
    refreshProbe(m, *probe);
}

void watchAges(Machine& m) {
    for (auto& probe : m.state.probes) {
        watchAge(m, probe);
        refreshProbe(m, probe);
    }
    for (auto& pending : m.state.pending) {
        pending.overdue = pending.status == KeepStatus::writing && m.state.now - pending.since >= kWritingShownAfter;
    }
}

void onStop(Machine& m) {
    bool stopped = false;
    for (auto& probe : m.state.probes) {
        if (!probe.recording || probe.recording->stage == RideStage::watching) {
            continue;
        }
        if (!probe.recording->isRide) {
            becomeRide(m, probe, *probe.recording);
        }
        probe.recording->stoppedByHand = true;
        judge(m, probe, *probe.recording);
        probe.waitsForCool = probe.value && *probe.value > kRideFrom;
        end(probe);
        stopped = true;
    }
    if (!stopped) {
        m.refuse(RefusalCause::nothingToStop);
    }
}

void claimRides(Machine& m) {
    for (auto& probe : m.state.probes) {
        if (probe.recording && !probe.recording->run && !probe.recording->judged) {
            probe.recording->run = m.state.run;
            probe.recording->others = othersOnBelt(m.state);
        }
    }
}

bool rideIsOn(const ProvingState& state) {
    return std::any_of(state.probes.begin(), state.probes.end(), [](const Probe& probe) {
        return probe.recording && probe.recording->isRide && probe.recording->stage != RideStage::watching;
    });
}

} // namespace holdfast::kiosk::shop
