#include "analytics/cure/dose.hpp"
#include "tests/analytics/cure/verdict/ride.hpp"

#include <boost/math/special_functions/expint.hpp>
#include <catch2/catch.hpp>

#include <cmath>

using namespace holdfast::analytics;
using namespace ride;

namespace {

EqualCurePairs pairs(double hotSeconds, double hotKelvin, double coolSeconds, double coolKelvin) {
    return {{Duration{hotSeconds}, Temperature::fromKelvin(hotKelvin)},
            {Duration{coolSeconds}, Temperature::fromKelvin(coolKelvin)}};
}

Pass line(double from, double to, double seconds) {
    Pass pass;
    pass.samples = {{Duration{0.0}, celsius(from), celsius(from)}, {Duration{seconds}, celsius(to), celsius(to)}};
    pass.joins = {Join::line};
    return pass;
}

Pass passOf(const RawTrace& trace) {
    return cleanRecording(trace, nullptr).passes.front();
}

} // namespace

TEST_CASE("two equal pasteurisations give the printed activation energy", "[cure][dose]") {
    // Levenspiel, Chemical Reaction Engineering, 3rd ed., Example 2.3: 30 min at 336 K equals 15 s at 347 K,
    // E = 422 000 J/mol (printed to 1000).
    const EqualCureLaw law{pairs(15.0, 347.0, 1800.0, 336.0)};
    CHECK(law.activationEnergyJoulePerMole() == Approx(422000.0).margin(500.0));
}

TEST_CASE("two rate constants give the printed activation energy and ratio", "[cure][dose]") {
    // HELM workbook 6.4, Engineering Example 1: k = 7.757192 at 310 K and 110.9601 at 350 K, Ea = 60 000 J/mol;
    // the ratio is 14.3042. Time to the same conversion is 1/k.
    const EqualCureLaw law{pairs(1.0 / 110.9601, 350.0, 1.0 / 7.757192, 310.0)};
    CHECK(law.activationEnergyJoulePerMole() == Approx(60000.0).epsilon(0.001));
    CHECK(1.0 / law.rateAt(Temperature::fromKelvin(310.0)) == Approx(14.3042).margin(0.001));
}

TEST_CASE("the rate constant 0.1 per second is met at the printed temperature", "[cure][dose]") {
    // HELM workbook 6.4, task: k = 0.5·exp(−800 K/T); k = 0.1 per second at T = 497 K.
    const auto k = [](double kelvin) { return 0.5 * std::exp(-800.0 / kelvin); };
    const EqualCureLaw law{pairs(1.0 / k(600.0), 600.0, 1.0 / k(400.0), 400.0)};
    const auto rate = [&](double kelvin) { return law.rateAt(Temperature::fromKelvin(kelvin)) * k(600.0); };
    CHECK(rate(496.5) < 0.1);
    CHECK(rate(497.5) > 0.1);
}

TEST_CASE("the local z-value of the law is ln 10·R·T²/E", "[cure][dose]") {
    // Identity of an Arrhenius law; 5.2905 K at 341.5 K for 422 kJ/mol with R = 8.314.
    const EqualCureLaw law{pairs(15.0, 347.0, 1800.0, 336.0)};
    const auto logRate = [&](double kelvin) { return std::log(law.rateAt(Temperature::fromKelvin(kelvin))); };
    const double perKelvin = (logRate(341.51) - logRate(341.49)) / 0.02;
    const double scale = law.activationEnergyJoulePerMole() / 422000.0 * 8.314 / 8.314462618;
    CHECK(std::log(10.0) / perKelvin * scale == Approx(5.2905).margin(0.001));
}

TEST_CASE("the dose along a straight line agrees with the closed form", "[cure][dose]") {
    // ∫exp(−θ/T)dT = T·exp(−θ/T) − θ·E1(θ/T) (Abramowitz & Stegun 5.1.1 with the substitution x = θ/T).
    const EqualCureLaw law{*familyWithPairs().pairs};
    const double theta = law.activationEnergyJoulePerMole() / 8.314462618;
    const auto primitive = [&](double kelvin) {
        return kelvin * std::exp(theta / 438.15 - theta / kelvin) -
               theta * std::exp(theta / 438.15) * boost::math::expint(1, theta / kelvin);
    };
    const auto [low, high] =
        GENERATE(table<double, double>({{120.0, 200.0}, {150.0, 151.0}, {155.0, 158.0}, {160.0, 190.0}}));
    const double expected = 10.0 * (primitive(high + 273.15) - primitive(low + 273.15)) / (high - low);
    const double dose = law.generousDose(line(low, high, 10.0), {}, TemperatureDifference{}, celsius(100.0)).count();
    CHECK(dose == Approx(expected).epsilon(1e-6));
    CHECK(law.generousDose(line(high, low, 10.0), {}, TemperatureDifference{}, celsius(100.0)).count() ==
          Approx(dose).epsilon(1e-12));
}

