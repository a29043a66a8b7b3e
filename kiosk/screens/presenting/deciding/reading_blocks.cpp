#include "kiosk/screens/presenting/deciding/reading_blocks.hpp"

#include <variant>

namespace holdfast::kiosk::screens {
namespace {

using analytics::Temperature;

constexpr double kMicroseconds = 1e-6;
constexpr double kGapSeconds = 5.0; // no two samples further apart are joined (decisions 3.5)

CeilingLine ceilingOf(const analytics::GuardedLimit& limit, const wording::Speech& speech) {
    return {
        shown(limit.limit, speech), shown(limit.guard, speech), toQString(speech.figures.bare(limit.limit)), {}, false};
}

void addLimits(HeatScaleState& scale, const records::ReadingTaken& reading, const wording::Speech& speech) {
    for (const auto& cure : reading.guards.layers) { // the lines that were used
        scale.cures.append(CureLine{shown(cure.limit, speech),
                                    shown(cure.guard, speech),
                                    toQString(speech.figures.bare(cure.limit)),
                                    {},
                                    false});
    }
    if (reading.guards.hard) {
        scale.hardCeiling = ceilingOf(*reading.guards.hard, speech);
    }
    if (reading.guards.bleed) {
        scale.bleedCeiling = ceilingOf(*reading.guards.bleed, speech);
    }
}

analytics::TemperatureDifference correctionOf(const records::ReadingTaken& reading) {
    return reading.calibration ? reading.calibration->correction : analytics::TemperatureDifference{};
}

void addTrace(HeatScaleState& scale, const records::ReadingTaken& reading, const records::TraceSeen& seen,
              const std::vector<ledger::TracePoint>& points, const wording::Speech& speech) {
    std::optional<double> before;
    const auto start = points.empty() ? 0 : points.front().microseconds;
    for (const auto& point : points) {
        if (point.flags != 0) {
            continue;
        }
        const auto indicated = Temperature::from(static_cast<double>(point.counts) * seen.step.value, seen.step.unit);
        const double seconds = static_cast<double>(point.microseconds - start) * kMicroseconds;
        scale.trace.append(TracePoint{seconds, shown(indicated + correctionOf(reading), speech),
                                      before && (seconds - *before > kGapSeconds || seconds < *before)});
        before = seconds;
    }
    if (seen.sustainedPeak) {
        PeakNote note;
        note.atShown = shown(*seen.sustainedPeak, speech);
        note.text = toQString(speech.figures.temperature(*seen.sustainedPeak));
        if (reading.verdict && reading.verdict->sustained) {
            note.seconds = reading.verdict->sustained->at.count();
        }
        scale.peak = note;
    }
    scale.timed = !scale.trace.isEmpty();
}

void addStrip(HeatScaleState& scale, std::optional<Temperature> low, std::optional<Temperature> high,
              const wording::Speech& speech) {
    StripInterval interval;
    if (low) {
        interval.lowShown = shown(*low, speech);
    }
    if (high) {
        interval.highShown = shown(*high, speech);
    }
    const auto& figures = speech.figures;
    interval.text = toQString(low && high ? figures.bare(*low) + "–" + figures.bare(*high)
                              : low       ? "≥ " + figures.bare(*low)
                              : high      ? "≤ " + figures.bare(*high)
                                          : std::string{});
    scale.timed = false;
    scale.strip = interval;
}

void addStripSeen(HeatScaleState& scale, const records::ReadingTaken& reading, const wording::Speech& speech) {
    for (const auto& reason : reading.verdict ? reading.verdict->reasons : std::vector<analytics::Reason>{}) {
        if (reason.code == analytics::ReasonCode::stripInterval) {
            addStrip(scale, reason.value, reason.limit, speech);
            return;
        }
    }
    scale.timed = false;
}

} // namespace

HeatScaleState readingScale(const records::ReadingTaken& reading, const std::vector<ledger::TracePoint>& points,
                            const wording::Speech& speech) {
    HeatScaleState scale;
    scale.celsius = speech.figures.unit == analytics::TemperatureUnit::celsius;
    addLimits(scale, reading, speech);
    if (reading.verdict) {
        scale.verdict = filmMark(reading.verdict->word);
    }
    if (const auto* trace = std::get_if<records::TraceSeen>(&reading.evidence)) {
        addTrace(scale, reading, *trace, points, speech);
    } else if (std::holds_alternative<records::StripSeen>(reading.evidence)) {
        addStripSeen(scale, reading, speech);
    } else if (const auto* spot = std::get_if<records::SpotSeen>(&reading.evidence)) {
        const auto held = spot->held.temperature() + correctionOf(reading);
        addStrip(scale, held - analytics::SpotReading{}.abovePeak, held, speech);
    } else if (const auto* gun = std::get_if<records::GunSeen>(&reading.evidence)) {
        const auto surface = gun->surface.temperature() + correctionOf(reading);
        scale.timed = false;
        scale.gun = GunBar{shown(surface, speech),
                           toQString(speech.text("scale.at-most", {{"value", speech.figures.bare(surface)}}))};
    }
    return scale;
}

std::vector<ledger::TracePoint> traceOf(const ledger::Book& book, const records::ReadingTaken& reading) {
    const auto* seen = std::get_if<records::TraceSeen>(&reading.evidence);
    const auto digest = seen != nullptr ? ledger::fromHex(seen->sha256) : std::nullopt;
    const auto bytes =
        digest ? book.blob(*digest)
               : ledger::Result<ledger::Bytes>{tl::unexpected(ledger::Failure{ledger::FailureCode::notFound, "none"})};
    auto points = bytes ? ledger::decodeTrace(*bytes) : tl::unexpected(bytes.error());
    return points ? std::move(*points) : std::vector<ledger::TracePoint>{};
}

std::string reasonText(records::ReadingReason reason, const wording::Speech& speech) {
    using Reason = records::ReadingReason;
    const char* key = reason == Reason::drawn         ? "drawn"
                      : reason == Reason::afterChange ? "after-change"
                      : reason == Reason::setUp       ? "set-up"
                      : reason == Reason::retake      ? "retake"
                      : reason == Reason::worry       ? "worry"
                      : reason == Reason::map         ? "map"
                                                      : "study";
    return speech.text(std::string{"holds.reason."} + key);
}

} // namespace holdfast::kiosk::screens
