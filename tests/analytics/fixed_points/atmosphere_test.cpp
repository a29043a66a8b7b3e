#include "analytics/metrology/fixed_points/atmosphere.hpp"

#include "analytics/metrology/fixed_points/boiling_point.hpp"

#include <catch2/catch.hpp>

#include <limits>

using namespace holdfast::analytics;
using Catch::WithinAbs;

namespace {

double standard(double geopotentialMetres) {
    const auto p = standardPressure(GeopotentialHeight::fromMetres(geopotentialMetres));
    REQUIRE(p);
    return p->pascals();
}
double reported(Pressure seaLevel, double metres) {
    const auto p = stationPressure(seaLevel, Altitude::fromMetres(metres));
    REQUIRE(p);
    return p->pascals();
}

} // namespace

TEST_CASE("pressure by geopotential height is the printed table's", "[fixed_points]") {
    // ISO 2533:1975 and U.S. Standard Atmosphere 1976, tables by geopotential height; six digits printed.
    CHECK_THAT(standard(0), WithinAbs(101325, 0.06));
    CHECK_THAT(standard(200), WithinAbs(98945.3, 0.06));
    CHECK_THAT(standard(300), WithinAbs(97772.6, 0.06));
    CHECK_THAT(standard(500), WithinAbs(95460.8, 0.06));
    CHECK_THAT(standard(700), WithinAbs(93193.6, 0.06));
    CHECK_THAT(standard(1000), WithinAbs(89874.6, 0.06));
    CHECK_THAT(standard(1600), WithinAbs(83523.5, 0.06));
    CHECK_THAT(standard(2000), WithinAbs(79495.2, 0.06));
    // The same standard at the tropopause: 22632.1 Pa (from memory; five figures).
    CHECK_THAT(standard(11000), WithinAbs(22632.1, 0.6));
}

TEST_CASE("pressure by geometric altitude", "[fixed_points]") {
    // U.S. Standard Atmosphere 1976, table by geometric altitude, printed 95461, 89876, 79501, 70121 Pa (from memory);
    // the decimal from p = 101325(1 - 0.0065H/288.15)^5.25588.
    const auto at = [](double metres) { return standardPressure(Altitude::fromMetres(metres))->pascals(); };
    CHECK_THAT(at(500), WithinAbs(95461.3, 0.1));
    CHECK_THAT(at(1000), WithinAbs(89876.3, 0.1));
    CHECK_THAT(at(2000), WithinAbs(79501.4, 0.1));
    CHECK_THAT(at(3000), WithinAbs(70121.2, 0.1));
    CHECK(geopotentialHeight(Altitude::fromMetres(0)).metres() == 0.0);
}

TEST_CASE("boiling points at standard altitudes", "[fixed_points]") {
    struct Row {
        double metres;
        double pascals;
        double celsius;
    };
    // The standard atmosphere's formula with R = 8.31432, M = 0.0289644, g = 9.80665, then IF97 (python3-iapws 1.5.3).
    const auto row = GENERATE(Row{1609, 83431.1, 94.620}, Row{1609.344, 83427.6, 94.618}, Row{500, 95460.8, 98.312},
                              Row{1000, 89874.6, 96.649}, Row{2000, 79495.2, 93.315});
    CHECK_THAT(standard(row.metres), WithinAbs(row.pascals, 0.2));
    const auto boils = boilingPoint(Pressure::fromPascal(standard(row.metres)));
    CHECK_THAT(boils->celsius(), WithinAbs(row.celsius, 0.002));
}

TEST_CASE("a report's pressure comes down to the station", "[fixed_points]") {
    // MetPy's own test values of altimeter_to_station_pressure (Smithsonian tables, 1951): 29.8 inHg at 500 m
    // 950.96498 hPa; 1013 hPa at 500 m 954.639265 hPa; 1000 hPa at 2000 m 784.262996 hPa. That formula adds 0.3 hPa and
    // takes 288 K and the altitude as it stands, hence up to 0.3 hPa + 0.2 hPa.
    CHECK_THAT(reported(Pressure::from(29.8, PressureUnit::inchOfMercury), 500), WithinAbs(95096.5 - 30, 20));
    CHECK_THAT(reported(Pressure::from(1013, PressureUnit::hectopascal), 500), WithinAbs(95463.9 - 30, 20));
    CHECK_THAT(reported(Pressure::from(1000, PressureUnit::hectopascal), 2000), WithinAbs(78426.3 - 30, 20));
}

