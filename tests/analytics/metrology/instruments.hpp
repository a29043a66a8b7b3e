#pragma once

#include "analytics/metrology/instrument.hpp"

#include <array>
#include <limits>
#include <vector>

/// Instruments of an invented shop.
namespace holdfast::analytics::testing {

inline constexpr double kNan = std::numeric_limits<double>::quiet_NaN();
inline constexpr double kInfinity = std::numeric_limits<double>::infinity();

inline Temperature celsius(double t) {
    return Temperature::fromCelsius(t);
}
inline TemperatureDifference kelvins(double d) {
    return TemperatureDifference::fromCelsius(d);
}
inline Date day(int n) {
    return Date{std::chrono::days{20000 + n}};
}

/// Points as {temperature, correction, expanded uncertainty} in °C, k = 2.
inline Certificate certificate(Date date, Date due, const std::vector<std::array<double, 3>>& points) {
    Certificate made;
    made.date = date;
    made.due = due;
    for (const auto& [at, correction, expanded] : points) {
        made.points.push_back({celsius(at), kelvins(correction), kelvins(expanded)});
    }
    return made;
}

/// Type K, IEC class 1 (±1.5 °C at 160 °C), 0.1 °C steps, in wet ink; neither certificate nor check.
inline Instrument classOneProbe() {
    Instrument probe;
    probe.type = ThermocoupleType::k;
    probe.toleranceClass = ToleranceClass::iecClass1;
    probe.resolution = kelvins(0.1);
    return probe;
}

/// The same with one certificate from day 0 to day 365.
inline Instrument certifiedProbe() {
    Instrument probe = classOneProbe();
    probe.certificates = {certificate(day(0), day(365), {{100, 0.2, 0.5}, {150, 0.4, 0.5}, {200, 0.6, 0.5}})};
    return probe;
}

/// Five steps from 149 to 177 °C, ±1.5 °C, taped, good up to and including day 100.
inline Instrument labelStrip() {
    Instrument strip;
    strip.kind = InstrumentKind::strip;
    strip.placement = Placement::tapedOnFilm;
    strip.strip =
        StripSteps{{celsius(149), celsius(154), celsius(160), celsius(166), celsius(177)}, kelvins(1.5), day(100)};
    return strip;
}

} // namespace holdfast::analytics::testing
