#include "analytics/metrology/fixed_points/reference.hpp"
#include "tests/support/not_finite.hpp"

#include <catch2/catch.hpp>

#include <limits>

using namespace holdfast::analytics;
using Catch::WithinAbs;
using holdfast::testing::kNaN;

namespace {

PressureSource station(double kilopascals, std::optional<Altitude> shop = {}) {
    return StationReading{Pressure::fromKilopascal(kilopascals), shop, {}};
}
PressureSource report(double hectopascals, double metres) {
    return SeaLevelReport{Pressure::from(hectopascals, PressureUnit::hectopascal), Altitude::fromMetres(metres)};
}
PressureSource alone(double metres) {
    return AltitudeAlone{Altitude::fromMetres(metres)};
}
BathReference boiling(const PressureSource& source) {
    const auto air = airPressure(source);
    REQUIRE(air);
    const auto reference = boilingReference(*air);
    REQUIRE(reference);
    return *reference;
}
double lineOf(const BathReference& reference, CheckTerm term) {
    for (const auto& line : reference.lines) {
        if (line.term == term) {
            return line.u.celsius();
        }
    }
    return -1.0;
}

} // namespace

TEST_CASE("ice is at zero with its own uncertainty", "[fixed_points]") {
    const auto ice = iceReference();
    REQUIRE(ice);
    CHECK(ice->at.celsius() == 0.0);
    // ±0.1 °C (from memory), rectangular: 0.1/√3 = 0.05774 (JCGM 100:2008, 4.3.7).
    CHECK_THAT(combined(ice->lines).celsius(), WithinAbs(0.05774, 1e-5));
}

TEST_CASE("altitude alone leaves the weather, a barometer does not", "[fixed_points]") {
    const auto byAltitude = boiling(alone(0));
    const auto byBarometer = boiling(station(101.325));
    CHECK_THAT(byAltitude.at.celsius(), WithinAbs(99.9743, 1e-4)); // python3-iapws 1.5.3
    CHECK_THAT(byBarometer.at.celsius(), WithinAbs(99.9743, 1e-4));
    // ±2 kPa is about ±0.55 °C (python3-iapws 1.5.3: 0.2761 K/kPa at 101.5 kPa), so 0.55/√3.
    CHECK_THAT(lineOf(byAltitude, CheckTerm::weather), WithinAbs(0.5522 / std::sqrt(3.0), 2e-3));
    CHECK(lineOf(byBarometer, CheckTerm::weather) == -1.0);
    CHECK(combined(byBarometer.lines) < combined(byAltitude.lines));
}

TEST_CASE("a report typed with the altitude gives the station's boiling point", "[fixed_points]") {
    // 1013.25 hPa at a mile is the standard atmosphere there: 94.618 °C at 1609.344 m geopotential (python3-iapws
    // 1.5.3); the geometric mile is 0.4 m lower, 0.0014 °C.
    const auto mile = boiling(report(1013.25, 1609.344));
    CHECK_THAT(mile.at.celsius(), WithinAbs(94.618, 0.003));
    CHECK(lineOf(mile, CheckTerm::reduction) > lineOf(boiling(report(1013.25, 100)), CheckTerm::reduction));
    CHECK(combined(mile.lines) < combined(boiling(alone(1609.344)).lines));
}

TEST_CASE("a report typed as the station's pressure is noticed", "[fixed_points]") {
    CHECK(airPressure(station(101.3, Altitude::fromMetres(1609)))->looksReduced);
    CHECK(airPressure(station(101.3, Altitude::fromMetres(400)))->looksReduced);
    CHECK_FALSE(airPressure(station(83.4, Altitude::fromMetres(1609)))->looksReduced);
    CHECK_FALSE(airPressure(station(101.3, Altitude::fromMetres(50)))->looksReduced);
    CHECK_FALSE(airPressure(station(100.2, Altitude::fromMetres(300)))->looksReduced); // a strong high: 97.8 + 2.4
    CHECK_FALSE(airPressure(station(101.3))->looksReduced);                            // nothing to hold it against
}

TEST_CASE("every line is the pressure's line as a temperature", "[fixed_points]") {
    const auto air = airPressure(report(1000, 800));
    REQUIRE(air);
    const auto reference = boilingReference(*air);
    REQUIRE(reference->lines.size() == air->lines.size() + 1);
    double squares = 0.0;
    for (const auto& line : reference->lines) {
        CHECK(line.u.celsius() > 0.0);
        squares += line.u.celsius() * line.u.celsius();
    }
    CHECK_THAT(combined(reference->lines).celsius(), WithinAbs(std::sqrt(squares), 1e-12));
    CHECK(combined({}).celsius() == 0.0);
}

TEST_CASE("what cannot be a pressure of a shop is a typed fault", "[fixed_points]") {
    const auto fault = [](const PressureSource& source) { return airPressure(source).error(); };
    CHECK(fault(station(1013.25)) == PressureFault::stationTooHigh);
    CHECK(fault(station(29.92)) == PressureFault::stationTooLow);
    CHECK(fault(station(kNaN)) == PressureFault::notFinite);
    CHECK(fault(report(834, 1609)) == PressureFault::seaLevelTooLow); // the station's pressure typed as a report
    CHECK(fault(report(1100, 0)) == PressureFault::seaLevelTooHigh);
    CHECK(fault(report(kNaN, 0)) == PressureFault::notFinite);
    CHECK(fault(alone(20000)) == PressureFault::altitudeTooHigh);
    CHECK(fault(alone(-3000)) == PressureFault::altitudeTooLow);
    CHECK(fault(alone(7000)) == PressureFault::stationTooLow); // air there, 41 kPa, but no shop
    CHECK(fault(alone(kNaN)) == PressureFault::notFinite);
    CHECK(fault(station(101, Altitude::fromMetres(kNaN))) == PressureFault::notFinite);
    CHECK(fault(StationReading{Pressure::fromKilopascal(101), {}, PressureDifference::fromPascal(-1)}) ==
          PressureFault::settingsInvalid);
    BathSettings broken;
    broken.ice = TemperatureDifference::fromCelsius(kNaN);
    CHECK(iceReference(broken).error() == PressureFault::settingsInvalid);
    CHECK(airPressure(alone(0), broken).error() == PressureFault::settingsInvalid);
}