TEST_CASE("the standard report gives the standard pressure, and reducing undoes it", "[fixed_points]") {
    for (double metres = -400; metres < 5600; metres += 173) {
        const auto altitude = Altitude::fromMetres(metres);
        CHECK_THAT(reported(Pressure::fromPascal(101325), metres),
                   WithinAbs(standardPressure(altitude)->pascals(), 1e-6));
        for (const double hectopascals : {960.0, 1030.0}) {
            const auto sea = Pressure::from(hectopascals, PressureUnit::hectopascal);
            const auto back = seaLevelPressure(*stationPressure(sea, altitude), altitude);
            CHECK_THAT(back->pascals(), WithinAbs(sea.pascals(), 1e-6));
        }
    }
}

TEST_CASE("what moves the pressure moves it as the formula's own difference says", "[fixed_points]") {
    // Against a difference of the standard itself: 10 m at 1000 m.
    const auto spread =
        altitudeSpread(Pressure::fromPascal(89874.6), Altitude::fromMetres(1000.157), Length::fromMetres(10));
    CHECK_THAT(spread->pascals(), WithinAbs((standard(995) - standard(1005)), 0.1));
    // An isothermal column 10 K warmer, 1500 m at 279 K mean: p·exp(gMH/R·(1/T - 1/(T + 10))), hydrostatic by hand.
    const double k = 9.80665 * 0.0289644 / 8.31432;
    const double mean = 288.15 - 0.0065 * 750;
    const double exact = 84556.0 * (std::exp(k * 1500 * (1 / mean - 1 / (mean + 10))) - 1);
    const auto reduced = reductionSpread(Pressure::fromPascal(84556.0), Altitude::fromMetres(1500),
                                         TemperatureDifference::fromCelsius(10));
    CHECK_THAT(reduced->pascals(), WithinAbs(exact, 0.05 * exact)); // first order
    CHECK(reductionSpread(Pressure::fromPascal(101325), Altitude::fromMetres(0), TemperatureDifference::fromCelsius(15))
              ->pascals() == 0.0);
}

TEST_CASE("heights and pressures outside the standard are refused", "[fixed_points]") {
    const double nan = std::numeric_limits<double>::quiet_NaN();
    const auto at = [](double metres) { return standardPressure(Altitude::fromMetres(metres)); };
    CHECK(at(-430).has_value()); // the lowest shore on land
    CHECK(at(-2100).error() == AtmosphereFault::tooLow);
    CHECK(at(11100).error() == AtmosphereFault::tooHigh);
    CHECK(at(nan).error() == AtmosphereFault::notFinite);
    CHECK(at(-6356766.0).error() == AtmosphereFault::notFinite); // the centre of the earth
    const auto down = [](double pascals, double metres) {
        return stationPressure(Pressure::fromPascal(pascals), Altitude::fromMetres(metres));
    };
    CHECK(down(0, 100).error() == AtmosphereFault::tooLow);
    CHECK(down(-5, 100).error() == AtmosphereFault::tooLow);
    CHECK(down(nan, 100).error() == AtmosphereFault::notFinite);
    CHECK(down(1.0, 10999).error() == AtmosphereFault::tooHigh); // no such air is left
    CHECK(down(101325, nan).error() == AtmosphereFault::notFinite);
}

TEST_CASE("feet are international feet", "[fixed_points]") {
    // NIST SP 811 (2008), B.8: 1 ft = 0.3048 m; a mile is 5280 ft = 1609.344 m.
    CHECK(Altitude::fromFeet(5280).metres() == Approx(1609.344));
    CHECK(Altitude::fromMetres(1609.344).feet() == Approx(5280));
}
