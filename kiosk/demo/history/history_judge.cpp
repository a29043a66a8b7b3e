#include "kiosk/demo/history/history_judge.hpp"

#include "analytics/cure/fabric.hpp"
#include "kiosk/demo/history/history_trace.hpp"
#include "kiosk/ledger/trace_codec.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>

namespace holdfast::kiosk::demo {
namespace {

using analytics::AuthoredTemperature;
using analytics::Temperature;
using analytics::TemperatureDifference;
using analytics::TemperatureUnit;

constexpr double kSpotStep = 0.1;
constexpr auto kHeldAbovePeak = TemperatureDifference::fromCelsius(1.5); ///< of a spot (decisions 4)

template <class Named>
const Named& named(const std::vector<Named>& all, const std::string& name) {
    const auto found = std::find_if(all.begin(), all.end(), [&](const Named& one) { return one.name == name; });
    assert(found != all.end());
    return *found;
}

AuthoredTemperature fahrenheit(Temperature t) {
    return {std::round(t.fahrenheit() * 10.0) / 10.0, TemperatureUnit::fahrenheit};
}

records::ReadingReason reasonOf(Asked asked) {
    switch (asked) {
    case Asked::setUp:
        return records::ReadingReason::setUp;
    case Asked::drawn:
        return records::ReadingReason::drawn;
    case Asked::retake:
        return records::ReadingReason::retake;
    case Asked::worry:
        return records::ReadingReason::worry;
    case Asked::afterChange:
        break;
    }
    return records::ReadingReason::afterChange;
}

records::StripSeen stripSeen(const ReadingFact& reading) {
    records::StripSeen seen;
    const auto step = [](std::optional<std::size_t> place) {
        return place ? std::optional{fahrenheit(stripSteps()[*place])} : std::nullopt;
    };
    seen.lastDark = step(reading.lastDark);
    seen.firstLight = step(reading.firstLight);
    return seen;
}

} // namespace

HistoryJudge::HistoryJudge() : m_families{analytics::starterFamilies()}, m_fabrics{analytics::starterFabrics()} {}

void HistoryJudge::setInstrument(std::size_t place, std::string id, analytics::Instrument instrument) {
    m_known.resize(std::max(m_known.size(), place + 1));
    auto& known = m_known[place];
    known.id = std::move(id);
    known.instrument = std::move(instrument);
    known.calibration.reset();
    for (auto& [key, frame] : m_frames) {
        frame.day = key.first == place ? std::chrono::sys_days{} : frame.day;
    }
}

const analytics::Calibration& HistoryJudge::calibration(std::size_t place, std::chrono::sys_days day) {
    auto& known = m_known[place];
    if (!known.calibration || known.day != day) {
        known.calibration = std::make_unique<analytics::Calibration>(known.instrument, day);
        known.day = day;
    }
    return *known.calibration;
}

std::shared_ptr<const JudgedPlan> HistoryJudge::planOf(const RunFact& run, const HistoryFacts& facts) {
    std::string key = nameOf(run.cloth);
    for (const auto& layer : run.layers) {
        const auto* bucket = layer.bucket ? &facts.buckets[*layer.bucket] : nullptr;
        key += '|' + layer.colour + '|' + nameOf(layer.ink) + '|' + (bucket != nullptr ? bucket->name : std::string{});
    }
    auto& plan = m_plans[key];
    if (plan) {
        return plan;
    }
    auto made = std::make_shared<JudgedPlan>();
    for (const auto& layer : run.layers) {
        const auto* bucket = layer.bucket ? &facts.buckets[*layer.bucket] : nullptr;
        auto ink = analytics::pureInk(named(m_families, nameOf(layer.ink)));
        if (bucket != nullptr && !bucket->name.empty()) {
            ink = *analytics::mixInks(bucket->name, {{ink, 1.0}});
        }
        made->plan.layers.push_back({layer.colour, std::move(ink), std::nullopt});
    }
    made->plan.fabric = named(m_fabrics, nameOf(run.cloth));
    made->revisions.families.push_back({nameOf(run.layers.front().ink), 1});
    for (const auto& layer : run.layers) {
        const records::RevisionUsed used{nameOf(layer.ink), 1};
        if (std::count(made->revisions.families.begin(), made->revisions.families.end(), used) == 0) {
            made->revisions.families.push_back(used);
        }
    }
    made->revisions.fabric = {nameOf(run.cloth), 1};
    plan = std::move(made);
    return plan;
}

const records::ReadingTaken& HistoryJudge::frameOf(std::size_t place, const JudgedPlan& plan,
                                                   std::chrono::sys_days day) {
    auto& frame = m_frames[{place, &plan}];
    if (frame.day == day) {
        return frame.taken;
    }
    const auto& calibrated = calibration(place, day);
    auto window = analytics::windowOf(plan.plan, &calibrated);
    assert(window);
    auto& taken = frame.taken;
    taken = {};
    taken.instrument = m_known[place].id;
    taken.placement = calibrated.instrument().placement;
    taken.revisions = plan.revisions;
    for (const auto& layer : window->layers) {
        taken.guards.layers.push_back(layer.cure);
    }
    taken.guards.hard = window->upperHard;
    taken.guards.bleed = window->upperBleed;
    const auto u = calibrated.uncertaintyAt(window->lower);
    const auto& certificate = calibrated.certificateInDate();
    taken.calibration = records::CalibrationUsed{certificate ? std::optional{certificate->date} : std::nullopt,
                                                 calibrated.checkedInDate(),
                                                 calibrated.correctionAt(window->lower),
                                                 u.common,
                                                 u.random,
                                                 analytics::GuardSetting{}.risk};
    taken.window = *std::move(window);
    frame.day = day;
    return taken;
}

JudgedReading HistoryJudge::judge(const ReadingFact& reading, const RunFact& run, const JudgedPlan& plan,
                                  std::chrono::sys_days day, const analytics::Verdict* first) {
    JudgedReading judged;
    judged.taken = frameOf(reading.instrument, plan, day);
    auto& taken = judged.taken;
    taken.reason = reasonOf(reading.asked);
    taken.position = static_cast<records::BeltPosition>(reading.lane);
    taken.piece = reading.piece > 0 ? std::optional{reading.piece} : std::nullopt;
    const auto& with = calibration(reading.instrument, day);
    const auto top = run.cure + reading.seen;
    if (with.instrument().kind == analytics::InstrumentKind::strip) {
        taken.evidence = stripSeen(reading);
        const analytics::StripReading strip{reading.lastDark, reading.firstLight};
        judged.evidence = strip;
        taken.verdict = analytics::judgeStrip(plan.plan, strip, with);
    } else if (with.instrument().kind == analytics::InstrumentKind::spot) {
        const auto held = fahrenheit(top + kHeldAbovePeak - with.correctionAt(top));
        const AuthoredTemperature before{75.0, TemperatureUnit::fahrenheit};
        taken.evidence = records::SpotSeen{held, before};
        const analytics::SpotReading spot{held.temperature(), before.temperature()};
        judged.evidence = spot;
        taken.verdict = analytics::judgeSpot(plan.plan, spot, with);
    } else {
        const auto seed = static_cast<std::uint64_t>(reading.at) * 4U + static_cast<std::uint64_t>(run.dryer);
        const auto points = shortRide(top - with.correctionAt(top), run.hold, seed);
        auto raw = rawTraceOf(points);
        raw.range = with.instrument().range;
        auto verdicts = analytics::judgeRecording(plan.plan, raw, with);
        assert(!verdicts.empty());
        judged.trace = ledger::encodeTrace(points);
        records::TraceSeen seen;
        seen.sha256 = ledger::toHex(ledger::sha256(judged.trace));
        seen.step = {kSpotStep, TemperatureUnit::celsius};
        seen.sustainedPeak = verdicts.front().sustained ? std::optional{verdicts.front().sustained->t} : std::nullopt;
        seen.rawPeak = verdicts.front().raw ? std::optional{verdicts.front().raw->t} : std::nullopt;
        taken.evidence = seen;
        taken.verdict = first != nullptr && verdicts.front().margin
                            ? analytics::judgeRetake(plan.plan, *first, verdicts.front(), with)
                            : std::move(verdicts.front());
        judged.evidence = std::move(raw);
    }
    return judged;
}

} // namespace holdfast::kiosk::demo