TEST_CASE("a trapezoid of rates with fine steps and the dose agree", "[cure][dose]") {
    // Minutes and °C of the lethality example of the check values (0/100 … 6/100), its trapezoid rule with 6000 steps a
    // minute as the independent sum.
    const double minutes[] = {0, 1, 2, 3, 4, 5, 6};
    const double temperatures[] = {100, 110, 118, 121.1, 121.1, 115, 100};
    const EqualCureLaw law{pairs(1.0, 121.1 + 273.15, 10.0, 111.1 + 273.15)};
    Pass pass;
    double trapezoid = 0.0;
    for (int i = 0; i < 7; ++i) {
        pass.samples.push_back({Duration{minutes[i]}, celsius(temperatures[i]), celsius(temperatures[i])});
    }
    pass.joins.assign(6, Join::line);
    for (int i = 0; i < 6; ++i) {
        for (int k = 0; k < 6000; ++k) {
            const auto at = [&](int n) {
                return law.rateAt(celsius(temperatures[i] + (temperatures[i + 1] - temperatures[i]) * n / 6000.0));
            };
            trapezoid += (at(k) + at(k + 1)) / 2.0 / 6000.0;
        }
    }
    CHECK(law.generousDose(pass, {}, {}, celsius(50.0)).count() == Approx(trapezoid).epsilon(1e-6));
}

TEST_CASE("cautious and generous dose of a trapezoid are those of Simpson's rule", "[cure][dose]") {
    // Python 3, Simpson with 2000 intervals on the two ramps (cautious, capped at 165 °C, from 155 °C) and 20000
    // (generous, from 110 °C), guard 2.848970052893894 °C; margin by 60 halvings of the cautious dose − 30 s.
    struct Row {
        double peak, plateau, cautious, generous, margin;
    };
    const auto row = GENERATE(
        Row{165.0, 30.0, 24.4777371, 48.8292132, 1.1061311}, Row{168.0, 28.0, 32.1629827, 63.3955255, 3.5785548},
        Row{170.0, 20.0, 25.4963160, 59.8842620, -3.9065559}, Row{160.0, 36.0, 15.8050618, 33.2204372, -2.4756438},
        Row{160.0, 60.0, 25.9814166, 52.2499911, 1.6401985});
    const EqualCureLaw law{*familyWithPairs().pairs};
    const auto guard = degrees(2.848970052893894);
    // knots on whole samples: 3 °C/s from 25 °C reaches these peaks on thirds of a second
    const auto pass = passOf(trapezoid(row.peak, row.plateau, 1.0 / 3.0));
    const auto cautious = law.cautiousDose(pass, guard);
    CHECK(cautious.count() == Approx(row.cautious).epsilon(1e-6));
    CHECK(law.generousDose(pass, {}, guard, celsius(110.0)).count() == Approx(row.generous).epsilon(1e-6));
    CHECK(law.margin(pass, guard, cautious >= law.needed())->celsius() == Approx(row.margin).margin(1e-5));
}

TEST_CASE("above the hotter statement the cautious rate stays that of T1 and below the cooler nothing counts",
          "[cure][dose]") {
    const EqualCureLaw law{*familyWithPairs().pairs};
    CHECK(law.cautiousDose(line(200.0, 200.0, 12.0), {}).count() == Approx(12.0));
    CHECK(law.cautiousDose(line(155.0, 155.0, 90.0), {}).count() == Approx(30.0)); // decisions 4: 90 s at T2 = τ1
    CHECK(law.cautiousDose(line(154.9, 154.9, 900.0), {}).count() == 0.0);
    CHECK(law.cautiousDose(Pass{}, {}).count() == 0.0);
}

TEST_CASE("a gap counts whole at its hidden top in the generous dose and not in the cautious one", "[cure][dose]") {
    const EqualCureLaw law{*familyWithPairs().pairs};
    auto pass = line(160.0, 160.0, 10.0);
    pass.joins = {Join::gap};
    const std::vector<HiddenTop> hidden{{celsius(165.0), Duration{0.0}, Duration{10.0}}};
    CHECK(law.cautiousDose(pass, {}).count() == 0.0);
    CHECK(law.generousDose(pass, hidden, {}, celsius(110.0)).count() == Approx(10.0)); // rate 1 at T1
    CHECK(law.generousDose(pass, hidden, {}, celsius(170.0)).count() == 0.0);
}

TEST_CASE("a trace shorter than the shorter time has no dose margin", "[cure][dose]") {
    const EqualCureLaw law{*familyWithPairs().pairs};
    CHECK_FALSE(law.margin(line(300.0, 300.0, 29.0), degrees(2.0), false));
    CHECK_FALSE(law.margin(Pass{}, degrees(2.0), false));
}
