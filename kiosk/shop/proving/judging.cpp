#include "kiosk/ledger/trace_codec.hpp"
#include "kiosk/shop/proving/machine.hpp"
#include "kiosk/shop/proving/ride_rules.hpp"

#include <algorithm>
#include <iterator>

namespace holdfast::kiosk::shop {
namespace {

using analytics::RawTrace;
using analytics::Verdict;
using analytics::Word;

ledger::Bytes encoded(const std::vector<drivers::Sample>& samples) {
    std::vector<ledger::TracePoint> points;
    points.reserve(samples.size());
    for (const auto& sample : samples) {
        points.push_back({sample.at.count(), sample.counts, static_cast<std::uint8_t>(sample.flags)});
    }
    return ledger::encodeTrace(points);
}

/// The trace as evidence, the same for every pass but for its peaks and number.
records::TraceSeen evidenceOf(const Recording& recording, const RawTrace& raw, double step,
                              const ledger::Bytes& bytes) {
    records::TraceSeen seen;
    seen.sha256 = ledger::toHex(ledger::sha256(bytes));
    seen.step = {step, raw.unit};
    seen.stoppedByHand = recording.stoppedByHand;
    seen.cutOff = recording.cutOff;
    seen.unitConfirmed = raw.unitConfirmed;
    return seen;
}

/// What was stopped by hand or cut off is never cured, whatever the heat was.
Verdict neverCured(Verdict verdict, const Recording& recording) {
    if (verdict.word == Word::cured && (recording.stoppedByHand || recording.cutOff)) {
        verdict.word = Word::notProven;
        analytics::Reason reason;
        reason.code = recording.cutOff ? analytics::ReasonCode::cutOff : analytics::ReasonCode::stoppedByHand;
        verdict.reasons.insert(verdict.reasons.begin(), reason);
    }
    return verdict;
}

Verdict withoutPass() {
    Verdict verdict;
    verdict.word = Word::refused;
    verdict.couldProve = false;
    analytics::Reason reason;
    reason.code = analytics::ReasonCode::noPassSeen;
    verdict.reasons.push_back(reason);
    return verdict;
}

/// Of one pass: what is stored, and what will be shown once it is.
struct Judged final {
    std::optional<Verdict> verdict; ///< absent without a run, unless there was no pass
    std::optional<analytics::PeakAt> sustained;
    std::optional<analytics::PeakAt> raw;
    std::shared_ptr<const RideFacts> ride{};
};

std::vector<Judged> judgedWithoutRun(const RawTrace& raw, const analytics::Calibration& calibration) {
    std::vector<Judged> all;
    for (const auto& pass : analytics::cleanRecording(raw, &calibration).passes) {
        Judged one{std::nullopt, analytics::sustainedPeak(pass), analytics::rawPeak(pass)};
        if (!pass.everAbove80) {
            one.verdict = withoutPass();
        }
        all.push_back(std::move(one));
    }
    return all;
}

const RetakeOf* retakeFor(const Recording& recording, const AnnouncedRun& run) {
    const auto found = std::find_if(recording.retakes.begin(), recording.retakes.end(),
                                    [&](const RetakeOf& one) { return one.run == run.onFile.plan.run; });
    return found == recording.retakes.end() ? nullptr : &*found;
}

std::vector<Judged> judgedForRun(const Recording& recording, const AnnouncedRun& run, const RawTrace& raw,
                                 const std::vector<std::shared_ptr<const RideFacts>>& facts,
                                 const analytics::Calibration& calibration, const analytics::GuardSetting& guard) {
    std::vector<Judged> all;
    const auto* retake = retakeFor(recording, run);
    for (auto& own : analytics::judgeRecording(run.onFile.layers, raw, calibration, guard)) {
        Judged one;
        one.sustained = own.sustained;
        one.raw = own.raw;
        one.ride = all.size() < facts.size() ? facts[all.size()] : nullptr;
        auto verdict =
            neverCured(one.ride ? analytics::withSigns(std::move(own), one.ride->signs) : std::move(own), recording);
        if (all.empty() && retake != nullptr && verdict.margin && verdict.word != Word::refused) {
            verdict = neverCured(analytics::judgeRetake(run.onFile.layers, *retake->first, verdict, calibration, guard),
                                 recording);
        }
        one.verdict = std::move(verdict);
        all.push_back(std::move(one));
    }
    return all;
}

KeptReading readingOf(const Machine& m, const Recording& recording, const std::shared_ptr<const AnnouncedRun>& run,
                      const std::optional<KnownInstrument>& known, const analytics::Calibration& calibration,
                      const Judged& judged) {
    KeptReading kept;
    kept.recording = recording.number;
    kept.run = run;
    kept.instrumentName = recording.instrument;
    kept.drawn = recording.drawn;
    kept.ride = judged.ride;
    kept.takenAt = recording.rideAt;
    auto& reading = kept.reading;
    describeReading(reading, run.get(), known ? &*known : nullptr, recording.instrument, calibration, m.state.guard);
    reading.position = recording.position;
    reading.reason = recording.reason;
    reading.verdict = judged.verdict;
    notePiece(kept, recording.pieces);
    kept.refused = judged.verdict && judged.verdict->word == Word::refused;
    const auto* retake = run ? retakeFor(recording, *run) : nullptr;
    if (retake != nullptr && judged.verdict && judged.verdict->margin && !kept.refused) {
        reading.retakeOf = retake->reading;
    }
    return kept;
}

} // namespace

analytics::RawTrace rawTraceOf(const Recording& recording, const drivers::CountScale& scale,
                               const analytics::Instrument& about) {
    RawTrace raw;
    raw.samples.reserve(recording.samples.size());
    for (const auto& sample : recording.samples) {
        raw.samples.push_back({sample.at, indicated(sample, scale), sample.flags != drivers::SampleFlag::none});
    }
    const bool celsius = scale.unit == drivers::ReadingUnit::celsius;
    raw.unit = celsius ? analytics::TemperatureUnit::celsius : analytics::TemperatureUnit::fahrenheit;
    raw.resolution = analytics::TemperatureDifference::from(scale.step, raw.unit);
    raw.range = about.range;
    raw.unitConfirmed = recording.answeredUnit.has_value();
    raw.stoppedByHand = recording.stoppedByHand;
    raw.cutOff = recording.cutOff;
    return raw;
}

std::shared_ptr<const analytics::Calibration> calibrationFor(const std::optional<KnownInstrument>& known,
                                                             const std::string& name) {
    if (known && known->calibration) {
        return known->calibration;
    }
    analytics::Instrument nobodyDescribed;
    nobodyDescribed.name = name;
    return std::make_shared<const analytics::Calibration>(std::move(nobodyDescribed), analytics::Date{});
}

void describeReading(records::ReadingTaken& reading, const AnnouncedRun* run, const KnownInstrument* known,
                     const std::string& name, const analytics::Calibration& calibration,
                     const analytics::GuardSetting& guard) {
    reading.instrument = known != nullptr && !known->id.empty() ? known->id : name;
    reading.placement = calibration.instrument().placement;
    if (run == nullptr) {
        return;
    }
    reading.run = run->onFile.plan.run;
    if (run->onFile.plan.kind == records::PlanKind::run) {
        reading.lot = run->lotId;
    }
    reading.dryer = run->dryer;
    reading.revisions = run->onFile.revisions;
    auto window = analytics::windowOf(run->onFile.layers, &calibration, guard);
    if (!window) {
        return;
    }
    for (const auto& layer : window->layers) {
        reading.guards.layers.push_back(layer.cure);
    }
    reading.guards.hard = window->upperHard;
    reading.guards.bleed = window->upperBleed;
    if (known != nullptr && known->calibration) {
        const auto u = calibration.uncertaintyAt(window->lower);
        const auto& certificate = calibration.certificateInDate();
        reading.calibration = records::CalibrationUsed{certificate ? std::optional{certificate->date} : std::nullopt,
                                                       calibration.checkedInDate(),
                                                       calibration.correctionAt(window->lower),
                                                       u.common,
                                                       u.random,
                                                       guard.risk};
    }
    reading.window = std::move(*window);
}

PendingKeep pendingOf(Machine& m, const std::optional<KnownInstrument>& described, const drivers::CountScale& link,
                      const Recording& recording) {
    const auto known = described ? std::optional{placedAs(*described, recording.placement)} : std::nullopt;
    const auto calibration = calibrationFor(known, recording.instrument);
    const auto scale = scaleOf(link, recording.answeredUnit);
    const auto raw = rawTraceOf(recording, scale, calibration->instrument());
    PendingKeep pending;
    pending.trace = encoded(recording.samples);
    auto evidence = evidenceOf(recording, raw, scale.step, pending.trace);
    const auto facts = rideFactsOf(m.state, analytics::cleanRecording(raw, calibration.get()).passes, calibration);
    std::vector<std::shared_ptr<const AnnouncedRun>> runs{recording.run};
    runs.insert(runs.end(), recording.others.begin(), recording.others.end());
    for (const auto& run : runs) {
        evidence.pass = 1;
        const auto all = run ? judgedForRun(recording, *run, raw, facts, *calibration, m.state.guard)
                             : judgedWithoutRun(raw, *calibration);
        for (const auto& judged : all) {
            auto kept = readingOf(m, recording, run, known, *calibration, judged);
            kept.pass = evidence.pass;
            evidence.sustainedPeak = judged.sustained ? std::optional{judged.sustained->t} : std::nullopt;
            evidence.rawPeak = judged.raw ? std::optional{judged.raw->t} : std::nullopt;
            kept.reading.evidence = evidence;
            pending.readings.push_back(std::move(kept));
            ++evidence.pass;
        }
    }
    return pending;
}

void judge(Machine& m, Probe& probe, Recording& recording) {
    auto pending = pendingOf(m, probe.known, probe.scale, recording);
    pending.spools = std::exchange(recording.spools, {});
    recording.spool = 0;
    recording.judged = true;
    recording.heatCameAgain = false;
    keep(m, std::move(pending));
}

} // namespace holdfast::kiosk::shop
