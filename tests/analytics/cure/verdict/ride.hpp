#pragma once

#include "analytics/cure/verdict.hpp"

#include <algorithm>
#include <chrono>
#include <cmath>
#include <string>
#include <utility>
#include <vector>

/// Plans, instruments and rides for the verdict tests.
namespace ride {

namespace an = holdfast::analytics;

/// IEC 60584-1 class 1 type K in wet ink, no resolution: a = 1.5 °C, u² = 1.5²/3 + 1.5² = 3, u = 1.7320508 °C, so that
/// g = 1.6448536 × 1.7320508 = 2.8489700 °C at every limit below 375 °C (decisions 2).
constexpr double kGuard = 2.8489700;

inline an::Temperature celsius(double t) {
    return an::Temperature::fromCelsius(t);
}
inline an::TemperatureDifference degrees(double d) {
    return an::TemperatureDifference::fromCelsius(d);
}

inline an::Date today() {
    return an::Date{std::chrono::year{2026} / 3 / 2};
}

inline an::Instrument probe() {
    an::Instrument instrument;
    instrument.name = "probe";
    instrument.type = an::ThermocoupleType::k;
    instrument.toleranceClass = an::ToleranceClass::iecClass1;
    instrument.checks.push_back(
        {an::CheckKind::ice, true, today() - std::chrono::days{1}, today() + std::chrono::days{30}});
    return instrument;
}

inline an::Calibration inDate(an::Instrument instrument = probe()) {
    return an::Calibration{std::move(instrument), today()};
}

inline an::InkFamily family(double cure, double hold = 0.0) {
    an::InkFamily ink;
    ink.name = "ink at " + std::to_string(static_cast<int>(cure));
    ink.gel = an::GelRange{celsius(110.0), celsius(125.0)};
    ink.cure = celsius(cure);
    ink.hold = an::Duration{hold};
    return ink;
}

/// 30 s at 165 °C or 90 s at 155 °C.
inline an::InkFamily familyWithPairs() {
    auto ink = family(155.0);
    ink.pairs = an::EqualCurePairs{{an::Duration{30.0}, celsius(165.0)}, {an::Duration{90.0}, celsius(155.0)}};
    return ink;
}

inline an::RunPlan plan(std::vector<an::InkFamily> families, an::Fabric fabric = {}) {
    an::RunPlan run;
    run.fabric = std::move(fabric);
    run.fabric.name = "cloth";
    for (auto& ink : families) {
        run.layers.push_back({"white", an::pureInk(std::move(ink)), std::nullopt});
    }
    return run;
}

inline an::Fabric ceilings(std::optional<double> hard, std::optional<double> bleed = std::nullopt) {
    an::Fabric fabric;
    fabric.name = "cloth";
    if (hard) {
        fabric.hardCeiling = celsius(*hard);
    }
    if (bleed) {
        fabric.bleedCeiling = celsius(*bleed);
        fabric.needOfAtRiskColour = an::BleedResistance::low;
    }
    return fabric;
}

using Knots = std::vector<std::pair<double, double>>; ///< seconds, °C

/// Samples every `step` seconds along straight lines through the knots; the last knot is the last sample.
inline an::RawTrace along(const Knots& knots, double step = 0.5) {
    an::RawTrace trace;
    const double end = knots.back().first;
    std::size_t k = 0;
    for (int i = 0; i * step <= end + 1e-9; ++i) {
        const double at = i * step;
        while (k + 2 < knots.size() && knots[k + 1].first < at) {
            ++k;
        }
        const auto& [t0, y0] = knots[k];
        const auto& [t1, y1] = knots[k + 1];
        const double y = y0 + (y1 - y0) * (at - t0) / (t1 - t0);
        trace.samples.push_back({std::chrono::microseconds{std::llround(at * 1e6)}, celsius(y), false});
    }
    return trace;
}

/// 25 °C for 10 s, up at 3 °C/s, level for `plateau` seconds, down at 3 °C/s to 40 °C. The time at or above a level λ
/// is plateau + 2·(peak − λ)/3.
inline an::RawTrace trapezoid(double peak, double plateau = 4.0, double step = 0.5) {
    const double rise = (peak - 25.0) / 3.0;
    const double fall = (peak - 40.0) / 3.0;
    return along({{0.0, 25.0},
                  {10.0, 25.0},
                  {10.0 + rise, peak},
                  {10.0 + rise + plateau, peak},
                  {10.0 + rise + plateau + fall, 40.0},
                  {20.0 + rise + plateau + fall, 40.0}},
                 step);
}

inline an::Verdict judge(const an::RunPlan& run, const an::RawTrace& trace,
                         const an::Calibration& calibration = inDate(), const an::GuardSetting& guard = {},
                         const an::ReadingContext& context = {}) {
    return an::judgeRecording(run, trace, calibration, guard, context).front();
}

inline bool says(const an::Verdict& verdict, an::ReasonCode code) {
    return std::any_of(verdict.reasons.begin(), verdict.reasons.end(),
                       [&](const an::Reason& reason) { return reason.code == code; });
}

inline const an::Reason& reasonOf(const an::Verdict& verdict, an::ReasonCode code) {
    return *std::find_if(verdict.reasons.begin(), verdict.reasons.end(),
                         [&](const an::Reason& reason) { return reason.code == code; });
}

inline bool advises(const an::Verdict& verdict, an::Remedy remedy) {
    return std::find(verdict.remedies.begin(), verdict.remedies.end(), remedy) != verdict.remedies.end();
}

inline std::vector<double> marginsOf(const an::Verdict& verdict) {
    std::vector<double> margins;
    for (const auto& layer : verdict.layers) {
        margins.push_back(layer.margin && layer.margin->low ? layer.margin->low->celsius() : std::nan(""));
    }
    return margins;
}

/// Catch prints enums as numbers; this prints the word.
inline std::string wordOf(const an::Verdict& verdict) {
    switch (verdict.word) {
    case an::Word::cured:
        return "cured";
    case an::Word::underCured:
        return "under-cured";
    case an::Word::overheated:
        return "overheated";
    case an::Word::notProven:
        return "not proven";
    case an::Word::refused:
        break;
    }
    return "refused";
}

} // namespace ride
