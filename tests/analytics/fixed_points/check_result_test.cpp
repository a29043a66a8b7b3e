#include "analytics/metrology/fixed_points/check_result.hpp"

#include <catch2/catch.hpp>

#include <limits>

using namespace holdfast::analytics;
using Catch::WithinAbs;

namespace {

const Date kToday{std::chrono::days{20000}};

TemperatureDifference kelvins(double d) {
    return TemperatureDifference::fromCelsius(d);
}
Instrument typeK(ToleranceClass toleranceClass = ToleranceClass::iecClass1) {
    Instrument probe;
    probe.type = ThermocoupleType::k;
    probe.toleranceClass = toleranceClass;
    probe.resolution = kelvins(0.1);
    return probe;
}
Certificate certificate(double correction, double expanded) {
    const auto point = [&](double t) {
        return CalibrationPoint{Temperature::fromCelsius(t), kelvins(correction), kelvins(expanded)};
    };
    return {kToday - std::chrono::days{10}, kToday + std::chrono::days{300}, 2.0, {point(0), point(100)}};
}
CheckRequest ice(double indicated, double u = 0.02) {
    CheckRequest request;
    request.reference = *iceReference();
    request.reading.mean = Temperature::fromCelsius(indicated);
    request.reading.u = kelvins(u);
    return request;
}
CheckResult judged(const Instrument& instrument, const CheckRequest& request) {
    const auto result = judgeCheck(Calibration{instrument, kToday}, request);
    REQUIRE(result);
    return *result;
}

} // namespace

TEST_CASE("the limit is the class's at the bath", "[fixed_points]") {
    const auto limitAt = [](const Instrument& i, double t) {
        return checkLimitAt(Calibration{i, kToday}, Temperature::fromCelsius(t));
    };
    // IEC 60584-1:2013, type K: class 1 ±1.5 °C, class 2 ±2.5 °C; ASTM E230, type T special ±0.5 °C.
    CHECK(limitAt(typeK(), 0)->limit.celsius() == Approx(1.5));
    CHECK(limitAt(typeK(ToleranceClass::iecClass2), 100)->limit.celsius() == Approx(2.5));
    CHECK(limitAt(typeK(), 0)->kind == CheckLimitKind::classTolerance);
    auto typeT = typeK(ToleranceClass::astmSpecial);
    typeT.type = ThermocoupleType::t;
    CHECK(limitAt(typeT, 0)->limit.celsius() == Approx(0.5));
    Instrument stated;
    stated.statedTolerance = kelvins(0.8);
    CHECK(limitAt(stated, 0)->limit.celsius() == Approx(0.8));
    CHECK(limitAt(stated, 0)->kind == CheckLimitKind::statedTolerance);
    CHECK_FALSE(limitAt(Instrument{}, 0));
}

TEST_CASE("a certificate near narrows the limit to what its budget claims", "[fixed_points]") {
    auto probe = typeK();
    auto older = certificate(0.5, 0.3);
    older.date -= std::chrono::days{365};
    probe.certificates = {older, certificate(0.6, 0.3)};
    const auto limit = checkLimitAt(Calibration{probe, kToday}, Temperature::fromCelsius(0));
    // u = √((0.3/2)² + 0.1²/3) = 0.16073, twice it (JCGM 100:2008, 4.3.4, 4.3.7); drift 0.1.
    CHECK_THAT(limit->limit.celsius(), WithinAbs(0.32146, 1e-5));
    CHECK(limit->kind == CheckLimitKind::certificate);
    const auto result = judged(probe, ice(-0.6));
    CHECK(result.correction.celsius() == Approx(0.6));
    CHECK_THAT(result.error.celsius(), WithinAbs(0.0, 1e-12));
    CHECK(result.outcome == CheckOutcome::passed);
    CHECK(judged(probe, ice(0.0)).outcome == CheckOutcome::failed); // 0.6 off what the certificate says
    CHECK(judged(typeK(), ice(0.0)).outcome == CheckOutcome::passed);
}

