#include "kiosk/shop/instruments/check_draft.hpp"

#include "kiosk/shop/typed/typed.hpp"
#include "kiosk/wording/instrument_sentences.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace holdfast;
using namespace holdfast::kiosk;
using namespace holdfast::kiosk::shop::instruments;
using analytics::Temperature;
using analytics::TemperatureDifference;
using analytics::TemperatureUnit;

namespace {

constexpr analytics::Date kToday{std::chrono::year{2026} / 11 / 25};

analytics::Calibration spot() {
    analytics::Instrument instrument;
    instrument.name = "H-1";
    instrument.kind = analytics::InstrumentKind::spot;
    instrument.type = analytics::ThermocoupleType::k;
    instrument.toleranceClass = analytics::ToleranceClass::iecClass1;
    instrument.resolution = TemperatureDifference::fromCelsius(0.1);
    return {instrument, kToday};
}

analytics::CheckResult iceResult(const std::string& typed) {
    const auto reference = analytics::iceReference();
    REQUIRE(reference);
    const auto value = kiosk::shop::numberFrom(typed);
    REQUIRE(value);
    const auto reading = readByHand({*value, TemperatureUnit::celsius}, typed, TemperatureDifference::fromCelsius(0.1));
    const auto result = analytics::judgeCheck(
        spot(), {analytics::CheckKind::ice, *reference, reading, std::chrono::days{30}, analytics::GuardSetting{}});
    REQUIRE(result);
    return *result;
}

} // namespace

TEST_CASE("the air pressure is taken from barometer, report or altitude, in the typed units", "[instruments]") {
    AirDraft draft;
    draft.pressure = "29.92"; // inHg, the standard atmosphere: 1013.2 hPa (NIST SP 811, B.8: 3386.389 Pa)
    draft.pressureUnit = analytics::PressureUnit::inchOfMercury;
    draft.altitude = "5280";
    draft.altitudeInFeet = true;
    const auto report = airFrom(draft);
    REQUIRE(report);
    const auto& seaLevel = std::get<analytics::SeaLevelReport>(*report);
    CHECK(seaLevel.pressure.kilopascals() == Approx(101.32).margin(0.005));
    CHECK(seaLevel.shop.metres() == Approx(1609.344)); // a statute mile, NIST SP 811, B.8
    draft.from = AirFrom::barometer;
    draft.altitude.clear();
    const auto station = airFrom(draft);
    REQUIRE(station);
    CHECK_FALSE(std::get<analytics::StationReading>(*station).shop);
    draft.from = AirFrom::altitudeAlone;
    draft.pressure = "nonsense"; // not asked for
    draft.altitude = "0";
    const auto alone = airFrom(draft);
    REQUIRE(alone);
    CHECK(std::get<analytics::AltitudeAlone>(*alone).shop.metres() == 0.0);
}

TEST_CASE("what is missing or no figure of the air is told at once", "[instruments]") {
    AirDraft draft;
    draft.pressure = "high";
    const auto made = airFrom(draft);
    REQUIRE_FALSE(made);
    REQUIRE(made.error().size() == 2);
    CHECK(made.error()[0] == FormFault{FormCause::notANumber, "pressure", "high", std::nullopt});
    CHECK(made.error()[1].cause == FormCause::valueMissing);
    draft.pressure = "0";
    draft.altitude = "1,600"; // sixteen hundred, or one and six tenths?
    const auto again = airFrom(draft);
    REQUIRE_FALSE(again);
    CHECK(again.error()[0].cause == FormCause::pressureInvalid);
    CHECK(again.error()[1].cause == FormCause::notANumber);
}

TEST_CASE("a value read by hand is as uncertain as its coarser step", "[instruments]") {
    const auto fine = readByHand({0.3, TemperatureUnit::celsius}, "0.3", TemperatureDifference::fromCelsius(0.1));
    CHECK(fine.u.celsius() == Approx(0.1 / std::sqrt(3.0))); // rectangular, JCGM 100:2008, 4.3.7
    const auto whole = readByHand({32, TemperatureUnit::fahrenheit}, "32", TemperatureDifference::fromCelsius(0.1));
    CHECK(whole.mean.celsius() == Approx(0.0).margin(1e-12));
    CHECK(whole.u.celsius() == Approx(5.0 / 9.0 / std::sqrt(3.0)));
}

TEST_CASE("a passed check is kept with what it was decided from", "[instruments]") {
    const auto result = iceResult("0.3");
    REQUIRE(result.outcome == analytics::CheckOutcome::passed); // class 1 type K at 0 °C: 1.5 °C (IEC 60584-1)
    const auto done = checkFrom("h1", result, std::nullopt, TemperatureUnit::fahrenheit);
    REQUIRE(done);
    CHECK(done->check.passed);
    CHECK(done->check.due == kToday + std::chrono::days{30});
    CHECK(done->indicated->value == Approx(32.54)); // 0.3 °C
    CHECK(done->limit->value == Approx(2.7));       // 1.5 °C
    CHECK(done->limit->unit == TemperatureUnit::fahrenheit);
    CHECK_FALSE(done->stationPressureKilopascal);
    CHECK(wording::sentence(result, {}).find("Passed") == 0);
}

TEST_CASE("a failed check is kept and due the same day; an undecided one is not kept", "[instruments]") {
    const auto failed = iceResult("3.0");
    const auto done = checkFrom("h1", failed, std::nullopt, TemperatureUnit::celsius);
    REQUIRE(done);
    CHECK_FALSE(done->check.passed);
    CHECK(done->check.due == kToday);
    CHECK(wording::consequences(failed, {}).front().find("proves no film cured") != std::string::npos);
    const auto near = iceResult("1.5");
    CHECK(near.outcome == analytics::CheckOutcome::notDecided);
    CHECK_FALSE(checkFrom("h1", near, std::nullopt, TemperatureUnit::celsius));
}

TEST_CASE("a boiling check keeps the station pressure", "[instruments]") {
    auto result = iceResult("0.3");
    result.kind = analytics::CheckKind::boiling;
    analytics::AirPressure air;
    air.station = analytics::Pressure::fromKilopascal(83.4);
    const auto done = checkFrom("h1", result, air, TemperatureUnit::celsius);
    REQUIRE(done);
    CHECK(done->stationPressureKilopascal == Approx(83.4));
}
