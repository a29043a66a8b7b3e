#include "analytics/metrology/fixed_points/boiling_point.hpp"

#include <catch2/catch.hpp>

#include <limits>

using namespace holdfast::analytics;
using Catch::WithinAbs;

namespace {

Pressure kilopascal(double p) {
    return Pressure::fromKilopascal(p);
}
double boils(double kilopascals) {
    const auto t = boilingPoint(kilopascal(kilopascals));
    REQUIRE(t);
    return t->celsius();
}
double saturated(double celsius) {
    const auto p = saturationPressure(Temperature::fromCelsius(celsius));
    REQUIRE(p);
    return p->kilopascals();
}

} // namespace

TEST_CASE("region 4 gives the verification values of the formulation", "[fixed_points]") {
    // IAPWS R7-97(2012), table 36 (MPa to K) and table 35 (K to MPa); all six also python3-iapws 1.5.3.
    CHECK_THAT(saturationTemperature(kilopascal(100))->kelvin(), WithinAbs(372.755919, 1e-6));
    CHECK_THAT(saturationTemperature(kilopascal(1000))->kelvin(), WithinAbs(453.035632, 1e-6));
    CHECK_THAT(saturationTemperature(kilopascal(10000))->kelvin(), WithinAbs(584.149488, 1e-6));
    CHECK_THAT(saturationPressure(Temperature::fromKelvin(300))->kilopascals(), WithinAbs(3.53658941, 1e-8));
    CHECK_THAT(saturationPressure(Temperature::fromKelvin(500))->kilopascals(), WithinAbs(2638.89776, 1e-5));
    CHECK_THAT(saturationPressure(Temperature::fromKelvin(600))->kilopascals(), WithinAbs(12344.3146, 1e-4));
}

TEST_CASE("water boils where the steam tables say", "[fixed_points]") {
    // At one standard atmosphere 99.974 °C on the ITS-90; IAPWS-95 99.97430 (python3-iapws 1.5.3).
    CHECK_THAT(boils(101.325), WithinAbs(99.9743, 1e-4));
    struct Row {
        double kilopascals;
        double celsius;
    };
    // python3-iapws 1.5.3, _TSat_P(p/1000) - 273.15, four decimals.
    const Row rows[] = {
        {50, 81.3167},   {51, 81.8108},   {52, 82.2967},   {53, 82.7749},   {54, 83.2456},   {55, 83.7091},
        {56, 84.1656},   {57, 84.6152},   {58, 85.0584},   {59, 85.4951},   {60, 85.9258},   {61, 86.3505},
        {62, 86.7693},   {63, 87.1826},   {64, 87.5905},   {65, 87.9930},   {66, 88.3904},   {67, 88.7829},
        {68, 89.1704},   {69, 89.5533},   {70, 89.9315},   {71, 90.3053},   {72, 90.6747},   {73, 91.0398},
        {74, 91.4008},   {75, 91.7578},   {76, 92.1108},   {77, 92.4600},   {78, 92.8054},   {79, 93.1472},
        {80, 93.4854},   {81, 93.8200},   {82, 94.1513},   {83, 94.4792},   {84, 94.8039},   {85, 95.1253},
        {86, 95.4437},   {87, 95.7589},   {88, 96.0712},   {89, 96.3806},   {90, 96.6870},   {91, 96.9907},
        {92, 97.2916},   {93, 97.5898},   {94, 97.8854},   {95, 98.1783},   {96, 98.4687},   {97, 98.7567},
        {98, 99.0421},   {99, 99.3252},   {100, 99.6059},  {101, 99.8843},  {102, 100.1604}, {103, 100.4343},
        {104, 100.7060}, {105, 100.9756}, {106, 101.2430}, {107, 101.5083}, {108, 101.7717}, {109, 102.0330},
        {110, 102.2923}};
    for (const auto& row : rows) {
        INFO(row.kilopascals);
        CHECK_THAT(boils(row.kilopascals), WithinAbs(row.celsius, 5.1e-5));
    }
}

