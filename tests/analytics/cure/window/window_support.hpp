#pragma once

#include "analytics/cure/window.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <string>
#include <vector>

namespace holdfast::analytics::support {

inline Temperature f(double degrees) {
    return Temperature::fromFahrenheit(degrees);
}
inline Temperature c(double degrees) {
    return Temperature::fromCelsius(degrees);
}
inline TemperatureDifference k(double kelvins) {
    return TemperatureDifference::fromCelsius(kelvins);
}

inline const Date kToday = std::chrono::sys_days{std::chrono::year{2031} / 5 / 12};

inline InkFamily starter(const std::string& name) {
    const auto all = starterFamilies();
    const auto found = std::find_if(all.begin(), all.end(), [&](const InkFamily& one) { return one.name == name; });
    REQUIRE(found != all.end());
    return *found;
}

inline Fabric cloth(const std::string& name) {
    const auto all = starterFabrics();
    const auto found = std::find_if(all.begin(), all.end(), [&](const Fabric& one) { return one.name == name; });
    REQUIRE(found != all.end());
    return *found;
}

/// A plastisol that asks only a temperature; resistance high, no ceiling.
inline InkFamily ink(const std::string& name, Temperature cure, int ease = 1) {
    InkFamily family;
    family.name = name;
    family.cure = cure;
    family.ease = ease;
    family.bleedResistance = BleedResistance::high;
    return family;
}

inline InkFamily withCeiling(InkFamily family, Temperature ceiling) {
    family.ceiling = ceiling;
    return family;
}

inline InkFamily withPairs(InkFamily family, CurePoint hotter, CurePoint cooler) {
    family.pairs = EqualCurePairs{hotter, cooler};
    return family;
}

inline Layer layer(const std::string& colour, const InkFamily& family) {
    return {colour, pureInk(family), {}};
}

inline Fabric plainCloth(std::optional<Temperature> hard, std::optional<Temperature> bleed = std::nullopt,
                         BleedResistance need = BleedResistance::none) {
    Fabric fabric;
    fabric.name = "cloth";
    fabric.hardCeiling = hard;
    fabric.bleedCeiling = bleed;
    fabric.needOfAtRiskColour = need;
    return fabric;
}

/// An instrument of this kind whose guard is the same everywhere (decisions 2: u = u_p alone, so g = z·u_p); its check
/// is in date.
inline Calibration withGuard(InstrumentKind kind, TemperatureDifference guard, const std::string& name = "probe") {
    Instrument instrument;
    instrument.name = name;
    instrument.kind = kind;
    instrument.statedTolerance = k(0);
    instrument.ownPlacement = guard / GuardSetting{}.z();
    instrument.checks = {{CheckKind::ice, true, kToday, kToday}};
    return {instrument, kToday};
}

/// A strip with steps of tolerance δ and z·u_p = `guard` besides.
inline Calibration strip(std::vector<Temperature> steps, TemperatureDifference tolerance, TemperatureDifference guard,
                         const std::string& name = "strip") {
    Instrument instrument;
    instrument.name = name;
    instrument.kind = InstrumentKind::strip;
    instrument.ownPlacement = guard / GuardSetting{}.z();
    instrument.strip = StripSteps{std::move(steps), tolerance, std::nullopt};
    return {instrument, kToday};
}

inline RunWindow open(const tl::expected<RunWindow, std::vector<WindowFault>>& window) {
    REQUIRE(window.has_value());
    return *window;
}

inline bool names(const std::vector<Reason>& reasons, ReasonCode code) {
    return std::any_of(reasons.begin(), reasons.end(), [&](const Reason& reason) { return reason.code == code; });
}

inline bool blames(const RunWindow& window, CulpritSide side, std::optional<int> position) {
    return std::any_of(window.culprits.begin(), window.culprits.end(),
                       [&](const Culprit& culprit) { return culprit.side == side && culprit.position == position; });
}

} // namespace holdfast::analytics::support