TEST_CASE("the three zones lie a guard from the limit", "[fixed_points]") {
    using enum CheckOutcome;
    const auto zone = [](double e) { return decideCheck(kelvins(e), kelvins(1.5), kelvins(0.2)); };
    const double e = GENERATE(1.0, -1.0); // either way
    CHECK(zone(0) == passed);
    CHECK(zone(1.3 * e) == passed); // equality counts as met
    CHECK(zone(1.301 * e) == notDecided);
    CHECK(zone(1.5 * e) == notDecided);
    CHECK(zone(1.699 * e) == notDecided);
    CHECK(zone(1.7 * e) == failed);
    CHECK(zone(std::numeric_limits<double>::quiet_NaN()) == notDecided);
    CHECK(decideCheck(kelvins(0), kelvins(1), kelvins(std::numeric_limits<double>::infinity())) == notDecided);
}

TEST_CASE("the guard is the budget times z", "[fixed_points]") {
    const auto result = judged(typeK(), ice(0.4, 0.05));
    // √((0.1/√3)² + (0.1/√12)² + 0.05²) = √(0.0033333 + 0.00083333 + 0.0025) = 0.081650 (JCGM 100:2008, 5.1.2);
    // z(0.95) = 1.644854 (NIST/SEMATECH e-Handbook 1.3.6.7.1: 1.645).
    CHECK_THAT(result.u.celsius(), WithinAbs(0.081650, 1e-6));
    CHECK_THAT(result.guard.celsius(), WithinAbs(1.644854 * 0.081650, 1e-5));
    CHECK(result.error.celsius() == Approx(0.4));
    REQUIRE(result.lines.size() == 3);
    CHECK(result.lines[0].term == CheckTerm::bath);
    CHECK(result.lines[1].term == CheckTerm::resolution);
    CHECK(result.lines[2].term == CheckTerm::stability);
}

TEST_CASE("a bath known too badly lets nothing pass", "[fixed_points]") {
    auto typeT = typeK(ToleranceClass::astmSpecial);
    typeT.type = ThermocoupleType::t;
    CheckRequest request;
    request.kind = CheckKind::boiling;
    request.reference = *boilingReference(*airPressure(AltitudeAlone{Altitude::fromMetres(0)}));
    request.reading.mean = request.reference.at;
    const auto byAltitude = judged(typeT, request);
    CHECK_FALSE(byAltitude.canPass);
    CHECK(byAltitude.outcome == CheckOutcome::notDecided);
    CHECK_FALSE(toCheck(byAltitude));
    request.reference = *boilingReference(*airPressure(StationReading{Pressure::fromKilopascal(101.325), {}, {}}));
    request.reading.mean = request.reference.at;
    CHECK(judged(typeT, request).outcome == CheckOutcome::passed);
}

TEST_CASE("only a passed check is due later", "[fixed_points]") {
    auto request = ice(0.1);
    request.interval = std::chrono::days{7};
    const auto passed = toCheck(judged(typeK(), request));
    REQUIRE(passed);
    CHECK(passed->passed);
    CHECK(passed->date == kToday);
    CHECK(passed->due == kToday + std::chrono::days{7});
    request.reading.mean = Temperature::fromCelsius(3.0);
    const auto failed = toCheck(judged(typeK(), request));
    CHECK_FALSE(failed->passed);
    CHECK(failed->due == kToday);
    auto probe = typeK();
    probe.checks = {*passed};
    CHECK(Calibration{probe, kToday}.checkedInDate());
    probe.checks.push_back(*failed);
    CHECK(Calibration{probe, kToday}.lastCheckFailed());
}

TEST_CASE("a check that cannot be judged says why", "[fixed_points]") {
    const auto fault = [](const Instrument& i, const CheckRequest& r) {
        return judgeCheck(Calibration{i, kToday}, r).error();
    };
    auto gun = typeK();
    gun.kind = InstrumentKind::gun;
    CHECK(fault(gun, ice(0)) == CheckFault::notForBath);
    gun.kind = InstrumentKind::strip;
    CHECK(fault(gun, ice(0)) == CheckFault::notForBath);
    CHECK(fault(Instrument{}, ice(0)) == CheckFault::noLimit);
    CHECK(fault(typeK(), ice(std::numeric_limits<double>::quiet_NaN())) == CheckFault::notFinite);
    CHECK(fault(typeK(), ice(0, -1)) == CheckFault::notFinite);
    auto request = ice(0);
    request.interval = std::chrono::days{0};
    CHECK(fault(typeK(), request) == CheckFault::intervalInvalid);
    request = ice(0);
    request.kind = CheckKind::comparison;
    CHECK(fault(typeK(), request) == CheckFault::notForBath);
}