TEST_CASE("saturation pressure by temperature", "[fixed_points]") {
    struct Row {
        double celsius;
        double kilopascals;
    };
    // python3-iapws 1.5.3, _PSat_T(t + 273.15)*1000, five decimals.
    const Row rows[] = {{0.01, 0.61166}, {20, 2.33921},  {25, 3.16975},    {40, 7.38443},
                        {60, 19.94580},  {82, 51.38745}, {84, 55.63555},   {86, 60.17378},
                        {88, 65.01744},  {90, 70.18236}, {92, 75.68491},   {94, 81.54200},
                        {96, 87.77110},  {98, 94.39023}, {100, 101.41798}, {102, 108.87348}};
    for (const auto& row : rows) {
        INFO(row.celsius);
        CHECK_THAT(saturated(row.celsius), WithinAbs(row.kilopascals, 5.1e-6));
    }
}

TEST_CASE("a coarse independent equation agrees to a few hundredths", "[fixed_points]") {
    // Antoine, p in kPa, T in K: log10 p = 7.0917 - 1668.21/(T - 45.1); 101.325 kPa gives 373.101 K (water data page).
    CHECK_THAT(boils(101.325) + 273.15, WithinAbs(373.101, 0.03));
}

TEST_CASE("forward and backward equations undo each other and rise", "[fixed_points]") {
    double before = 0.0;
    for (double p = 50.0; p <= 110.0; p += 0.37) {
        const double t = boils(p);
        CHECK(t > before);
        CHECK_THAT(saturated(t), WithinAbs(p, 1e-9 * p)); // both solve one quadratic (R7-97, equation 29)
        before = t;
    }
}

TEST_CASE("pressures no shop has are refused", "[fixed_points]") {
    const double nan = std::numeric_limits<double>::quiet_NaN();
    const double infinity = std::numeric_limits<double>::infinity();
    CHECK(boilingPoint(kilopascal(50.0)).has_value());
    CHECK(boilingPoint(kilopascal(110.0)).has_value());
    CHECK(boilingPoint(kilopascal(49.999)).error() == SaturationFault::tooLow);
    CHECK(boilingPoint(kilopascal(110.001)).error() == SaturationFault::tooHigh);
    CHECK(boilingPoint(kilopascal(1013.25)).error() == SaturationFault::tooHigh); // hPa typed as kPa
    CHECK(boilingPoint(kilopascal(29.92)).error() == SaturationFault::tooLow);    // inHg typed as kPa
    CHECK(boilingPoint(kilopascal(nan)).error() == SaturationFault::notFinite);
    CHECK(boilingPoint(kilopascal(infinity)).error() == SaturationFault::notFinite);
    CHECK(boilingPoint(kilopascal(-100)).error() == SaturationFault::tooLow);
    CHECK(saturationTemperature(Pressure::fromPascal(611.2)).error() == SaturationFault::tooLow);
    CHECK(saturationTemperature(Pressure::fromPascal(22.0641e6)).error() == SaturationFault::tooHigh);
    CHECK(saturationPressure(Temperature::fromKelvin(273.1)).error() == SaturationFault::tooLow);
    CHECK(saturationPressure(Temperature::fromKelvin(647.1)).error() == SaturationFault::tooHigh);
    CHECK(saturationPressure(Temperature::fromKelvin(nan)).error() == SaturationFault::notFinite);
}

TEST_CASE("two kilopascals are about half a degree", "[fixed_points]") {
    // From the table above: (100.1604 - 99.8843)/1 kPa between 101 and 102, so ±2 kPa is ±0.55 °C.
    const auto spread = boilingPointSpread(kilopascal(101.5), PressureDifference::fromKilopascal(2.0));
    REQUIRE(spread);
    CHECK_THAT(spread->celsius(), WithinAbs(2.0 * (100.1604 - 99.8843), 2e-4));
    const auto negative = boilingPointSpread(kilopascal(101.5), PressureDifference::fromKilopascal(-2.0));
    CHECK(*negative == *spread);
    CHECK(boilingPointSpread(kilopascal(20), {}).error() == SaturationFault::tooLow);
}

TEST_CASE("barometer units", "[fixed_points]") {
    // NIST SP 811 (2008), B.8: 1 inHg = 3.386389 kPa, 1 mmHg = 0.1333224 kPa.
    CHECK_THAT(Pressure::from(29.92126, PressureUnit::inchOfMercury).kilopascals(), WithinAbs(101.325, 1e-4));
    CHECK_THAT(Pressure::from(760, PressureUnit::millimetreOfMercury).kilopascals(), WithinAbs(101.325, 1e-4));
    CHECK(Pressure::from(1013.25, PressureUnit::hectopascal).kilopascals() == Approx(101.325));
    CHECK(kilopascal(101.325).in(PressureUnit::hectopascal) == Approx(1013.25));
}
